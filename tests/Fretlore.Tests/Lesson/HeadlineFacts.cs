using CsCheck;
using Fretlore.Guitar;
using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.CallOuts.ReadingBack;
using Fretlore.Lesson.CallOuts.Telling;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Tests.Lesson;

public class HeadlineFacts
{
    private static readonly Func<Note, Note>[] SlipKinds =
    [
        n => n with { Fret = new Fret(n.Fret.Number + 1) },
        n => n with { IsPalmMuted = !n.IsPalmMuted },
        n => n with { IsAccented = !n.IsAccented },
        n => n with { Attack = n.Attack == Attack.Tap ? Attack.Picked : Attack.Tap },
        n => n with { Bend = n.Bend is null ? new Bend(0, [200]) : null },
    ];

    private static readonly Gen<Func<Note, Note>> Slips = Gen.Int[0, SlipKinds.Length - 1].Select(i => SlipKinds[i]);

    [Fact]
    public void AHeadline_IsTrueOfTheRiffsThatHaveIt_AndOfNoOthers() => Gen.Select(GeneratedRiffs.Any, GeneratedRiffs.Any, Gen.Int[0, 60], Slips, Gen.Enum<StringNaming>()).Sample(
        (riff, other, at, slip, naming) =>
    {
        var style = new CallOutStyle(naming);
        var headline = Told(riff, [riff], style);
        foreach (var changed in new[] { riff, other, Slip(riff, at, slip), Dropped(riff, at), Halved(riff) })
        {
            if (changed.Neck != riff.Neck) continue;
            Assert.Equal(headline == Told(changed, [changed], style), Problem(headline, changed, [changed], style) is null);
        }
    }, iter: 1000, print: _ => "two riffs");

    [Fact]
    public void AHeadline_WithADifferenceInTheMusicThatItTells_IsCaught() => GeneratedRiffs.Any.Sample(riff =>
    {
        var headline = Told(riff, [riff], new CallOutStyle());
        Note[] notes = [.. riff.Content.SelectMany(b => b.Notes)];
        if (notes.Length == 0) return;
        Caught(Each(riff, n => n with { IsPalmMuted = !notes.Any(m => m.IsPalmMuted) }));
        Caught(riff with { Bars = [.. riff.Bars, riff.Bars[^1] with { RepeatCount = 0 }], Content = [.. riff.Content, riff.Content[^1]] });
        Caught(riff with { Bars = riff.Bars.Select(b => b with { Meter = new Meter(7, 8) }).ToValueList() });
        Caught(riff with { Bars = riff.Bars.Select(b => b with { RepeatCount = b.RepeatCount + 4 }).ToValueList() });
        if (notes.Where(n => !n.IsDead && !n.Fret.IsOpen).Select(n => n.Fret.Number).DefaultIfEmpty(0).Max() is > 0 and var highest)
        {
            Caught(Each(riff, n => n.Fret.Number == highest ? n with { Fret = new Fret(highest + 1) } : n));
        }
        if (!notes.Any(n => n.IsDead)) Caught(Each(riff, n => n with { Fret = new Fret(n.Fret.Number + 1) }));
        if (headline.ToString().Contains(", all ", StringComparison.Ordinal) && !headline.ToString().Contains(", all open", StringComparison.Ordinal)) Caught(Halved(riff));

        void Caught(Riff changed) => Assert.NotNull(Problem(headline, changed, [changed], new CallOutStyle()));
    }, iter: 1000, print: _ => "a riff");

    [Fact]
    public void AHeadlineThatPointsAtAnotherRiff_IsOnlyTrueOfWhatThatRiffAndTheDifferenceMake() => Gen.Select(GeneratedRiffs.Any, Gen.Int[0, 60], Slips, Gen.Int[0, 60], Slips).Sample(
        (model, at, turn, elsewhere, slip) =>
    {
        var riff = Slip(model, at, turn) with { Name = "any.turn", VariationOf = model.Name };
        var headline = Told(riff, [model, riff], new CallOutStyle());
        Assert.Null(Problem(headline, riff, [model, riff], new CallOutStyle()));
        var relation = headline.Breaths[0];
        // The music slips in one more place; only inside a bar that is said to be another may it do so unheard.
        var wrong = Slip(riff, elsewhere, slip);
        int[] slipped = [.. Enumerable.Range(0, riff.Content.Count).Where(bar => BarForm.Of(riff.Content[bar]) != BarForm.Of(wrong.Content[bar]))];
        if (slipped.Length > 0 && relation.StartsWith("Same as", StringComparison.Ordinal) && (relation.Contains("but end", StringComparison.Ordinal) || slipped[0] != Changed(model, riff)))
        {
            Assert.NotNull(Problem(headline, wrong, [model, wrong], new CallOutStyle()));
        }
        // The difference undone is no longer what is said; nor is the other riff changed under it.
        if (relation.StartsWith("Same as", StringComparison.Ordinal) && Changed(model, riff) is not null)
        {
            var undone = riff with { Content = model.Content };
            Assert.NotNull(Problem(headline, undone, [model, undone], new CallOutStyle()));
            var moved = model with { Content = riff.Content };
            Assert.NotNull(Problem(headline, riff, [moved, riff], new CallOutStyle()));
        }
    }, iter: 1000, print: _ => "a riff and its variation");

    [Fact]
    public void AVariation_IsTheSame_ButForTheBarOrTheEndThatChanges()
    {
        var songs = RealRiffs.Song.Riffs;
        Assert.StartsWith("Same as the furnace riff, but bar two changes.", Told(songs.First(r => r.Name == "furnace.turn"), songs, new CallOutStyle()).ToString());
        var model = new RiffBuilder("anvil").On(6).In("E").Play("0m 0m 3 0m 0m 5 0m 3").Bar().Build();
        var other = new RiffBuilder("anvil.end") { VariationOf = "anvil" }.On(6).In("E").Play("0m 0m 3 0m 0m 5 6 7").Bar().Build();
        var callOut = CallOutWriter.For(RealRiffs.Song with { Riffs = [model, other], Shapes = [] })[1];
        Assert.Equal("Same as the anvil riff, but end on fret six, then seven. A single-note line on the low string, frets three to seven and the open string. Listen for the palm mutes. One bar, all eighths.",
            callOut.Headline.ToString());
        Assert.Equal("Same as the anvil riff, but end on fret six, then seven.", callOut.WalkThrough.ToString());
        Assert.Null(callOut.Caution);
    }

    [Fact]
    public void Rests_AreCountedAndNothingElseIsSaid()
    {
        var riff = new RiffBuilder("quiet").In("W").Play("R").Bar().Play("R").Bar().Build();
        var headline = Told(riff, [riff], new CallOutStyle());
        Assert.Equal("Nothing to play: rest for two bars.", headline.ToString());
        Assert.NotNull(Problem(headline, new RiffBuilder("quiet").In("W").Play("R").Bar().On(1).Play("3").Bar().Build(), [riff], new CallOutStyle()));
        Assert.NotNull(Problem(headline, new RiffBuilder("quiet").In("W").Play("R").Bar().Build(), [riff], new CallOutStyle()));
    }

    [Fact]
    public void BarsOfSeveralMetres_AreNotCalledByTheFirst()
    {
        var riff = new RiffBuilder("odd").On(6).In("Q").Play("0 3 5 3").Bar().Play("0 3 5").Bar(b => b with { Meter = new Meter(3, 4) }).Build();
        Assert.EndsWith("Two bars in changing metres, all quarters.", Told(riff, [riff], new CallOutStyle()).ToString());
    }

    private static int? Changed(Riff model, Riff riff) =>
        Enumerable.Range(0, riff.Content.Count).Where(bar => BarForm.Of(riff.Content[bar]) != BarForm.Of(model.Content[bar])).Cast<int?>().FirstOrDefault();

    private static Speech Told(Riff riff, ValueList<Riff> riffs, CallOutStyle style) => new Headline(riff, Context(riffs, style)).Tell();

    private static string? Problem(Speech headline, Riff riff, ValueList<Riff> riffs, CallOutStyle style) => new HeadlineCheck(riff, Context(riffs, style)).Problem(headline);

    private static CallOutContext Context(ValueList<Riff> riffs, CallOutStyle style) => CallOutContext.Of(RealRiffs.Song with { Riffs = riffs, Shapes = [] }, null, style);

    private static Riff Each(Riff riff, Func<Note, Note> change) => Events(riff, e => e with { Notes = e.Notes.Select(change).ToValueList() });

    private static Riff Halved(Riff riff) => Events(riff, e => e with { Value = new NoteValue((ValueBase)Math.Min(64, (int)e.Value.Base * 2), e.Value.Dots) });

    private static Riff Slip(Riff riff, int at, Func<Note, Note> slip)
    {
        var events = riff.Content.SelectMany(b => b.Strands).SelectMany(s => s.Events).Where(e => !e.IsRest).ToArray();
        if (events.Length == 0) return riff;
        var slipped = events[at % events.Length];
        return Events(riff, e => ReferenceEquals(e, slipped) ? e with { Notes = e.Notes.Select(slip).ToValueList() } : e);
    }

    private static Riff Dropped(Riff riff, int at)
    {
        var bar = at % riff.Content.Count;
        return riff with { Content = riff.Content.Select((b, i) => i == bar ? b with { Strands = [] } : b).ToValueList() };
    }

    private static Riff Events(Riff riff, Func<Event, Event> change) => riff with
    {
        Content = riff.Content.Select(b => b with { Strands = b.Strands.Select(s => s with { Events = s.Events.Select(change).ToValueList() }).ToValueList() }).ToValueList(),
    };
}
