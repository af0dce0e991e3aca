using System.Buffers.Binary;
using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Sound;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Strings;

namespace Fretlore.Tests.Sound;

/// <summary>Sound rendered for a test, and what can be measured in it.</summary>
internal static class Heard
{
    public const double Rate = SampleRate.Hertz;

    /// <summary>One string of a part without its rig, at the bridge.</summary>
    public static double[] String(Song song, int number, double seconds, double pickup = 0)
    {
        var performed = Performer.Play(song);
        var part = performed.Parts[0];
        var stretch = Stretch.OfNumbers(performed, null, null)!.Value;
        var notes = part.Notes.Where(n => n.String.Value == number)
            .Select(n => StringNotes.NoteOf(n, part.Part.Neck, stretch, 0, false)).ToImmutableArray();
        var build = StringBuild.Of(new StringNumber(number), part.Part.Neck, BodyLoss.Solid, part.Part.Strings.Count > 0 ? part.Part.Strings[number - 1] : null);
        var sound = new double[(int)(seconds * Rate)];
        var player = new StringPlayer(notes, build, pickup, 0);
        for (var at = 0; at < sound.Length; at += 500) player.Play(at, sound.AsSpan(at, Math.Min(500, sound.Length - at)));
        return sound;
    }

    /// <summary>Both sides of a mix of a song before its loudness is set.</summary>
    public static (double[] Left, double[] Right) Mix(Song song, SoundRequest? request = null)
    {
        var mix = ((SoundResult.Ready)SongMixer.Prepare(song, request ?? new SoundRequest())).Mix;
        var (left, right) = (new List<double>(), new List<double>());
        mix.Render((l, r) =>
        {
            left.AddRange(l.Span);
            right.AddRange(r.Span);
        });
        return ([.. left], [.. right]);
    }

    /// <summary>Both sides of a file of 24 bits as we write it.</summary>
    public static (double[] Left, double[] Right) Wave(byte[] file)
    {
        var at = 12;
        while (!file.AsSpan(at, 4).SequenceEqual("data"u8)) at += 8 + BinaryPrimitives.ReadInt32LittleEndian(file.AsSpan(at + 4));
        var frames = BinaryPrimitives.ReadInt32LittleEndian(file.AsSpan(at + 4)) / 6;
        var (left, right) = (new double[frames], new double[frames]);
        for (var i = 0; i < 2 * frames; i++)
        {
            var bytes = file.AsSpan(at + 8 + 3 * i, 3);
            (i % 2 == 0 ? left : right)[i / 2] = (bytes[0] | bytes[1] << 8 | unchecked((sbyte)bytes[2]) << 16) / 8388608.0;
        }
        return (left, right);
    }

    /// <summary>The frequency of the partial nearest to one expected, from how far its phase moves between two windows.</summary>
    /// <param name="from">Seconds.</param>
    /// <param name="length">Seconds of each window; the partial must be the only strong one within 4 / length hertz.</param>
    public static double Frequency(double[] sound, double from, double length, double expected)
    {
        var hop = (int)Math.Max(1, Rate / expected / 4);
        var (a, b) = (PhaseAt(sound, (int)(from * Rate), length, expected), PhaseAt(sound, (int)(from * Rate) + hop, length, expected));
        var moved = b - a - 2 * Math.PI * expected / Rate * hop;
        moved -= 2 * Math.PI * Math.Round(moved / (2 * Math.PI));
        return expected + moved * Rate / (2 * Math.PI * hop);
    }

    public static double Cents(double heard, double expected) => 1200 * Math.Log2(heard / expected);

    /// <summary>Level of a partial in a window, relative to full scale of 1.</summary>
    public static double LevelAt(double[] sound, double from, double length, double hertz) => Bin(sound, (int)(from * Rate), length, hertz).Level;

    public static double Rms(double[] sound, double from, double to)
    {
        var part = sound[(int)(from * Rate)..(int)(to * Rate)];
        return Math.Sqrt(part.Sum(x => x * x) / part.Length);
    }

    public static double Decibels(double ratio) => 20 * Math.Log10(Math.Max(ratio, 1e-15));

    // Relative to the window's own start, so that phases of two windows can be compared.
    private static double PhaseAt(double[] sound, int from, double length, double hertz) => Bin(sound, from, length, hertz).Phase;

    private static (double Level, double Phase) Bin(double[] sound, int from, double length, double hertz)
    {
        var count = (int)(length * Rate);
        double re = 0, im = 0, weight = 0;
        for (var i = 0; i < count; i++)
        {
            // Blackman and Harris's window of four terms: other partials are 92 dB down.
            var t = 2 * Math.PI * i / count;
            var window = 0.35875 - 0.48829 * Math.Cos(t) + 0.14128 * Math.Cos(2 * t) - 0.01168 * Math.Cos(3 * t);
            var (sin, cos) = Math.SinCos(2 * Math.PI * hertz / Rate * i);
            re += window * sound[from + i] * cos;
            im -= window * sound[from + i] * sin;
            weight += window;
        }
        return (2 * Math.Sqrt(re * re + im * im) / weight, Math.Atan2(im, re));
    }
}
