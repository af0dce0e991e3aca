using System.Collections.Immutable;
using Fretlore.Exchange.TextTab;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.CallOuts.RoadMaps;
using Fretlore.Lesson.Licks;
using Fretlore.Lesson.Subjects;
using Fretlore.Lesson.Script;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Practice;
using Fretlore.Reading;
using Fretlore.RoadMaps.Takes;
using Fretlore.Score;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>The page that a student opens and plays along with.</summary>
internal sealed class PracticeSection : IKitSection
{
    public string Doing => "Making the practice page";

    public double Weight => 0.6;

    public bool HoldsSound => true;

    // The sound may be an old one.
    public object InputOf(KitSource source) => (source.Song, source.Options, (object?)source.Sound() ?? "none");

    public SectionResult Make(KitSource source, Action<double> progress)
    {
        var asked = new PracticeSource
        {
            Played = source.Played,
            Reading = source.Reading,
            Hands = source.Hands,
            Fonts = source.Fonts,
            Show = source.Options.Show,
            HandSigns = source.Options.Hands,
            Steps = Steps(source),
            Sound = Sound(source),
            Calls = [.. source.Solos.Select((solo, i) => CallOf(solo, source.Sound() is { } sound ? sound.Solos[i] : null))],
            InWords = RuleWords.Of,
        };
        return PracticePage.Make(asked) switch
        {
            PracticeResult.Made made => new SectionResult.Made(
                [new KitFile("practice.html", made.Html, "The page to practise with: open it in a browser, no network needed")]),
            PracticeResult.LeftOut leftOut => new SectionResult.Made([], leftOut.Reason),
            var other => throw new InvalidOperationException($"{other} is no result of a practice page."),
        };
    }

    private static PracticeSound Sound(KitSource source) => source.Sound() is { } sound
        ? new PracticeSound(sound.Seconds, sound.Pieces, null)
        : new PracticeSound(0, [], source.WhyNoSound);

    private static PracticeCall CallOf(KitSolo solo, ImmutableArray<byte>? sound) => new()
    {
        Use = solo.Use,
        Played = Performer.Play(solo.Song),
        Reading = SongReader.Read(solo.Song),
        Hands = HandPlanner.Plan(solo.Song),
        Phrases = solo.Phrases.Select(phrase => new PracticePhrase(
            phrase.Kind switch
            {
                PhraseKind.Fixed => PracticePhraseKind.Fixed,
                PhraseKind.Answer => PracticePhraseKind.Answer,
                PhraseKind.Sequence => PracticePhraseKind.Sequence,
                PhraseKind.Lick => PracticePhraseKind.Lick,
                _ => PracticePhraseKind.Free,
            },
            phrase.Of, phrase.FirstBar, phrase.BarCount)).ToValueList(),
        Sound = sound,
    };

    private static ValueList<PracticeStep> Steps(KitSource source)
    {
        var callOuts = CallOutWriter.For(source.Song, source.Reading, hands: source.Hands).ToDictionary(callOut => callOut.Riff);
        return ScriptStep.Of(source.Song)
            .Select(step => (Step: step, Names: step.Teaches.Select(taught => taught.Name).ToValueList()))
            .Select(named => new PracticeStep(
                named.Step.Title, named.Names, named.Step.SpeedPercents, named.Step.Say,
                named.Names.Where(callOuts.ContainsKey).Select(name => Of(callOuts[name])).ToValueList())
            {
                Versions = source.Licks.Where(lick => named.Step.Teaches.Contains(lick.What)).SelectMany(lick => VersionsOf(lick, source.Song)).ToValueList(),
            })
            .ToValueList();
    }

    // Narrow enough for the panel beside the music.
    private static IEnumerable<PracticeVersion> VersionsOf(KitLick lick, Song song) => lick.Versions.Skip(1).Select(version =>
    {
        var alone = RiffSong.Of(song, LickCard.Numbered(version.Lick), lick.Tempo);
        var tab = TextTabWriter.WritePart(alone, SongReader.Read(alone), 0, new TabStyle(TabStyle.Narrowest));
        return new PracticeVersion(lick.Title, version.Title, version.Hand.Difficulty.ToString().ToLowerInvariant(), version.Fingers, tab);
    });

    private static PracticeCallOut Of(CallOut callOut) =>
        new(callOut.SpokenName, callOut.Headline.Breaths, callOut.WalkThrough.Breaths, callOut.NoteByNote.Breaths);
}
