using System.Runtime.CompilerServices;
using Fretlore.Sound.Pieces;

namespace Fretlore.Sound.Rigs;

/// <summary>A small room: four delay lines that feed each other (Jot and Chaigne 1991), heard left and right.</summary>
internal sealed class Room
{
    private const double Seconds = 0.7; // Until it has died away by 60 dB.
    private const double Keep = 0.55; // Memory of the walls' lowpass.

    // About 23 to 41 ms, without common factors, so that their echoes don't fall together.
    private readonly double[][] lines = [new double[1103], new double[1327], new double[1619], new double[1979]];
    private readonly double[] gains;
    private readonly int[] heads = new int[4];
    private readonly double[] walls = new double[4];
    private readonly double[] back = new double[4];

    public Room() => gains = [.. lines.Select(line => Math.Pow(10, -3 * line.Length / (Seconds * SampleRate.Hertz)))];

    /// <summary>Goes through what it remembers.</summary>
    public void Visit(MemoryVisitor visitor)
    {
        for (var i = 0; i < lines.Length; i++)
        {
            visitor.Wave(lines[i]);
            visitor.Wave(ref walls[i]);
            visitor.Exact(ref heads[i]);
        }
    }

    /// <summary>Adds the room to both sides.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Run(Span<double> left, Span<double> right, double level)
    {
        for (var i = 0; i < left.Length; i++)
        {
            var input = 0.5 * (left[i] + right[i]);
            double sum = 0;
            for (var line = 0; line < 4; line++)
            {
                walls[line] = lines[line][heads[line]] * gains[line] * (1 - Keep) + Keep * walls[line];
                back[line] = walls[line];
                sum += back[line];
            }
            for (var line = 0; line < 4; line++)
            {
                lines[line][heads[line]] = Denormal.Settle(input + back[line] - 0.5 * sum); // Householder's reflection keeps the energy.
                if (++heads[line] == lines[line].Length) heads[line] = 0;
            }
            left[i] += level * (back[0] - back[2]);
            right[i] += level * (back[1] - back[3]);
        }
        foreach (ref var wall in walls.AsSpan()) wall = Denormal.Settle(wall);
    }
}
