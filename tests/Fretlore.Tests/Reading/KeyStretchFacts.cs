using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Tests.Songs;
using static Fretlore.Tests.Songs.SongBuilder;

namespace Fretlore.Tests.Reading;

/// <summary>Keys by stretch: found where the sheet says none, never argued with where it does.</summary>
public class KeyStretchFacts
{
    [Fact]
    public void ASongThatGoesUpATone_HasTwoKeys()
    {
        var song = Strummed(null, [.. Turn(0), .. Turn(0), .. Turn(0), .. Turn(2), .. Turn(2), .. Turn(2)]);
        var stretches = SongReader.Read(song).KeyStretches;
        Assert.Equal(["0-11 C major", "12-23 D major"], stretches.Select(Text));
        Assert.All(stretches, s => Assert.False(s.IsStated));
        Assert.StartsWith("Read as C major: 100% of what sounds are its notes", stretches[0].Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void AStatedKey_Stands_WhateverTheNotes()
    {
        var stretch = Assert.Single(SongReader.Read(Strummed(new Key(new NoteName(Step.E), Mode.Phrygian), [.. Turn(0), .. Turn(2), .. Turn(2)])).KeyStretches);
        Assert.Equal("0-11 E phrygian", Text(stretch));
        Assert.True(stretch.IsStated);
    }

    [Fact]
    public void OneChordFromElsewhere_IsNoModulation() => Assert.Equal(
        ["0-11 C major"], SongReader.Read(Strummed(null, [.. Turn(0), 0, 8, 5, 0, .. Turn(0)])).KeyStretches.Select(Text));

    [Fact]
    public void ASongOnGWithFlatSevenths_IsInGMixolydian()
    {
        var song = Strummed(null, [7, 5, 0, 7, 7, 5, 0, 7, 7, 5, 0, 7]);
        Assert.Equal("G mixolydian", SongReader.Read(song).Home.ToString());
    }

    [Fact]
    public void AChorusOnTheRelativeMajor_IsInItsOwnKey()
    {
        // Em C D Em against G D C G: the same seven notes, another home.
        var song = Strummed(null, [(4, true), (0, false), (2, false), (4, true), (4, true), (0, false), (2, false), (4, true)], [(7, false), (2, false), (0, false), (7, false), (7, false), (2, false), (0, false), (7, false)]);
        Assert.Equal(["0-7 E minor", "8-15 G major"], SongReader.Read(song).KeyStretches.Select(Text));
    }

    [Fact]
    public void ASectionThatOnlyPassesThroughTheRelative_StaysInTheKey()
    {
        var song = Strummed(null, [(7, false), (2, false), (0, false), (7, false)], [(4, true), (0, false), (7, false), (2, false)]);
        Assert.Equal(["0-7 G major"], SongReader.Read(song).KeyStretches.Select(Text));
    }

    // I IV V I in major barre shapes.
    private static int[] Turn(int up) => [up, up + 5, up + 7, up];

    private static string Text(KeyStretch s) => $"{s.FirstBar}-{s.FirstBar + s.BarCount - 1} {s.Key}";

    // Sections of a bar a chord: roots by semitones above C, minor or major.
    private static Song Strummed(Key? key, params (int Root, bool IsMinor)[][] sections)
    {
        var builder = new SongBuilder { Key = key }.Part("guitar", "C2 G2 C3 E3 G3 C4");
        foreach (var (root, isMinor) in sections.SelectMany(s => s)) builder.Bar(Play(ValueBase.Whole, (6, root), (5, root), (4, root), (3, root - (isMinor ? 1 : 0))));
        var starts = sections.Select((_, i) => sections.Take(i).Sum(s => s.Length)).ToArray();
        return builder.Build() with { Sections = sections.Select((s, i) => new Section("part " + i, starts[i], s.Length)).ToValueList() };
    }

    // Major barre chords by semitones above C, the root on the lowest string (tuned to C).
    private static Song Strummed(Key? key, int[] roots)
    {
        var builder = new SongBuilder { Key = key }.Part("guitar", "C2 G2 C3 E3 G3 C4");
        foreach (var root in roots) builder.Bar(Play(ValueBase.Whole, (6, root), (5, root), (4, root), (3, root)));
        return builder.Build();
    }
}
