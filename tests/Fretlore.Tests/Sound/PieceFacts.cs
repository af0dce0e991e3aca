using Fretlore.Performance;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Pieces;
using Fretlore.Sound.Rigs;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Sound;

/// <summary>The pieces that a part is rendered in.</summary>
public sealed class PieceFacts
{
    private const int Block = 480;

    public static TheoryData<string> Rigs => [.. RigTable.All.Select(rig => rig.Name)];

    [Theory]
    [MemberData(nameof(Rigs))]
    public void WhereAPieceBegins_WhatIsRoundedIs120DecibelsDown(string rig)
    {
        var rounded = Rendered(Track(rig), 0, 3 * SoundPieces.Length / 2, Block);
        // Blocks that pass over the place where a piece begins leave it as it is.
        var track = Track(rig);
        var before = Rendered(track, 0, Block, Block);
        var exact = (double[])[.. before, .. Rendered(track, Block, 3 * SoundPieces.Length / 2 - Block, 2 * Block)];
        Assert.Equal(rounded[..SoundPieces.Length], exact[..SoundPieces.Length]);
        var most = rounded.Zip(exact, (a, b) => Math.Abs(a - b)).Max();
        Assert.InRange(most, 1e-13, 1e-6);
    }

    [Theory]
    [MemberData(nameof(Rigs))]
    public void ATrackThatGoesOnFromWhatAnotherRemembers_SoundsTheSame(string rig)
    {
        var track = Track(rig);
        Rendered(track, 0, SoundPieces.Length, Block);
        var memory = track.Remember();
        var on = Rendered(track, SoundPieces.Length, Block * 200, Block);
        var other = Track(rig);
        Rendered(other, 0, Block * 100, Block);
        other.GoTo(SoundPieces.Length, memory);
        Assert.Equal(memory, other.Remember());
        Assert.Equal(on, Rendered(other, SoundPieces.Length, Block * 200, Block));
    }

    [Theory]
    [MemberData(nameof(Rigs))]
    public void AWhileAfterOneNoteDiffers_TwoTracksRememberTheSame(string rig)
    {
        var (track, other) = (Track(rig), Track(rig, "[0 2 2 . . .]"));
        var met = 0;
        for (var piece = 0; piece < 5 && met == 0; piece++)
        {
            var from = piece * (long)SoundPieces.Length;
            Rendered(track, from, SoundPieces.Length, Block);
            Rendered(other, from, SoundPieces.Length, Block);
            if (track.Remember().Equals(other.Remember())) met = piece + 1;
        }
        Assert.InRange(met, 1, 5);
    }

    private static double[] Rendered(PartTrack track, long from, int length, int block)
    {
        var (left, right) = (new double[length], new double[length]);
        for (var at = 0; at < length; at += block)
        {
            var now = Math.Min(block, length - at);
            track.Render(from + at, left.AsSpan(at, now), right.AsSpan(at, now));
        }
        return left;
    }

    // A minute of a riff with rests, bends, mutes and chords, whose first moment may differ.
    private static PartTrack Track(string rig, string first = "[0 3 3 . . .]")
    {
        var bar = "@6 ESS pm{ 0 0 0 } @3 Q 7+v @6-1 [0 2 2 1 0 0] E R @2 E 5* ";
        var song = Performer.Play(Sheets.Line($"@6-1 Q {first} H. R | " + string.Concat(Enumerable.Repeat(bar + "| ", 30))));
        return new PartTrack(song, song.Parts[0], RigTable.Find(rig)!, Stretch.OfNumbers(song, null, null)!.Value, 0, false);
    }
}
