using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Engraving.Layout;

/// <summary>Songs made by chance from every sign, for checks that must hold on any page.</summary>
internal static class RandomSongs
{
    private static readonly string[] Tunings =
        ["E2 A2 D3 G3 B3 E4", "D2 A2 D3 G3 A3 D4", "A1 E2 A2 D3 F#3 B3", "A1 E2 A2 D3 G3 B3 E4", "E1 A1 D2 G2", "C#1 F#1 B1 E2 A2 D3 G3 B3 E4"];

    public static Song Of(int seed)
    {
        var random = new Random(seed);
        var meter = random.Next(6) switch { 0 => new Meter(3, 4), 1 => new Meter(6, 8), 2 => new Meter(7, 8, [2, 2, 3]), 3 => new Meter(5, 4), _ => Meter.FourFour };
        var builder = new SongBuilder { Meter = meter, Key = new Key(NoteName.FromFifths(random.Next(-4, 6)), (Mode)random.Next(7)) };
        var bars = random.Next(1, 14);
        for (var part = random.Next(1, 4); part > 0; part--)
        {
            builder.Part("Guitar " + part, Tunings[random.Next(Tunings.Length)]);
            for (var bar = 0; bar < bars; bar++) builder.Bar(random.Next(7) == 0 ? [] : BarOf(random, meter));
        }
        var song = builder.Build("Page " + seed);
        for (var bar = 0; bar < bars; bar++) song = song.WithBar(bar, b => Marked(b, random));
        return Playable(song with { Sections = [new Section("First part", 0, bars)] }).Renumbered();
    }

    // A note is hammered or glided to only from the moment before it.
    private static Song Playable(Song song) => song with
    {
        Parts = song.Parts.Select(part =>
        {
            Event? before = null;
            return part with
            {
                Bars = part.Bars.Select(bar => bar with
                {
                    Strands = bar.Strands.Select(strand => strand with { Events = strand.Events.Select(Reached).ToValueList() }).ToValueList(),
                }).ToValueList(),
            };

            Event Reached(Event item)
            {
                var reached = item with
                {
                    Notes = item.Notes.Select(n => n.Attack is Attack.HammerOn or Attack.Glide && before?.Notes.Any(b => b.String == n.String && b.Fret != n.Fret) != true
                        ? n with { Attack = Attack.Picked } : n).ToValueList(),
                };
                before = item;
                return reached;
            }
        }).ToValueList(),
    };

    private static Bar Marked(Bar bar, Random random) => random.Next(8) switch
    {
        0 => bar with { StartsRepeat = true },
        1 => bar with { RepeatCount = random.Next(2, 5) },
        2 => bar with { Tempos = [new TempoMark(Beats.Zero, new Tempo(new NoteValue(ValueBase.Quarter, random.Next(2)), random.Next(40, 220)))] },
        3 => bar with { EndLine = BarLine.Double },
        4 => bar with { EndingPasses = [1], StartsEnding = true, EndsEnding = true, RepeatCount = 2 },
        _ => bar,
    };

    private static Func<Neck, Event>[] BarOf(Random random, Meter meter)
    {
        var events = new List<Func<Neck, Event>>();
        var left = meter.Length;
        while (left > Beats.Zero)
        {
            if (left >= Beats.Quarter && random.Next(8) == 0)
            {
                for (var i = 0; i < 3; i++)
                {
                    var third = One(random, new NoteValue(ValueBase.Eighth));
                    events.Add(neck => third(neck) with { Tuplet = new Tuplet(3, 2, ValueBase.Eighth) });
                }
                left -= Beats.Quarter;
                continue;
            }
            var values = new[] { new NoteValue(ValueBase.Half), new(ValueBase.Quarter), new(ValueBase.Quarter, 1), new(ValueBase.Eighth), new(ValueBase.Eighth), new(ValueBase.Eighth, 1), new(ValueBase.Sixteenth), new(ValueBase.ThirtySecond) };
            var fitting = values.Where(v => v.Length <= left).ToArray();
            var value = fitting[random.Next(fitting.Length)];
            left -= value.Length;
            events.Add(One(random, value));
        }
        return [.. events];
    }

    private static Func<Neck, Event> One(Random random, NoteValue value)
    {
        var seed = random.Next();
        return neck => EventOf(new Random(seed), neck, value);
    }

    private static Event EventOf(Random random, Neck neck, NoteValue value)
    {
        if (random.Next(9) == 0) return new Event { Start = Beats.Zero, Value = value };
        var strings = neck.StringCount;
        var low = random.Next(1, strings + 1);
        var count = random.Next(3) == 0 ? random.Next(1, low + 1) : 1;
        var fret = random.Next(20);
        var notes = Enumerable.Range(0, count).Select(i => NoteOf(random, neck, low - i, Math.Min(fret + random.Next(3), 22))).ToValueList();
        return new Event
        {
            Start = Beats.Zero,
            Value = value,
            Notes = notes,
            Stroke = random.Next(8) == 0 ? Stroke.Down : random.Next(8) == 0 ? Stroke.Up : Stroke.None,
            Roll = count > 2 && random.Next(5) == 0 ? Roll.LowToHigh : Roll.None,
            Words = random.Next(20) == 0 ? "gently" : null,
            Dynamic = value.Length >= Beats.Quarter && random.Next(15) == 0 ? Dynamic.MezzoForte : null,
            PickingFinger = random.Next(15) == 0 ? 'm' : null,
        };
    }

    private static Note NoteOf(Random random, Neck neck, int number, int fret)
    {
        var note = new Note { String = new(number), Fret = new(fret), Sounding = neck.Sounding(new(number), new(fret)) };
        return random.Next(16) switch
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
            _ => note,
        };
    }
}
