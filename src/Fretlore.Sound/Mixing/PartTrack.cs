using System.Collections.Immutable;
using System.Runtime.Intrinsics;
using Fretlore.Guitar;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Sound.Rigs;
using Fretlore.Sound.Strings;

namespace Fretlore.Sound.Mixing;

/// <summary>One part: its strings through its rig to left and right.</summary>
internal sealed class PartTrack : ITrack
{
    private const int Block = 512;
    private const double OtherSide = 0.25; // Of a double-tracked part, what is heard of each take on the other side.
    private const int HighestPartial = 16;

    private readonly Rig rig;
    private readonly StringPlayer[][] takes;
    private readonly RigChain chain;
    private readonly (double Left, double Right)[] places;
    private readonly Room room = new();
    private readonly Echo? echo;
    private readonly double[][] sounds = [new double[Block], new double[Block]];
    private readonly Vector128<double>[] pairs = new Vector128<double>[Block];
    private readonly double[] leftBlock = new double[Block];
    private readonly double[] rightBlock = new double[Block];

    /// <param name="song">The performance.</param>
    /// <param name="part">What of it is played.</param>
    /// <param name="rig">What it is heard through.</param>
    /// <param name="stretch">The bars that are heard.</param>
    /// <param name="aside">-1 left, 0 middle, 1 right; for a part recorded once.</param>
    public PartTrack(PerformedSong song, PerformedPart part, Rig rig, Stretch stretch, double aside)
    {
        this.rig = rig;
        echo = rig.Repeats is { } repeats ? new Echo(repeats) : null;
        var strings = NotesOf(song, part, stretch);
        takes = [.. Enumerable.Range(0, rig.Takes).Select(take => strings
            .Select(s => new StringPlayer(s.Notes, StringBuild.Of(s.String, s.Neck, rig.Body), rig.PickupPlace, take)).ToArray())];
        chain = new RigChain(rig, Block);
        var both = Math.Sqrt(1 / (1 + OtherSide * OtherSide));
        places = rig.Takes == 2
            ? [(both, both * OtherSide), (both * OtherSide, both)]
            : [(Math.Sqrt((1 - aside) / 2), Math.Sqrt((1 + aside) / 2)), (0, 0)];
    }

    public void Render(long from, Span<double> left, Span<double> right)
    {
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

    private void RenderBlock(long from, int length)
    {
        var left = leftBlock.AsSpan(0, length);
        var right = rightBlock.AsSpan(0, length);
        for (var nth = 0; nth < takes.Length; nth++)
        {
            var sound = sounds[nth].AsSpan(0, length);
            sound.Clear();
            foreach (var player in takes[nth]) player.Play(from, sound);
        }
        for (var i = 0; i < length; i++) pairs[i] = Vector128.Create(sounds[0][i], sounds[1][i]);
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

    private static List<(StringNumber String, Neck Neck, ImmutableArray<StringNote> Notes)> NotesOf(
        PerformedSong song, PerformedPart part, Stretch stretch)
    {
        var strings = new List<(StringNumber, Neck, ImmutableArray<StringNote>)>();
        Neck NeckOf(PerformedNote note) => part.Part.Bars[song.Bars[note.Bar].Bar].Neck;
        var heard = part.Notes.Where(n => n.OnsetSeconds >= stretch.Start - 1e-9 && n.OnsetSeconds < stretch.End - 1e-9);
        foreach (var onString in heard.GroupBy(n => n.String).OrderByDescending(g => g.Key.Value))
        {
            var notes = onString.SelectMany(n => Rounds(NoteOf(n, NeckOf(n), stretch), stretch)).OrderBy(n => n.Start).ToImmutableArray();
            strings.Add((onString.Key, NeckOf(onString.First()), notes));
        }
        return strings;
    }

    // Only the last of what began before anything is heard matters, and the player comes to that by itself.
    private static IEnumerable<StringNote> Rounds(StringNote note, Stretch stretch) => stretch.Rounds()
        .Select(by => note with { Start = note.Start + by, End = note.End + by })
        .Where(n => !stretch.IsLoop || (n.End > 0 && n.Start < stretch.RunUp + stretch.Length + Stretch.Seam));

    internal static StringNote NoteOf(PerformedNote note, Neck neck, Stretch stretch)
    {
        var (start, end) = (stretch.SampleAt(note.OnsetSeconds), stretch.SampleAt(Math.Min(note.ReleaseSeconds, stretch.End)));
        if (note.Harmonic is not { } harmonic) return new StringNote(note, start, end, note.Height.Hertz(), 1);
        // The string vibrates in as many loops as the harmonic is above what is stopped.
        var stopped = neck.Sounding(note.String, harmonic.Kind == HarmonicKind.Natural ? Fret.Open : note.Fret);
        var partial = (int)Math.Round(Math.Pow(2, (note.Height - stopped) / 12.0));
        return new StringNote(note, start, end, stopped.Hertz(), Math.Clamp(partial, 1, HighestPartial));
    }
}
