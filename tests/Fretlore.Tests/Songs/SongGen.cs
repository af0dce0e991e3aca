using CsCheck;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Tests.Songs;

/// <summary>Generated songs: any metre, values, tuplets, chords and techniques that a player could meet, over one or two parts.</summary>
internal static class SongGen
{
    private static readonly string[] Tunings =
        ["E2 A2 D3 G3 B3 E4", "A1 E2 A2 D3 F#3 B3", "B1 E2 A2 D3 G3 B3 E4", "C2 G2 D3 G3 C4 D4", "E1 A1 D2 G2", "F#1 B1 E2 A2 D3 G3 B3 E4"];

    private static readonly Meter[] Meters =
        [Meter.FourFour, new(3, 4), new(6, 8), new(7, 8, [2, 2, 3]), new(5, 4), new(12, 8), new(2, 2), new(15, 16)];

    public static Gen<Song> Songs { get; } = Gen.Select(
        Gen.Int[0, Meters.Length - 1], Gen.Int[0, Tunings.Length - 1], Gen.Int[0, 4], Gen.Int[1, 2], Gen.Int[1, 6], Gen.Int[0, 1_000_000])
        .Select((meter, tuning, capo, parts, bars, seed) => Make(Meters[meter], Tunings[tuning], CapoOf(capo, Tunings[tuning].Split(' ').Length, seed), parts, bars, new Random(seed)));

    // One in three covers some strings only.
    private static Capo CapoOf(int fret, int strings, int seed)
    {
        if (fret == 0 || seed % 3 > 0) return fret;
        var highest = 1 + seed / 3 % (strings - 1);
        return Capo.Over(fret, new StringNumber(highest), new StringNumber(Math.Min(strings - (highest == 1 ? 1 : 0), highest + seed / 100 % 4)));
    }

    private static Song Make(Meter meter, string tuning, Capo capo, int parts, int bars, Random random)
    {
        var builder = new SongBuilder { Meter = meter, Key = new Key(NoteName.FromFifths(random.Next(-3, 5)), (Mode)random.Next(6)) };
        for (var part = 0; part < parts; part++)
        {
            builder.Part("part " + part, tuning, capo);
            for (var bar = 0; bar < bars; bar++) AddBar(builder, meter, tuning.Split(' ').Length, random);
        }
        var song = builder.Build("Generated");
        return song with { Bars = song.Bars.Select((b, i) => Decorate(b, i, song.Bars.Count, random)).ToValueList() };
    }

    // A repeat over the whole song with two endings at times, tempo changes within bars, swing.
    private static Bar Decorate(Bar bar, int index, int count, Random random)
    {
        var repeats = count >= 4 && random.Next(2) == 0;
        if (random.Next(4) == 0)
            bar = bar with { Tempos = [.. bar.Tempos, new TempoMark(bar.Length / 2, new Tempo(new NoteValue(ValueBase.Quarter), random.Next(40, 240)))] };
        if (random.Next(6) == 0) bar = bar with { FeelChange = new Feel(random.Next(2) == 0 ? ValueBase.Eighth : null) };
        if (repeats && index == count - 1) bar = bar with { RepeatCount = random.Next(2, 4) };
        return bar;
    }

    private static void AddBar(SongBuilder builder, Meter meter, int strings, Random random)
    {
        if (random.Next(8) == 0)
        {
            builder.Bar();
            return;
        }
        builder.Strands(random.Next(4) == 0
            ? [(StrandKind.Main, Beats.Zero, Fill(meter.Length, strings - 1, 1, random)), (StrandKind.Bass, Beats.Zero, Fill(Beats.Quarter, 1, strings, random))]
            : [(StrandKind.Main, Beats.Zero, Fill(meter.Length, strings, 1, random))]);
    }

    private static Func<Neck, Event>[] Fill(Beats length, int strings, int first, Random random)
    {
        var events = new List<Func<Neck, Event>>();
        while (length > Beats.Zero)
        {
            if (length >= Beats.Quarter && random.Next(4) == 0)
            {
                var count = random.Next(2) == 0 ? 3 : 5;
                var unit = count == 3 ? ValueBase.Eighth : ValueBase.Sixteenth;
                var tuplet = new Tuplet(count, count == 3 ? 2 : 4, unit);
                for (var i = 0; i < count; i++) events.Add(One(new NoteValue(unit), tuplet, strings, first, random));
                length -= Beats.Quarter;
                continue;
            }
            var fitting = new[] { ValueBase.Half, ValueBase.Quarter, ValueBase.Eighth, ValueBase.Sixteenth, ValueBase.ThirtySecond }
                .SelectMany(b => new[] { new NoteValue(b), new NoteValue(b, 1) })
                .Append(new NoteValue(ValueBase.SixtyFourth)).Where(v => v.Length <= length).ToList();
            var value = fitting[random.Next(Math.Min(fitting.Count, 6))];
            events.Add(One(value, null, strings, first, random));
            length -= value.Length;
        }
        return [.. events];
    }

    private static Func<Neck, Event> One(NoteValue value, Tuplet? tuplet, int strings, int first, Random random)
    {
        var places = random.Next(8) == 0
            ? []
            : Enumerable.Range(first, strings).OrderBy(_ => random.Next()).Take(1 + random.Next(3)).OrderDescending().ToArray();
        return neck =>
        {
            var notes = places.Select(s => One(neck, s, random)).ToValueList();
            return new Event
            {
                Start = Beats.Zero,
                Value = value,
                Tuplet = tuplet,
                Notes = notes,
                Graces = notes.Count == 1 && random.Next(10) == 0 ? [Plain(neck, places[0], 2), Plain(neck, places[0], 4)] : [],
                Stroke = (Stroke)random.Next(3),
                Roll = notes.Count > 1 && random.Next(8) == 0 ? (Roll)random.Next(4) : Roll.None,
                HasFermata = random.Next(20) == 0,
                Dynamic = random.Next(10) == 0 ? (Dynamic)random.Next(6) : null,
                Words = random.Next(20) == 0 ? "with <care> & \u0007 love" : null,
                Spans = random.Next(6) == 0 ? (Spans)(1 << random.Next(5)) : Spans.None,
            };
        };
    }

    private static Note One(Neck neck, int number, Random random)
    {
        var note = Plain(neck, number, random.Next(18));
        note = random.Next(11) switch
        {
            0 => note with { Bend = new Bend(random.Next(2) * 200, [random.Next(1, 6) * 50, 0]), Vibrato = new Vibrato(VibratoWidth.Wide, 1) },
            1 => note with { GlideOut = (GlideOut)random.Next(3), GlideIn = (GlideIn)random.Next(3) },
            2 => note with { Tremolo = ValueBase.ThirtySecond },
            3 => note with { IsDead = true, IsGhost = random.Next(2) == 0 },
            5 => note with { Trill = neck.Above(note.String, note.Fret, random.Next(1, 4)) },
            6 => note with { DipCents = random.Next(1, 5) * 50 },
            4 => note with { Harmonic = new Harmonic((HarmonicKind)random.Next(3), new Fret(12)), Finger = (Finger)random.Next(5) },
            _ => note with { Attack = (Attack)random.Next(8) },
        };
        return note with
        {
            IsPalmMuted = random.Next(3) == 0,
            LetsRing = random.Next(3) == 0,
            IsAccented = random.Next(5) == 0,
            IsStaccato = random.Next(5) == 0,
            IsHeldOn = random.Next(4) == 0,
        };
    }

    private static Note Plain(Neck neck, int number, int fret) => neck.Capo.IsBehind(new StringNumber(number), new Fret(fret)) ? Plain(neck, number, 0) : new()
    {
        String = new StringNumber(number),
        Fret = new Fret(fret),
        Sounding = neck.Sounding(new StringNumber(number), new Fret(fret)),
    };
}
