using CsCheck;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Tests.Lesson;

/// <summary>Riffs of any kind a hand can write: places, legato, shapes, mutes, bends, harmonics, rests, ties, strands, repeats.</summary>
internal static class GeneratedRiffs
{
    private static readonly Gen<string> Tunings = OneOf("E2 A2 D3 G3 B3 E4", "A1 E2 A2 D3 F#3 B3", "B1 E2 A2 D3 G3 B3 E4",
        "G2 D3 G3 D4", "C2 F2 A#2 D#3 G3 C4 F4 A4 D5");

    private static readonly Gen<string> Cells = OneOf("E", "S", "Q", "ESS", "SSE", "E.S", "QEE", "H", "Y");

    private static readonly Gen<Bend?> Bends = Gen.Frequency((6, Gen.Const((Bend?)null)), (1, Gen.Select(
        OneOf(0, 0, 0, 100, 200), OneOf(50, 100, 200, 300, 400, 220, 37).Array[0, 2], Gen.Bool,
        (from, to, release) => (Bend?)new Bend(from, [.. to, .. release ? new[] { 0 } : []]))));

    private static readonly Gen<Func<Note, Note>> Marks = Gen
        .Select(Gen.Int[0, 40], Gen.Bool, Bends, Gen.Enum<VibratoWidth>(), Gen.Int[0, 3]).Select((kind, on, bend, width, move) =>
        (Func<Note, Note>)(note => kind switch
        {
            0 => note with { IsGhost = true },
            1 => note with { IsAccented = true, IsStaccato = on },
            2 => note with { LetsRing = true },
            3 => note with { Tremolo = on ? ValueBase.ThirtySecond : ValueBase.Sixteenth },
            4 => note with { Finger = on ? Finger.Little : Finger.Thumb },
            5 => note with { GlideIn = on ? GlideIn.FromBelow : GlideIn.FromAbove },
            6 => note with { GlideOut = on ? GlideOut.Downwards : GlideOut.Upwards },
            7 => note with { IsPalmMuted = true, Harmonic = on ? new Harmonic(HarmonicKind.Pinch, note.Fret) : null },
            8 => note with { Harmonic = new Harmonic(HarmonicKind.Natural, note.Fret) },
            9 => note with { Harmonic = new Harmonic(HarmonicKind.Touched, new Fret(note.Fret.Number + 12)) },
            10 => note with { Attack = Attack.HammerFromNowhere },
            11 => note with { Attack = Attack.PickedGlide },
            12 or 13 or 14 or 15 when !note.Fret.IsOpen =>
                note with { Bend = bend, Vibrato = new Vibrato(width, Math.Min(move, bend?.ToCents.Count ?? 0)) },
            _ => note,
        }));

    private static readonly Gen<Action<RiffBuilder>> Steps = Gen
        .Select(Gen.Int[0, 11], Gen.Int[0, 36].Array[1, 6], Gen.Int[0, 8], Gen.Int[1, 4], Cells, Marks, Gen.Bool).Select(
        (kind, frets, at, count, cell, marks, on) => (Action<RiffBuilder>)(riff => Step(riff, kind, frets, at, count, cell, marks, on)));

    /// <summary>Riffs of one to four bars, with bars that come back, changed or not.</summary>
    public static Gen<Riff> Any =>
        Gen.Select(Tunings, Steps.Array[2, 8].Array[1, 3], Gen.Int[0, 7], Gen.Bool).Select((tuning, bars, back, second) =>
    {
        var riff = new RiffBuilder("any", tuning);
        riff.On(1);
        foreach (var bar in bars)
        {
            foreach (var step in bar) step(riff);
            if (second && back == 1) riff.Strand(StrandKind.Bass, Beats.Of(back, 2)).On(riff.StringCount).Play("0 3 =");
            riff.Bar(back == 2 ? b => b with { RepeatCount = 3, StartsRepeat = true } : null);
        }
        // The last bar again, as it was or with another end.
        if (back > 3)
        {
            foreach (var step in back == 4 ? bars[^1] : bars[^1].Append(bars[0][0])) step(riff);
            riff.Bar();
        }
        return riff.Build();
    });

    private static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static void Step(RiffBuilder riff, int kind, int[] frets, int at, int count, string cell, Func<Note, Note> marks, bool on)
    {
        var strings = riff.StringCount;
        var top = 1 + at % strings;
        var places = Enumerable.Range(top, Math.Min(count, strings - top + 1)).ToArray();
        var row = string.Join(' ', frets.Select(f => f % 20));
        switch (kind)
        {
            case 0: riff.On(top).In(cell).Play(row); break;
            case 1: riff.On(places).In(cell).Play(row); break;
            case 2: riff.On(top).In("S").Play(string.Join(' ', frets.Select((f, i) => (i == 0 ? "" : "h") + f))); break;
            case 3: riff.In(cell).Play(string.Join(' ', Enumerable.Repeat($"{frets[0] % 12}{(on ? "m" : "")}", count))); break;
            case 4: riff.On(top).Play(frets[0].ToString(System.Globalization.CultureInfo.InvariantCulture), marks); break;
            case 5: riff.In(cell).Shape(null,
                [.. Enumerable.Range(0, strings).Select(i => i < frets.Length && frets[i] < 30 ? frets[i] % 9 : (int?)null)]); break;
            case 6: riff.In("E", new Tuplet(3, 2, ValueBase.Eighth)).Play("5 7 R"); break;
            case 7: riff.Play(on ? "x R x" : "R"); break;
            case 8: riff.Play("0m 0m = ="); break;
            case 9: riff.In("ESS").Play("0m 0m 0m 5 5 5 5 0m 0m"); break;
            case 10: riff.Event([.. places.OrderDescending()
                .Select((s, i) => marks(riff.At(new StringNumber(s), new Fret(frets[i % frets.Length]))))]); break;
            default: riff.Play("t12 h5 = ").Change(e =>
                e with { Roll = on ? Roll.LowToHigh : Roll.None, Stroke = on ? Stroke.Up : Stroke.Down }); break;
        }
    }
}
