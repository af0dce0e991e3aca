using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Tests.Engraving.Layout;

/// <summary>Bars made by chance: any value, tuplet, chord and technique, in one voice or two.</summary>
internal static class RandomBars
{
    private static readonly NoteValue[] Values =
        [new(ValueBase.Half), new(ValueBase.Quarter), new(ValueBase.Quarter, 1), new(ValueBase.Eighth), new(ValueBase.Eighth), new(ValueBase.Eighth, 1), new(ValueBase.Sixteenth), new(ValueBase.ThirtySecond)];

    public static (StrandKind, Beats, Func<Neck, Event>[])[] TwoVoices(Random random, Meter meter)
    {
        var second = random.Next(2) == 0 ? StrandKind.Bass : StrandKind.Drone;
        return [(StrandKind.Main, Beats.Zero, OneVoice(random, meter.Length, 1, above: 3)), (second, Beats.Zero, OneVoice(random, meter.Length, 4, slow: true))];
    }

    /// <param name="random">Chance.</param>
    /// <param name="length">What to fill.</param>
    /// <param name="highest">The highest string to use.</param>
    /// <param name="above">How many strings from the highest on; 0 for all.</param>
    /// <param name="slow">Whether only quarters and longer are taken.</param>
    public static Func<Neck, Event>[] OneVoice(Random random, Beats length, int highest, int above = 0, bool slow = false)
    {
        var events = new List<Func<Neck, Event>>();
        var span = (Kind: Spans.None, Left: 0);
        while (length > Beats.Zero)
        {
            if (span.Left-- <= 0) span = random.Next(10) == 0 ? ((Spans)(1 << random.Next(5)), random.Next(1, 6)) : (Spans.None, random.Next(3));
            var (kind, seed) = (span.Kind, random.Next());
            if (!slow && length >= Beats.Quarter && random.Next(8) == 0)
            {
                var five = random.Next(3) == 0;
                var unit = five ? ValueBase.Sixteenth : ValueBase.Eighth;
                var tuplet = five ? new Tuplet(5, 4, unit) : new Tuplet(3, 2, unit);
                for (var i = 0; i < tuplet.Count; i++)
                {
                    var own = seed + i;
                    events.Add(neck => EventOf(new Random(own), neck, new NoteValue(unit), highest, above) with { Tuplet = tuplet, Spans = kind });
                }
                length -= Beats.Quarter;
                continue;
            }
            var fitting = Values.Where(v => v.Length <= length && (!slow || v.Length >= Beats.Quarter)).ToArray();
            var value = fitting.Length == 0 ? Values.First(v => v.Length <= length) : fitting[random.Next(fitting.Length)];
            length -= value.Length;
            events.Add(neck => EventOf(new Random(seed), neck, value, highest, above) with { Spans = kind });
        }
        return [.. events];
    }

    private static Event EventOf(Random random, Neck neck, NoteValue value, int highest, int above)
    {
        if (random.Next(9) == 0) return new Event { Start = Beats.Zero, Value = value, Stroke = random.Next(4) == 0 ? Stroke.Down : Stroke.None };
        var lowest = above == 0 ? neck.StringCount : Math.Min(neck.StringCount, highest + above - 1);
        highest = Math.Min(highest, lowest);
        var low = random.Next(highest, lowest + 1);
        var count = random.Next(3) == 0 ? random.Next(1, low - highest + 2) : 1;
        var fret = random.Next(20);
        var isShared = random.Next(3) == 0;
        var shared = random.Next();
        var notes = Enumerable.Range(0, count)
            .Select(i => NoteOf(isShared ? new Random(shared) : random, neck, low - i, Math.Min(fret + (isShared ? i % 2 : random.Next(3)), 22))).ToValueList();
        return new Event
        {
            Start = Beats.Zero,
            Value = value,
            Notes = notes,
            Graces = count == 1 && notes[0] is { Attack: Attack.Picked, GlideIn: GlideIn.None } && random.Next(14) == 0 ? GracesOf(random, neck, low, fret) : [],
            Stroke = random.Next(8) == 0 ? Stroke.Down : random.Next(8) == 0 ? Stroke.Up : Stroke.None,
            Roll = count > 2 && random.Next(5) == 0 ? (Roll)random.Next(1, 4) : Roll.None,
            HasFermata = random.Next(25) == 0,
            Words = random.Next(20) == 0 ? "gently" : null,
            Dynamic = value.Length >= Beats.Quarter && random.Next(15) == 0 ? (Dynamic)random.Next(6) : null,
            PickingFinger = random.Next(15) == 0 ? 'm' : null,
        };
    }

    private static ValueList<Note> GracesOf(Random random, Neck neck, int number, int fret) =>
        Enumerable.Range(0, random.Next(1, 3)).Select(i => Plain(neck, number, fret < 5 ? fret + 2 + i : fret - 3 + i)).ToValueList();

    private static Note Plain(Neck neck, int number, int fret) =>
        new() { String = new(number), Fret = new(fret), Sounding = neck.Sounding(new(number), new(fret)) };

    private static Note NoteOf(Random random, Neck neck, int number, int fret)
    {
        var note = Plain(neck, number, fret);
        return random.Next(30) switch
        {
            0 => note with { Bend = new Bend(0, [200, 0]) },
            1 => note with { Bend = new Bend(100, []), Vibrato = new Vibrato(VibratoWidth.Wide) },
            2 => note with { Vibrato = new Vibrato(VibratoWidth.Normal) },
            3 => note with { IsPalmMuted = true },
            4 => note with { LetsRing = true },
            5 => note with { IsDead = true },
            6 => note with { IsGhost = true },
            7 => note with { IsAccented = true, IsStaccato = true },
            8 => note with { Attack = Attack.HammerOn },
            9 => note with { Attack = Attack.Glide },
            10 => note with { GlideIn = GlideIn.FromBelow, GlideOut = GlideOut.Downwards },
            11 => note with { Harmonic = new Harmonic(HarmonicKind.Natural, new(fret)) },
            12 => note with { Tremolo = ValueBase.ThirtySecond },
            13 => note with { Finger = Finger.Ring, Attack = Attack.Tap },
            14 => note with { Bend = new Bend(200, [0]) },
            15 => note with { Bend = new Bend(0, [100]), Vibrato = new Vibrato(VibratoWidth.Normal, 1) },
            16 => note with { Harmonic = new Harmonic(HarmonicKind.Touched, new(Math.Min(fret + 12, 30))) },
            17 => note with { Harmonic = new Harmonic(HarmonicKind.Pinch, new(fret)) },
            18 => note with { Attack = Attack.PickedGlide },
            19 => note with { Attack = Attack.HammerFromNowhere },
            20 => note with { Attack = Attack.Held },
            21 => note with { GlideIn = GlideIn.FromAbove, GlideOut = GlideOut.Upwards },
            22 => note with { Attack = Attack.PullOff },
            24 => note with { Trill = new(fret + random.Next(1, 4)) },
            25 => note with { Trill = new(Math.Max(0, fret - 2)), IsGhost = true },
            26 => note with { DipCents = 50 * random.Next(1, 5) },
            23 => note with { Bend = new Bend(0, [300]) },
            _ => note,
        };
    }
}
