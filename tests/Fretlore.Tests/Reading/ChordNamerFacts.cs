using CsCheck;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Music.Chords;
using Fretlore.Reading.Chords;

namespace Fretlore.Tests.Reading;

public class ChordNamerFacts
{
    [Theory]
    [InlineData("C3 E3 G3", "C")]
    [InlineData("A2 E3 A3 C4 E4", "Am")]
    [InlineData("E2 B2 E3", "E5")]
    [InlineData("A2 D3", "D5/A")]
    [InlineData("E3 C4", "C/E")]
    [InlineData("C3 E3 G3 B3", "Cmaj7")]
    [InlineData("C3 E3 Bb3", "C7")]
    [InlineData("B2 D3 F3 A3", "Bm7b5")]
    [InlineData("B2 D3 F3 Ab3", "Bdim7")]
    [InlineData("C3 G3 D4", "Csus2")]
    [InlineData("C3 F3 G3", "Csus4")]
    [InlineData("C3 D3 E3 G3", "Cadd9")]
    [InlineData("C3 E3 A3 D4 G4", "C6/9")]
    [InlineData("E2 B2 E3 G#3 D4 F##4", "E7#9")]
    [InlineData("G2 F3 B3 E4", "G13")]
    [InlineData("G2 D3 F3 A3 C4", "G9sus4")]
    [InlineData("F#2 A3 C4 E4", "F#m7b5")]
    [InlineData("G2 A3 C4 F4", "F/G")]
    [InlineData("C3 D3 F#3 A3", "D/C")]
    [InlineData("A2 C3 E3 G#3", "Am(maj7)")]
    [InlineData("C3 E3 G#3", "Caug")]
    [InlineData("C3 Gb3", "C5(b5)")]
    [InlineData("F3 A3 C4 E4 B4", "Fmaj7#11")]
    [InlineData("E2 G#3 D4 G4 C5", "E7#5#9")]
    public void Name_OfWhatPlayersWriteEveryDay_IsWhatTheyCallIt(string notes, string symbol) =>
        Assert.Equal(symbol, Name(notes).Candidates[0].Symbol);

    [Fact]
    public void Reason_OfAMinorSeventhWithoutItsFifth_SaysThatTheFifthDoesNotMatter() => Assert.Equal(
        "Root A in the bass with a minor third and a flat seventh; the fifth is left out, which changes nothing.",
        Name("A2 C3 G3").Candidates[0].Reason);

    [Fact]
    public void Notes_OfAChordAreSpelledFromItsRoot()
    {
        Assert.Equal("C Eb Gb Bbb", string.Join(' ', Name("C3 Eb3 Gb3 A3").Candidates[0].Notes));
        Assert.Equal("E G# B D F##", string.Join(' ', Name("E2 G#2 B2 D3 G3").Candidates[0].Notes));
    }

    [Theory]
    [InlineData("F", "major", "Bb3 Db4 F4", "Bbm")]
    [InlineData("F#", "minor", "Bb3 Db4 F4", "A#m")]
    [InlineData("Db", "major", "C#3 F3 Ab3", "Db")]
    [InlineData("E", "major", "Db3 E3 Ab3", "C#m")]
    [InlineData("E", "minor", "Bb2 F3 Bb3", "Bb5")]
    [InlineData("C", "major", "F#2 A2 C3 E3", "F#m7b5")]
    public void Root_IsSpelledByTheKey(string tonic, string mode, string notes, string symbol)
    {
        Assert.True(Key.TryParse(tonic, mode, out var key));
        Assert.Equal(symbol, ChordNamer.Name(Heights(notes), new ChordContext(key)).Candidates[0].Symbol);
    }

    [Fact]
    public void Name_OfNothingOrOneNote_IsTypedAndNoChord()
    {
        Assert.Equal(ChordContent.Silence, ChordNamer.Name([]).Content);
        Assert.Empty(ChordNamer.Name([]).Candidates);
        var octave = Name("A2 A3");
        Assert.Equal(ChordContent.OneNote, octave.Content);
        Assert.Equal("note", octave.Candidates.Single().Kind);
    }

    [Fact]
    public void Name_OfAllTwelveNotes_StillHasAName()
    {
        var all = Enumerable.Range(40, 12).Select(m => new Height(m)).ToArray();
        Assert.NotEmpty(ChordNamer.Name(all).Candidates);
    }

    [Fact]
    public void EverySetOfTwoNotesOrMore_OverEachOfItsNotes_HasANameThatHoldsAllOfThem()
    {
        for (var bits = 1; bits < 4096; bits++)
        {
            var set = new PitchClassSet(bits);
            if (set.Count < 2) continue;
            foreach (var bass in set)
            {
                foreach (var candidate in ChordNamer.Name(set, bass, false).Candidates)
                {
                    Assert.Equal(set, PitchClassSet.Of([.. candidate.Notes.Select(n => n.PitchClass)]));
                    Assert.Equal(bass, candidate.Bass.PitchClass);
                    Assert.Equal(candidate.Cost, candidate.Parts.Sum(p => p.Amount), 3);
                }
            }
        }
    }

    [Fact]
    public void Transposing_MovesEveryRootAndKeepsEveryKind() => Heard.Sample((heights, semitones) =>
    {
        var here = ChordNamer.Name(heights).Candidates;
        var there = ChordNamer.Name([.. heights.Select(h => h + semitones)]).Candidates;
        Assert.Equal(
            here.Select(c => (NoteName.Wrap(c.Root.PitchClass + semitones, 12), c.Kind, c.Cost)),
            there.Select(c => (c.Root.PitchClass, c.Kind, c.Cost)));
    });

    [Fact]
    public void OrderAndDoubling_OfUpperNotes_DoNotMatter() => Heard.Sample((heights, seed) =>
    {
        var shuffled = heights.OrderBy(h => (h.Midi * 31 + seed * 17) % 13).ToArray();
        Assert.Equal(Symbols(heights), Symbols(shuffled));
        Assert.Equal(Symbols(heights), Symbols([.. heights, .. heights.Select(h => h + 12).Where(h => h.PitchClass != heights.Min().PitchClass)]));
    });

    [Fact]
    public void TwoTunings_WithTheSamePitches_ReadTheSame()
    {
        Assert.True(Tuning.TryParse("D2 A2 D3 G3 B3 E4", out var dropped));
        var inStandard = new Shape([null, new Fret(0), new Fret(2), new Fret(2), new Fret(1), new Fret(0)]).On(new Neck(Tuning.Standard));
        var inDropped = new Shape([new Fret(7), null, new Fret(2), new Fret(2), new Fret(1), new Fret(0)]).On(new Neck(dropped));
        Assert.Equal(Symbols([.. inStandard.Select(n => n.Height)]), Symbols([.. inDropped.Select(n => n.Height)]));
    }

    [Fact]
    public void Signs_WriteTheSameChordInTheOtherStyle()
    {
        Assert.Equal("Bø7", Name("B2 D3 F3 A3").Candidates[0].Name?.Symbol(ChordStyle.Signs));
        Assert.Equal("C△9", Name("C3 E3 G3 B3 D4").Candidates[0].Name?.Symbol(ChordStyle.Signs));
    }

    private static readonly Gen<(Height[] Heights, int Semitones)> Heard = Gen.Select(
        Gen.Int[36, 84].Select(m => new Height(m)).Array[2, 8].Where(a => PitchClassSet.Of(a).Count > 1), Gen.Int[1, 11]);

    private static string Symbols(Height[] heights) => string.Join(' ', ChordNamer.Name(heights).Candidates.Select(c => c.Symbol));

    private static ChordNaming Name(string notes) => ChordNamer.Name(Heights(notes));

    private static Height[] Heights(string notes) =>
        [.. notes.Split(' ').Select(n => Pitch.TryParse(n, out var pitch) ? pitch.Height : throw new ArgumentException(n))];
}
