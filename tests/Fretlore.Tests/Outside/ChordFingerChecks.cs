using System.Globalization;
using Fretlore.Guitar;
using Fretlore.Hands.Shapes;
using Fretlore.Music;

namespace Fretlore.Tests.Outside;

/// <summary>Fingers of chord shapes against npm @tombatossals/chords-db 0.5.1 (MIT): a finger for each stopped string of its guitar positions.</summary>
/// <remarks>
/// Read one by one, the differences are of four kinds, each of which players do both ways: two or three neighbouring strings at a fret under one lying finger
/// (1 1 3 3 3 1: fingers 2 3 4, ours the ring finger's barre); the little finger for a ring finger that is free (1 1 1 1 1 3); a small barre across a string that is fretted
/// higher in between (x 1 2 1 2 x: theirs 1 3 2 4); and which of two neighbouring fingers takes the lower string at one fret.
/// </remarks>
public class ChordFingerChecks(ITestOutputHelper output)
{
    [Fact]
    public void Fingers_AgreeWithTheDatasets()
    {
        var neck = new Neck(Tuning.Standard);
        int stopped = 0, same = 0, shapes = 0, whole = 0, impossible = 0;
        foreach (var line in OutsideProgram.Node("chord-fingers.mjs").Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            var columns = line.Split('\t');
            var frets = columns[1].Split(' ');
            var theirs = columns[2].Split(' ').Select(f => int.Parse(f, CultureInfo.InvariantCulture)).ToArray();
            // Some positions come without fingers.
            if (Enumerable.Range(0, 6).Any(s => frets[s] is not ("x" or "0") && theirs[s] == 0)) continue;
            var shape = new Shape(frets.Select(f => f == "x" ? (Fret?)null : new Fret(int.Parse(f, CultureInfo.InvariantCulture))).ToValueList());
            shapes++;
            if (ShapeFingers.Of(shape, neck) is not { } ours)
            {
                impossible++;
                continue;
            }
            var agree = 0;
            var all = 0;
            for (var s = 0; s < 6; s++)
            {
                if (frets[s] is "x" or "0") continue;
                all++;
                if ((int?)ours[s] == theirs[s]) agree++;
            }
            stopped += all;
            same += agree;
            if (agree == all) whole++;
        }
        output.WriteLine($"{shapes} shapes with fingers: {100.0 * same / stopped:0.0} % of {stopped} fingers, {100.0 * whole / shapes:0.0} % of whole shapes; {impossible} beyond an average hand");
        Assert.InRange((double)same / stopped, 0.9, 1);
    }
}
