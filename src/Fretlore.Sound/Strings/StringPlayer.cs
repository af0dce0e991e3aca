using System.Collections.Immutable;
using Fretlore.Performance;
using Fretlore.Sound.Pieces;

namespace Fretlore.Sound.Strings;

/// <summary>A note of one string with its place in samples and what must vibrate for it.</summary>
/// <param name="Note">As performed; without its number and bar, so that notes that sound alike are equal.</param>
/// <param name="Start">Sample of its onset.</param>
/// <param name="End">Sample of its release.</param>
/// <param name="Hertz">The stopped string's frequency; a harmonic sounds at a multiple of it.</param>
/// <param name="Partial">1, or the partial a harmonic leaves.</param>
/// <param name="Seed">Of the noise that comes with it.</param>
/// <param name="Varies">True where the pick meets the string a little elsewhere each time.</param>
internal readonly record struct StringNote(PerformedNote Note, long Start, long End, double Hertz, int Partial, ulong Seed, bool Varies);

/// <summary>Plays the notes of one string, block by block.</summary>
internal sealed class StringPlayer
{
    private const int ControlLength = 32; // Samples between looks at a pitch that moves: 0.7 ms.
    private const double SilenceLevel = 1e-7;
    private const double DampedLoss = 45; // Nepers a second once a hand lies on the string: 60 dB in 0.15 s.

    private readonly StringLoop loop = new();
    private readonly StringBuild build;
    private readonly ImmutableArray<StringNote> notes;
    private readonly double detune;
    private readonly bool varies;
    private readonly double[] push = new double[Push.LengthOf(8192)];
    private int next;
    private int pushAt;
    private int pushEnd;
    private int stopsFor;
    private bool isRinging;
    private bool isReleased;
    private bool ringsAlong;
    private LoopDesign design;
    private StringNote current;

    /// <param name="notes">The string's notes in order of time.</param>
    /// <param name="build">What it is made of.</param>
    /// <param name="pickupPlace">Share of the open string between bridge and pickup; 0 to hear the bridge.</param>
    /// <param name="take">0 for the first time it is recorded, 1 for the second: small things differ.</param>
    public StringPlayer(ImmutableArray<StringNote> notes, StringBuild build, double pickupPlace, int take)
    {
        this.notes = notes;
        this.build = build;
        varies = take > 0;
        detune = take == 0 ? 1 : Math.Pow(2, 1.2 / 1200);
        loop.PickupDelay = Math.Min(pickupPlace * SampleRate.Hertz / build.OpenHertz, 4000);
    }

    /// <summary>True while a hand mutes what sounds on it.</summary>
    public bool IsMuted => isRinging && current.Note.Damping == Damping.Palm;

    /// <summary>Goes through what it remembers; while that is put back, it goes to a sample.</summary>
    public void Visit(MemoryVisitor visitor, long sample)
    {
        // What nobody hears any more is forgotten.
        if (visitor.TakesDown && !isRinging) (current, design, isReleased, stopsFor, pushAt, pushEnd) = (default, default, false, 0, 0, 0);
        visitor.Exact(ref isRinging);
        visitor.Exact(ref isReleased);
        visitor.Exact(ref ringsAlong);
        visitor.Exact(ref stopsFor);
        visitor.Note(ref current);
        var toPush = pushEnd - pushAt;
        visitor.Exact(ref toPush);
        if (visitor.TakesDown) push.AsSpan(pushAt, toPush).CopyTo(push);
        (pushAt, pushEnd) = (0, toPush);
        visitor.Exact(push.AsSpan(0, toPush));
        loop.Visit(visitor, isRinging || ringsAlong, SampleRate.Hertz / build.OpenHertz);
        if (visitor.TakesDown) return;
        if (isRinging) design = DesignOf(current);
        next = 0;
        while (next < notes.Length && notes[next].Start < sample) next++;
    }

    /// <summary>Adds the string's sound from a sample on, as it is played.</summary>
    public void Play(long from, Span<double> output) => Play(from, output, default, default, false);

    /// <summary>Adds the string's sound from a sample on.</summary>
    /// <param name="from">The sample.</param>
    /// <param name="output">Takes what is played.</param>
    /// <param name="along">Takes how the open string rings along while nobody plays it; as long as the output, or empty where strings are kept still.</param>
    /// <param name="shaking">What comes to it through the bridge; as long as that.</param>
    /// <param name="isMuted">True while a hand lies on the strings.</param>
    public void Play(long from, Span<double> output, Span<double> along, ReadOnlySpan<double> shaking, bool isMuted)
    {
        for (var at = 0; at < output.Length;)
        {
            while (next < notes.Length && notes[next].Start <= from + at) Begin(notes[next++]);
            if (isRinging && !isReleased && from + at >= current.End) Release();
            var length = output.Length - at;
            if (next < notes.Length) length = (int)Math.Min(length, notes[next].Start - from - at);
            if (isRinging) length = Sound(from + at, length, output[at..]);
            else if (!along.IsEmpty) RingAlong(shaking.Slice(at, length), along.Slice(at, length), isMuted);
            at += length;
        }
    }

    // The open string, with nobody's hand on it.
    private void RingAlong(ReadOnlySpan<double> shaking, Span<double> along, bool isMuted)
    {
        if (!ringsAlong)
        {
            ringsAlong = true;
            var open = LoopDesign.Of(build.OpenHertz, build.LossAt, build.Stiffness);
            loop.Take(open);
            loop.Return = 1;
            loop.JumpTo(open.DelayFor(build.OpenHertz * detune), isRinging: false);
        }
        loop.Damping = isMuted ? Math.Exp(-DampedLoss / build.OpenHertz) : 1;
        if (loop.Run(shaking, along) < SilenceLevel && shaking[^1] == 0) loop.Silence();
    }

    private int Sound(long at, int length, Span<double> output)
    {
        if (!isReleased) length = (int)Math.Min(length, Math.Max(1, current.End - at));
        if (stopsFor > 0) length = Math.Min(length, stopsFor);
        if (!current.Note.Pitch.IsFlat)
        {
            length = Math.Min(length, ControlLength);
            loop.MoveTo(DelayAt(at + length - current.Start), length);
        }
        var pushed = Math.Min(length, pushEnd - pushAt);
        var largest = loop.Run(push.AsSpan(pushAt, pushed), output[..length]);
        pushAt += pushed;
        if (stopsFor > 0)
        {
            stopsFor -= length;
            if (stopsFor == 0) loop.Return = 1;
        }
        if (largest < SilenceLevel && pushAt == pushEnd && length >= ControlLength)
        {
            loop.Silence();
            isRinging = false;
        }
        return length;
    }

    private void Begin(StringNote note)
    {
        current = note;
        ringsAlong = false;
        design = DesignOf(note);
        loop.Take(design);
        loop.Damping = 1;
        var pluck = Push.Of(note.Note, note.Hertz / build.OpenHertz);
        if (note.Partial > 1) pluck = pluck with { Place = 0.3 };
        var stops = pluck.Stops || !isRinging;
        loop.JumpTo(DelayAt(0), isRinging && !stops);
        isReleased = false;
        isRinging |= pluck.Level > 0;

        var period = SampleRate.Hertz / (note.Hertz * Math.Pow(2, note.Note.Pitch.StartCents / 1200));
        // Until what the pick brings comes round for the first time.
        stopsFor = stops ? (int)DelayAt(0) : 0;
        loop.Return = stops ? 0.05 : 1;
        pushAt = 0;
        pushEnd = pluck.Level > 0 ? Math.Min(Push.LengthOf(period), push.Length) : 0;
        var noise = new Noise(note.Seed);
        if (note.Varies || varies) pluck = pluck with { Place = pluck.Place * (1 + 0.15 * noise.Next()) };
        pluck.Write(push.AsSpan(0, pushEnd), period, note.Partial, ref noise);
    }

    private void Release()
    {
        isReleased = true;
        loop.Damping = Math.Exp(-DampedLoss / current.Hertz);
        loop.MoveTo(DelayAt(current.End - current.Start), 1);
        loop.JumpTo(DelayAt(current.End - current.Start), false);
    }

    private double DelayAt(long sample)
    {
        var hertz = current.Hertz * detune;
        if (!current.Note.Pitch.IsFlat)
        {
            // After its release a string keeps the pitch it had.
            var last = (current.End - current.Start) / (double)SampleRate.Hertz;
            hertz *= Math.Pow(2, current.Note.Pitch.CentsAt(Math.Min(sample / (double)SampleRate.Hertz, last)) / 1200);
        }
        return design.DelayFor(hertz, current.Partial);
    }

    private LoopDesign DesignOf(in StringNote note) => LoopDesign.Of(note.Hertz, LossOf(note.Note.Damping), build.StiffnessAt(note.Hertz));

    private Func<double, double> LossOf(Damping damping) => damping switch
    {
        Damping.Palm => hertz => 13 + 8e-6 * hertz * hertz,
        Damping.Dead => hertz => 110 + 1e-4 * hertz * hertz,
        _ => build.LossAt,
    };
}
