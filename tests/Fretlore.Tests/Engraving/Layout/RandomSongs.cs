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
        var meter = random.Next(7) switch { 0 => new Meter(3, 4), 1 => new Meter(6, 8), 2 => new Meter(7, 8, [2, 2, 3]), 3 => new Meter(5, 4), 4 => new Meter(2, 2), _ => Meter.FourFour };
        var builder = new SongBuilder { Meter = meter, Key = new Key(NoteName.FromFifths(random.Next(-4, 6)), (Mode)random.Next(7)) };
        var bars = random.Next(1, 14);
        for (var part = random.Next(1, 4); part > 0; part--)
        {
            builder.Part("Guitar " + part, Tunings[random.Next(Tunings.Length)]);
            for (var bar = 0; bar < bars; bar++)
            {
                if (random.Next(7) == 0) builder.Bar();
                else if (random.Next(4) == 0) builder.Strands(RandomBars.TwoVoices(random, meter));
                else builder.Bar(RandomBars.OneVoice(random, meter.Length, 1));
            }
        }
        var song = builder.Build("Page " + seed);
        var otherKey = new Key(NoteName.FromFifths(random.Next(-4, 6)), Mode.Ionian, true);
        var keyFrom = random.Next(bars * 2);
        for (var bar = 0; bar < bars; bar++)
        {
            song = song.WithBar(bar, b => Marked(bar >= keyFrom ? b with { Key = otherKey } : b, random));
            for (var part = 0; part < song.Parts.Count; part++)
            {
                var here = bar;
                if (bar > 0 && random.Next(12) == 0) song = song.WithPartBar(part, bar, b => b with { Repeats = 1, Strands = song.Parts[part].Bars[here - 1].Strands });
            }
        }
        var half = bars / 2;
        var sections = half > 0 ? new Section[] { new("First part", 0, half), new("Another one", half, bars - half) } : [new Section("First part", 0, bars)];
        return Playable(song with { Sections = [.. sections] }).Renumbered();
    }

    // A note is hammered, pulled off, glided or tied to only from the moment before it.
    private static Song Playable(Song song) => song with
    {
        Parts = song.Parts.Select(part =>
        {
            var before = new Dictionary<StrandKind, Event>();
            return part with
            {
                Bars = part.Bars.Select(bar => bar with
                {
                    Strands = bar.Strands.Select(strand => strand with { Events = Tied(strand.Events.Select(e => Reached(strand.Kind, e)).ToArray()) }).ToValueList(),
                }).ToValueList(),
            };

            Event Reached(StrandKind kind, Event item)
            {
                var last = before.GetValueOrDefault(kind);
                var reached = item with { Notes = item.Notes.Select(n => Reachable(n, last)).ToValueList() };
                before[kind] = reached;
                return reached;
            }
        }).ToValueList(),
    };

    private static Note Reachable(Note note, Event? before)
    {
        var from = before?.Notes.Items.FirstOrDefault(b => b.String == note.String);
        return note.Attack switch
        {
            Attack.HammerOn or Attack.PullOff => from is null || from.Fret == note.Fret ? note with { Attack = Attack.Picked }
                : note with { Attack = note.Fret.Number > from.Fret.Number ? Attack.HammerOn : Attack.PullOff },
            Attack.Glide or Attack.PickedGlide when from is null || from.Fret == note.Fret => note with { Attack = Attack.Picked },
            Attack.Held when from is null || from.IsDead || from.GlideOut != GlideOut.None => note with { Attack = Attack.Picked },
            Attack.Held => from! with { Attack = Attack.Held, GlideIn = GlideIn.None, IsAccented = false, IsStaccato = false, Finger = null, Vibrato = default, Bend = from.Bend is { EndCents: > 0 } bend ? new Bend(bend.EndCents, [0]) : null },
            _ => note,
        };
    }

    // What holds a note says so.
    private static ValueList<Event> Tied(Event[] events)
    {
        for (var i = 0; i + 1 < events.Length; i++)
        {
            var next = events[i + 1].Notes;
            events[i] = events[i] with
            {
                Notes = events[i].Notes.Select(n => n with { IsHeldOn = next.Items.Any(h => h.String == n.String && h.Attack == Attack.Held) }).ToValueList(),
            };
        }
        return events.ToValueList();
    }

    private static Bar Marked(Bar bar, Random random) => random.Next(13) switch
    {
        0 => bar with { StartsRepeat = true },
        1 => bar with { RepeatCount = random.Next(2, 5) },
        2 => bar with { Tempos = [new TempoMark(Beats.Zero, new Tempo(new NoteValue(ValueBase.Quarter, random.Next(2)), random.Next(40, 220)))] },
        3 => bar with { EndLine = BarLine.Double },
        4 => bar with { EndingPasses = [1], StartsEnding = true, EndsEnding = true, RepeatCount = 2 },
        6 => bar with { IsSegno = true, EndLine = BarLine.Double },
        7 => bar with { IsCoda = true, Jump = Jump.ToCoda },
        8 => bar with { Jump = (Jump)random.Next(1, 9) },
        5 => bar with { FeelChange = new Feel(ValueBase.Eighth), Tempos = [new TempoMark(Beats.Quarter, new Tempo(new NoteValue(ValueBase.Quarter), 90))] },
        _ => bar,
    };
}
