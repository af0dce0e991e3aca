using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Sound.Pieces;
using Fretlore.Sound.Rigs;
using Fretlore.Sound.Strings;

namespace Fretlore.Sound.Mixing;

/// <summary>One part: its strings through its rig to left and right.</summary>
internal sealed class PartTrack : ITrack
{
    private const int Block = 480; // Pieces are whole blocks.
    private const double OtherSide = 0.25; // Of a double-tracked part, what is heard of each take on the other side.

    private readonly Rig rig;
    private readonly ImmutableArray<ImmutableArray<(StringBuild Build, ImmutableArray<StringNote> Notes)>> strings;
    private readonly StringPlayer[][] takes;
    private readonly RigChain chain;
    private readonly (double Left, double Right)[] places;
    private readonly Room room = new();
    private readonly Echo? echo;
    private readonly WahPedal? wah;
    private readonly double[][] sounds = [new double[Block], new double[Block]];
    private readonly double[] shaken = new double[Block];
    private readonly double[] along = new double[Block];
    private readonly Vector128<double>[] pairs = new Vector128<double>[Block];
    private readonly double[] leftBlock = new double[Block];
    private readonly double[] rightBlock = new double[Block];
    private bool isMuted;

    /// <param name="song">The performance.</param>
    /// <param name="part">What of it is played.</param>
    /// <param name="rig">What it is heard through.</param>
    /// <param name="stretch">The bars that are heard.</param>
    /// <param name="aside">-1 left, 0 middle, 1 right; for a part recorded once.</param>
    /// <param name="exact">True for nothing but what is written.</param>
    public PartTrack(PerformedSong song, PerformedPart part, Rig rig, Stretch stretch, double aside, bool exact)
    {
        this.rig = rig;
        echo = rig.Repeats is { } repeats ? new Echo(repeats) : null;
        wah = WahPedal.Of(song, part, stretch);
        strings = [.. Enumerable.Range(0, rig.Takes).Select(take => StringNotes.Of(song, exact ? part : HumanTouch.Play(part, take), stretch, take, !exact)
            .Select(s => (StringBuild.Of(s.String, s.Neck, rig.Body, s.Said), s.Notes)).ToImmutableArray())];
        takes = [.. strings.Select((played, take) => played.Select(s => new StringPlayer(s.Notes, s.Build, rig.PickupPlace, take)).ToArray())];
        chain = new RigChain(rig, Block);
        var both = Math.Sqrt(1 / (1 + OtherSide * OtherSide));
        places = rig.Takes == 2
            ? [(both, both * OtherSide), (both * OtherSide, both)]
            : [(Math.Sqrt((1 - aside) / 2), Math.Sqrt((1 + aside) / 2)), (0, 0)];
    }

    /// <summary>All that it is besides what it plays, to be compared by value.</summary>
    public object Make => (rig, places[0], places[1], strings.Select(take => take.Select(s => s.Build).ToValueList()).ToValueList(), wah?.Beats);

    public object Content => (Make, PlayedIn(0, long.MaxValue));

    /// <summary>All that is played from one sample up to another, to be compared by value.</summary>
    public object PlayedIn(long from, long to) => (
        strings.Select(take => take.Select(s => s.Notes.Where(note => (note.Start >= from || from == 0) && note.Start < to).ToValueList()).ToValueList()).ToValueList(),
        wah?.UsesIn(from, to));

    /// <summary>Takes down what it remembers, and goes on from that.</summary>
    public TrackMemory Remember()
    {
        var visitor = new MemoryVisitor();
        Visit(visitor, 0);
        return visitor.Taken();
    }

    /// <summary>Goes to a sample where a piece begins.</summary>
    /// <param name="sample">The sample.</param>
    /// <param name="memory">What it, or a track that is made alike and played the same of late, remembers there.</param>
    public void GoTo(long sample, TrackMemory memory) => Visit(new MemoryVisitor(memory), sample);

    private void Visit(MemoryVisitor visitor, long sample)
    {
        foreach (var player in takes.SelectMany(take => take)) player.Visit(visitor, sample);
        visitor.Exact(ref isMuted);
        if (rig.Sympathy > 0) visitor.Wave(shaken);
        wah?.Visit(visitor);
        chain.Visit(visitor);
        echo?.Visit(visitor);
        if (rig.Room > 0) room.Visit(visitor);
    }

    public void Render(long from, Span<double> left, Span<double> right)
    {
        if (from > 0 && from % SoundPieces.Length == 0) Remember();
        for (var at = 0; at < left.Length; at += Block)
        {
            var length = Math.Min(Block, left.Length - at);
            RenderBlock(from + at, length);
            for (var i = 0; i < length; i++)
            {
                left[at + i] += rig.Level * leftBlock[i];
                right[at + i] += rig.Level * rightBlock[i];
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void RenderBlock(long from, int length)
    {
        var left = leftBlock.AsSpan(0, length);
        var right = rightBlock.AsSpan(0, length);
        for (var nth = 0; nth < takes.Length; nth++) PlayStrings(takes[nth], from, sounds[nth].AsSpan(0, length));
        for (var i = 0; i < length; i++) pairs[i] = Vector128.Create(sounds[0][i], sounds[1][i]);
        wah?.Run(pairs.AsSpan(0, length), from);
        chain.Run(pairs.AsSpan(0, length));
        var (one, two) = (places[0], places[1]);
        for (var i = 0; i < length; i++)
        {
            var (first, second) = (pairs[i].GetElement(0), pairs[i].GetElement(1));
            left[i] = one.Left * first + two.Left * second;
            right[i] = one.Right * first + two.Right * second;
        }
        echo?.Run(left, right);
        if (rig.Room > 0) room.Run(left, right, rig.Room);
    }

    // What was played in the last block shakes the strings that nobody plays, through the bridge. What those do in turn is left out, so that
    // nothing goes round and grows (Karjalainen, Välimäki and Tolonen 1998).
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void PlayStrings(StringPlayer[] players, long from, Span<double> sound)
    {
        sound.Clear();
        if (rig.Sympathy == 0)
        {
            foreach (var player in players) player.Play(from, sound);
            return;
        }
        var others = along.AsSpan(0, sound.Length);
        others.Clear();
        foreach (var player in players) player.Play(from, sound, others, shaken.AsSpan(0, sound.Length), isMuted);
        // A hand that mutes one string lies on all of them.
        isMuted = players.Any(player => player.IsMuted);
        var share = isMuted ? 0 : rig.Sympathy;
        for (var i = 0; i < sound.Length; i++)
        {
            shaken[i] = share * sound[i];
            sound[i] += others[i];
        }
    }
}
