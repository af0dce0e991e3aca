using System.Text;
using CsCheck;
using Fretlore.Score;

namespace Fretlore.Tests.Songs;

/// <summary>Generated sheets: every technique of the language in valid bars, one or two parts, riffs, repeats, endings, changes.</summary>
internal static class SheetGen
{
    private static readonly string[] Tunings = ["E2 A2 D3 G3 B3 E4", "A1 E2 A2 D3 F#3 B3", "B1 E2 A2 D3 G3 B3 E4", "E1 A1 D2 G2"];
    private static readonly (string Text, int Eighths)[] Meters = [("4/4", 8), ("3/4", 6), ("7/8 2+2+3", 7), ("6/8", 6), ("5/4", 10)];

    public static Gen<string> Sheets { get; } = Gen.Int[0, int.MaxValue - 1].Select(seed => new Maker(new Random(seed)).Make());

    /// <summary>Sheets of three or four parts: more strings than MIDI has channels.</summary>
    public static Gen<string> Crowded { get; } = Gen.Int[0, int.MaxValue - 1].Select(seed => new Maker(new Random(seed)).Make(3 + seed % 2));

    /// <summary>Checks the songs of generated sheets, and that there are enough of them without errors.</summary>
    public static void Valid(int sheets, int atLeast, Action<Song> check, Gen<string>? from = null)
    {
        var valid = 0;
        (from ?? Sheets).Sample(
            text =>
            {
                var bound = Songs.Sheets.Read(text);
                if (bound.HasErrors || bound.Song is null || bound.Song.Bars.Count == 0) return;
                Interlocked.Increment(ref valid);
                check(bound.Song);
            },
            iter: sheets);
        Assert.True(valid >= atLeast, $"Only {valid} of the generated sheets were valid.");
    }

    private sealed class Maker(Random random)
    {
        private string tuning = "";
        private int strings;
        private int eighths;

        // Under a partial capo frets are written above it, so that any string has them.
        private int lift;
        private (int Low, int High) covered;

        public string Make(int? partCount = null)
        {
            tuning = Tunings[random.Next(Tunings.Length)];
            strings = tuning.Split(' ').Length;
            var (meter, length) = Meters[random.Next(Meters.Length)];
            eighths = length;
            var text = new StringBuilder($"title Generated {random.Next(100)}\ntuning {tuning}\nmeter {meter}\ntempo Q = {random.Next(40, 240)}\n");
            if (random.Next(2) == 0) text.Append($"key {"CDEFGAB"[random.Next(7)]} {(random.Next(2) == 0 ? "minor" : "dorian")}\n");
            if (random.Next(4) == 0) text.Append($"capo {Capo()}\n");
            if (random.Next(4) == 0) text.Append("feel swing\n");
            var parts = random.Next(1, 3);
            parts = partCount ?? parts;
            for (var p = 0; p < parts; p++) text.Append($"part part{p} \"Part {p}\"\n");
            text.Append($"shape low [{string.Join(' ', Enumerable.Range(0, strings).Select(i => i < 4 ? Held() : "."))}]\n");
            text.Append($"riff first\n  {Bars(random.Next(1, 4))}\nriff second\n  {Bars(random.Next(1, 3))}\n");
            for (var s = 0; s < random.Next(1, 4); s++)
            {
                text.Append($"section Part {(char)('A' + s)}\n");
                if (random.Next(4) == 0) text.Append($"  tempo E = {random.Next(60, 300)}\n");
                for (var p = 0; p < parts; p++) text.Append($"  part{p} {Line()}\n");
            }
            return text.ToString();
        }

        private string Held() => random.Next(6) is > 0 and var fret ? random.Next(3) == 0 ? $"{Above(fret)}f{fret % 4 + 1}" : $"{Above(fret)}" : "0";

        private string Capo()
        {
            var fret = random.Next(1, 5);
            if (fret > 2) return $"{fret}";
            var high = random.Next(1, strings);
            (lift, covered) = (fret, (random.Next(high, high == 1 ? strings : strings + 1), high));
            return $"{fret} on {covered.Low}-{covered.High}";
        }

        private int Above(int fret) => fret == 0 ? 0 : fret + lift;

        private int Octave(int place) => place <= covered.Low && place >= covered.High ? 12 + lift : 12;

        private string Line()
        {
            var line = new StringBuilder();
            for (var n = random.Next(1, 4); n > 0; n--)
            {
                line.Append(random.Next(9) switch
                {
                    0 => "first ",
                    1 => $"second times {random.Next(2, 4)} ",
                    2 => $"rest {random.Next(1, 4)} ",
                    3 => $"times 2{{ {Bars(2)} }} ",
                    4 => $"times 3{{ {Bars(1)} on 1,3{{ {Bars(1)} }} on 2{{ {Bars(1)} }} }} ",
                    5 => $"{Bars(1)} again ",
                    _ => Bars(random.Next(1, 3)) + " ",
                });
            }
            return line.ToString();
        }

        private string Bars(int count) => string.Join(" ", Enumerable.Range(0, count).Select(_ => Bar()));

        private string Bar()
        {
            var bar = new StringBuilder();
            if (random.Next(8) == 0) bar.Append($"bass{{ @{strings} {Fill(2, strings, false)}}} ");
            var first = bar.Length > 0;
            bar.Append(Fill(eighths, first ? strings - 1 : strings, true));
            return bar.Append(random.Next(8) == 0 ? "||" : "|").ToString();
        }

        private string Fill(int length, int usable, bool mayMark)
        {
            var text = new StringBuilder();
            var place = random.Next(1, usable + 1);
            text.Append($"@{place} ");
            var fret = -1;
            while (length > 0)
            {
                if (mayMark && random.Next(12) == 0) text.Append(Pick("\"Freely\" ", "(mf) ", "(pp) ", "(fermata) ", "(chord Am7) ", $"(Q = {random.Next(50, 200)}) "));
                if (length >= 2 && random.Next(8) == 0)
                {
                    text.Append($"E:3 {Above(random.Next(1, 9))} {Above(random.Next(9, 14))} {Above(random.Next(1, 9))} ");
                    (length, fret) = (length - 2, -1);
                    continue;
                }
                var (letter, size, count) = random.Next(5) switch
                {
                    0 when length >= 2 => ("Q", 2, 1),
                    1 when length >= 3 => ("Q.", 3, 1),
                    2 when length >= 4 => ("H", 4, 1),
                    3 => ("S", 1, 2),
                    _ => ("E", 1, 1),
                };
                text.Append(letter).Append(' ');
                for (var n = 0; n < count; n++)
                {
                    if (random.Next(10) == 0) (place, fret) = Move(text, usable);
                    text.Append(Event(place, usable, ref fret, mayMark)).Append(' ');
                }
                length -= size;
            }
            return text.ToString();
        }

        private (int Place, int Fret) Move(StringBuilder text, int usable)
        {
            var place = random.Next(1, usable + 1);
            text.Append($"@{place} ");
            return (place, -1);
        }

        private string Event(int place, int usable, ref int fret, bool mayMark)
        {
            var before = fret;
            fret = Above(random.Next(1, 15));
            var other = fret == before ? fret + 1 : fret;
            switch (random.Next(mayMark ? 26 : 8))
            {
                case 0: fret = -1; return "R";
                case 1 when before > 0: fret = other; return "," + other;
                case 2 when before > 0: fret = other; return ";" + other;
                case 3 when before > 0: fret = before; return "=";
                case 4: return fret + Pick("+", "+h", "+q-", "+w20c", "v", "+vv", "v+") ;
                case 5: return "+" + fret + "-";
                case 6: return fret + Pick("!", "?", "'", "m", "f2", ":Y", "m!", "*p", "~" + (fret + 2), "_", "_h", "_wh!");
                case 7: fret = -1; return Pick("x", "x5", $"{Octave(place)}*", "3*15", "x?");
                case 8: return $"pm{{ {fret} }}";
                case 9: fret = -1; return $"let{{ @{place} {other} }}";
                case 10: fret = -1; return $"[{Slots(usable)}]{Pick("", "!", "m", "v")}";
                case 11: fret = -1; return usable == strings && random.Next(3) == 0 ? "rake[" + string.Join(' ', Enumerable.Range(0, strings).Select(i => i < 2 ? "x" : i == 2 ? $"{Above(random.Next(12))}" : ".")) + "]" : $"roll[{Slots(usable)}]";
                case 12 when usable == strings: fret = -1; return Pick("#low", "#low!", "roll-down#low", $"pick #low{{ {strings - random.Next(3)} }}");
                case 13: return $"g{other + 2},{other}";
                case 14: return Pick("d", "u") + fret;
                case 15: fret = -1; return $"t{other + 5}";
                case 16: fret = -1; return $"lo;{other}";
                case 17: fret = -1; return $"{other};hi";
                case 18: return $"by {Pick("p", "i", "ma")}{{ {fret} }}";
                case 19: fret = -1; return $"{Pick("trem", "wah", "arm", "cresc", "dim")}{{ {other} }}";
                case 20: fret = -1; return $"{other}@{random.Next(1, usable + 1)}";
                case 21: return $"pm on {fret}";
                case 22: return $"pm off {fret}";
                default: return fret.ToString(System.Globalization.CultureInfo.InvariantCulture);
            }
        }

        private string Slots(int usable)
        {
            var slots = Enumerable.Range(0, strings).Select(i => strings - i <= usable && random.Next(2) == 0 ? $"{Above(random.Next(12))}" : ".").ToArray();
            if (slots.All(s => s == ".")) slots[^1] = "3";
            return string.Join(' ', slots);
        }

        private string Pick(params string[] choices) => choices[random.Next(choices.Length)];
    }
}
