using System.Xml.Linq;
using CsCheck;
using Fretlore.Exchange.MusicXml;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Exchange;

public class MusicXmlFacts
{
    [Fact]
    public void Legato_IsToldAsInTheTablatureTutorialOfTheStandard()
    {
        // W3C, MusicXML 4.0 tutorial, tablature part: string, fret, and the hammer-ons and pull-offs that stop and start at each note.
        var notes = Written.MusicXml(StudySongs.Legato(), StaffForm.Tablature).Descendants("note").ToList();
        Assert.Equal(
            ["3 5 hammer-on:start", "3 7 hammer-on:stop", "3 8 pull-off:start", "3 7 pull-off:stop pull-off:start", "3 5 pull-off:stop"],
            notes.Select(TechnicalOf));
        Assert.Equal(["C4", "D4", "Eb4", "D4", "C4"], notes.Select(PitchOf));
    }

    [Fact]
    public void Tuning_IsToldFromTheBottomLineUp_WithTheCapo()
    {
        var details = Written.MusicXml(StudySongs.Plain()).Descendants("staff-details").First();
        Assert.Equal("1E2 2A2 3D3 4G3 5B3 6E4", string.Join(' ', details.Elements("staff-tuning").Select(t =>
            $"{t.Attribute("line")!.Value}{t.Element("tuning-step")!.Value}{t.Element("tuning-octave")!.Value}")));
        Assert.Equal("2", details.Element("capo")!.Value);
    }

    [Theory]
    [InlineData(0, new[] { 200 }, "2")]
    [InlineData(0, new[] { 200, 0 }, "2 -2release")]
    [InlineData(200, new[] { 0 }, "2pre-bend -2release")]
    [InlineData(0, new[] { 150, 220 }, "1.5 0.7")]
    public void Bend_IsToldInSemitones_EachMoveFromTheLast(int from, int[] to, string told)
    {
        var document = Written.MusicXml(StudySongs.One(ValueBase.Whole, n => n with { Bend = new Bend(from, to.ToValueList()) }));
        Assert.Equal(told, string.Join(' ', document.Descendants("bend").Select(b => b.Element("bend-alter")!.Value + b.Elements().ElementAtOrDefault(1)?.Name)));
    }

    public static TheoryData<string, string> Techniques => new()
    {
        { "palm mute", "play/mute=palm" },
        { "dead", "notehead=x" },
        { "ghost", "notehead=normal" },
        { "natural harmonic", "notations/technical/harmonic/natural=" },
        { "let ring", "notations/tied=" },
        { "tap", "notations/technical/tap=T" },
        { "tremolo", "notations/ornaments/tremolo=3" },
        { "vibrato", "notations/ornaments/wavy-line=" },
        { "accent", "notations/articulations/accent=" },
        { "staccato", "notations/articulations/staccato=" },
        { "from below", "notations/articulations/scoop=" },
        { "off downwards", "notations/articulations/falloff=" },
        { "finger", "notations/technical/fingering=3" },
    };

    [Theory]
    [MemberData(nameof(Techniques))]
    public void Technique_HasItsElement(string technique, string told)
    {
        var song = StudySongs.One(ValueBase.Whole, n => technique switch
        {
            "palm mute" => n with { IsPalmMuted = true },
            "dead" => n with { IsDead = true },
            "ghost" => n with { IsGhost = true },
            "natural harmonic" => n with { Harmonic = new Harmonic(HarmonicKind.Natural, n.Fret) },
            "let ring" => n with { LetsRing = true },
            "tap" => n with { Attack = Attack.Tap },
            "tremolo" => n with { Tremolo = ValueBase.ThirtySecond },
            "vibrato" => n with { Vibrato = new Vibrato(VibratoWidth.Normal) },
            "accent" => n with { IsAccented = true },
            "staccato" => n with { IsStaccato = true },
            "from below" => n with { GlideIn = GlideIn.FromBelow },
            "off downwards" => n with { GlideOut = GlideOut.Downwards },
            _ => n with { Finger = Finger.Ring },
        });
        var (path, value) = (told[..told.IndexOf('=', StringComparison.Ordinal)], told[(told.IndexOf('=', StringComparison.Ordinal) + 1)..]);
        var found = Written.MusicXml(song).Descendants("note").First();
        foreach (var step in path.Split('/')) found = found.Element(step) ?? throw new InvalidOperationException($"No {step} of {path} in {found}");
        Assert.Equal(value, found.Value);
    }

    [Fact]
    public void Accidentals_ArePrintedWhereANoteDiffersFromTheKeyOrFromWhatStandsBefore()
    {
        var song = new SongBuilder { Key = StudySongs.KeyOf("G", "major") }.Part("guitar")
            .Bar([.. new[] { 2, 1, 0, 2 }.Select(fret => SongBuilder.Play(ValueBase.Quarter, (1, fret)))]).Build();
        Assert.Equal(["", "natural", "", "sharp"], Written.MusicXml(song).Descendants("note").Select(n => (string?)n.Element("accidental") ?? ""));
    }

    [Fact]
    public void Metre_WithStatedGroups_IsAdditive()
    {
        var song = new SongBuilder { Meter = new Meter(7, 8, [2, 2, 3]) }.Part("guitar").Bar().Build();
        Assert.Equal("2+2+3", Written.MusicXml(song).Descendants("beats").Single().Value);
    }

    [Fact]
    public void RestsInAllParts_AreToldAsOneStretch()
    {
        var song = new SongBuilder().Part("guitar").Bar().Bar().Bar().Bar(SongBuilder.Play(ValueBase.Whole, (1, 0))).Build();
        Assert.Equal("3", Written.MusicXml(song).Descendants("multiple-rest").Single().Value);
    }

    [Fact]
    public void Repeat_WithEndings_SaysPassesAndTimes()
    {
        var song = new SongBuilder().Part("guitar").Bar().Bar().Bar().Build();
        song = song with
        {
            Bars =
            [
                song.Bars[0] with { StartsRepeat = true },
                song.Bars[1] with { StartsEnding = true, EndsEnding = true, EndingPasses = [1, 2], RepeatCount = 3 },
                song.Bars[2] with { StartsEnding = true, EndsEnding = true, EndingPasses = [3] },
            ],
        };
        var document = Written.MusicXml(song);
        Assert.Equal(["1,2 start", "1,2 stop", "3 start", "3 discontinue"], document.Descendants("ending").Select(e => e.Attribute("number")!.Value + " " + e.Attribute("type")!.Value));
        Assert.Equal("3", document.Descendants("repeat").Last().Attribute("times")!.Value);
    }

    [Theory]
    [InlineData(StaffForm.Notation)]
    [InlineData(StaffForm.Both)]
    public void EachVoice_FillsItsBar_AndEveryNoteIsThere(object staffForm) => SongGen.Songs.Sample(song =>
    {
        var form = (StaffForm)staffForm;
        var parts = Written.MusicXml(song, form).Root!.Elements("part").ToList();
        for (var part = 0; part < parts.Count; part++)
        {
            var divisions = long.Parse(parts[part].Descendants("divisions").Single().Value);
            var measures = parts[part].Elements("measure").ToList();
            Assert.Equal(song.Bars.Count, measures.Count);
            for (var bar = 0; bar < measures.Count; bar++)
            {
                Assert.Equal(song.Bars[bar].Length, Beats.Of(EndOf(measures[bar]), divisions));
                Assert.Equal(
                    song.Parts[part].Bars[bar].Notes.Count() * (form == StaffForm.Both ? 2 : 1),
                    measures[bar].Descendants("pitch").Count());
            }
        }
    }, iter: 100);

    [Fact]
    public void SameSong_GivesTheSameBytes() =>
        SongGen.Songs.Sample(song => Written.MusicXmlBytes(song).SequenceEqual(Written.MusicXmlBytes(song)), iter: 20);

    // Where the cursor stands after a measure; never before its start.
    private static long EndOf(XElement measure)
    {
        var (at, last) = (0L, 0L);
        foreach (var element in measure.Elements())
        {
            if (element.Element("chord") is not null || element.Element("grace") is not null || element.Element("duration") is not { } duration) continue;
            at += long.Parse(duration.Value) * (element.Name == "backup" ? -1 : 1);
            Assert.True(at >= 0);
            last = at;
        }
        return last;
    }

    private static string TechnicalOf(XElement note)
    {
        var technical = note.Element("notations")!.Element("technical")!;
        var joins = technical.Elements().Where(e => e.Name == "hammer-on" || e.Name == "pull-off").Select(e => e.Name + ":" + e.Attribute("type")!.Value);
        return string.Join(' ', new[] { technical.Element("string")!.Value, technical.Element("fret")!.Value }.Concat(joins));
    }

    private static string PitchOf(XElement note)
    {
        var pitch = note.Element("pitch")!;
        return pitch.Element("step")!.Value + ((string?)pitch.Element("alter") switch { "1" => "#", "-1" => "b", _ => "" }) + pitch.Element("octave")!.Value;
    }
}
