using System.Runtime.CompilerServices;
using Fretlore.Sound.Pieces;

namespace Fretlore.Sound.Rigs;

/// <summary>Repeats of the sound, each softer, from side to side.</summary>
internal sealed class Echo(Repeats repeats)
{
    private readonly double[] line = new double[Math.Max(1, (int)(repeats.Seconds * SampleRate.Hertz))];
    private int head;
    private int turn;

    /// <summary>Goes through what it remembers.</summary>
    public void Visit(MemoryVisitor visitor)
    {
        visitor.Wave(line);
        visitor.Exact(ref head);
        visitor.Exact(ref turn);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Run(Span<double> left, Span<double> right)
    {
        for (var i = 0; i < left.Length; i++)
        {
            var repeated = line[head];
            line[head] = 0.5 * (left[i] + right[i]) + repeats.Again * repeated;
            if (Math.Abs(line[head]) < 1e-12) line[head] = 0;
            var heard = repeats.Level * repeated;
            left[i] += turn == 0 ? heard : 0.4 * heard;
            right[i] += turn == 0 ? 0.4 * heard : heard;
            if (++head < line.Length) continue;
            head = 0;
            turn = 1 - turn;
        }
    }
}
