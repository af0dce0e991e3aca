using Fretlore.Score;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>Turns the moves of a pitch wheel during a note into bends, glides and vibrato.</summary>
/// <remarks>
/// A way up or down is one bend, unless it rests on the way; at least three short swings to and fro are vibrato; what goes in steps of
/// semitones is a glide. All times and depths are choices of this project.
/// </remarks>
internal static class WheelReader
{
    private const double LeastCents = 12;
    private const double RestSeconds = 0.07;
    private const double LongestSwing = 0.2;
    private const double DeepestVibrato = 130;
    private const double WideVibrato = 55;
    private const double GlideInSeconds = 0.3;

    private readonly record struct Point(double Seconds, double Cents);

    /// <summary>One way of the pitch, up or down.</summary>
    private readonly record struct Move(double Start, double End, double From, double To, bool Steps);

    /// <summary>Reads what happens to a note; null when its pitch stays.</summary>
    /// <param name="moves">Where its channel's wheel moves, in order.</param>
    /// <param name="key">The note.</param>
    /// <param name="next">Semitones to the note that follows on its channel without a gap, or null.</param>
    /// <param name="secondsAt">Seconds at a tick.</param>
    public static WheelCurve? Read(List<(long Tick, double Cents)> moves, MidiKey key, int? next, Func<long, double> secondsAt)
    {
        var points = Points(moves, key, secondsAt);
        if (points.TrueForAll(p => Math.Abs(p.Cents) < LeastCents)) return null;
        var end = secondsAt(key.Off) - secondsAt(key.On);
        var found = new WheelCurve();
        var ways = WithoutVibrato(Ways(points), found);
        ReadGlides(ways, points[0].Cents, end, next, found);
        var start = found.GlideIn != GlideIn.None ? 0 : points[0].Cents;
        found.From = Rounded(start);
        if (found.From < 0) (found.From, found.LeavesOut) = (0, true);
        var at = found.From;
        var (left, vibratoAfter) = (0, found.VibratoAfter);
        foreach (var way in ways)
        {
            var to = Rounded(way.To);
            if (to < 0) (to, found.LeavesOut) = (0, true);
            if (to == at)
            {
                if (left < vibratoAfter) found.VibratoAfter--;
            }
            else found.To.Add(at = to);
            left++;
        }
        found.VibratoAfter = Math.Clamp(found.VibratoAfter, 0, found.To.Count);
        return found;
    }

    private static List<Point> Points(List<(long Tick, double Cents)> moves, MidiKey key, Func<long, double> secondsAt)
    {
        var (low, high) = (0, moves.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (moves[middle].Tick <= key.On) low = middle + 1;
            else high = middle;
        }
        var onset = secondsAt(key.On);
        var points = new List<Point> { new(0, low > 0 ? moves[low - 1].Cents : 0) };
        for (var i = low; i < moves.Count && moves[i].Tick < key.Off; i++) points.Add(new Point(secondsAt(moves[i].Tick) - onset, moves[i].Cents));
        return points;
    }

    // Cut where the pitch turns, and where it rests on its way; the smallest to and fro is none.
    private static List<Move> Ways(List<Point> points)
    {
        var ways = new List<Move>();
        var start = 0;
        while (start < points.Count - 1)
        {
            var (turn, direction) = (start, 0);
            for (var i = start + 1; i < points.Count; i++)
            {
                var (from, step) = (points[turn].Cents, points[i].Cents - points[turn].Cents);
                if (direction == 0 && Math.Abs(points[i].Cents - points[start].Cents) >= LeastCents) direction = Math.Sign(points[i].Cents - points[start].Cents);
                if (direction == 0) turn = i;
                else if (Math.Sign(step) == direction || step == 0)
                {
                    var rests = points[i].Seconds - points[turn].Seconds >= RestSeconds && Math.Abs(from - points[start].Cents) >= LeastCents && Math.Abs(step) >= LeastCents;
                    if (rests) break;
                    turn = i;
                }
                else if (Math.Abs(step) >= LeastCents) break;
            }
            if (direction != 0) ways.Add(new Move(StartOf(points, start, turn), points[turn].Seconds, points[start].Cents, points[turn].Cents, GoesInSteps(points, start, turn)));
            if (turn == start) break;
            start = turn;
        }
        return ways;
    }

    // A wheel that rests sends nothing: a way begins with the first move off its start.
    private static double StartOf(List<Point> points, int start, int turn)
    {
        for (var i = start + 1; i <= turn; i++)
        {
            if (Math.Abs(points[i].Cents - points[start].Cents) >= 1) return points[i].Seconds;
        }
        return points[start].Seconds;
    }

    private static bool GoesInSteps(List<Point> points, int start, int turn)
    {
        for (var i = start + 1; i <= turn; i++)
        {
            var step = Math.Abs(points[i].Cents - points[i - 1].Cents);
            if (step < 1) continue;
            if (step < 90 || Math.Abs(step - 100 * Math.Round(step / 100)) > 8) return false;
        }
        return true;
    }

    // Three or more swings to and fro, shallow and quick, are taken out.
    private static List<Move> WithoutVibrato(List<Move> ways, WheelCurve found)
    {
        for (var first = 0; first + 3 <= ways.Count; first++)
        {
            var after = first;
            while (after < ways.Count && !ways[after].Steps && Math.Abs(ways[after].To - ways[after].From) <= DeepestVibrato && ways[after].End - ways[after].Start <= LongestSwing && (after == first || Math.Abs(Math.Abs(ways[after].To - ways[after].From) - Math.Abs(ways[first].To - ways[first].From)) < 45)) after++;
            if (after - first < 3) continue;
            var depth = ways.Skip(first).Take(after - first).Average(w => Math.Abs(w.To - w.From));
            var isBelow = ways[first].To < ways[first].From && Math.Abs(ways[first].From) < LeastCents;
            if (isBelow) found.IsArm = true;
            else (found.Vibrato, found.VibratoAfter) = (depth > WideVibrato ? VibratoWidth.Wide : VibratoWidth.Normal, first);
            var rest = ways.Skip(after).ToList();
            if (rest.Count > 0) rest[0] = rest[0] with { From = ways[first].From };
            return [.. ways.Take(first), .. WithoutVibrato(rest, new WheelCurve())];
        }
        return ways;
    }

    private static void ReadGlides(List<Move> ways, double start, double end, int? next, WheelCurve found)
    {
        if (ways.Count > 0 && ways[0].Steps && Math.Abs(start) >= 90 && Math.Abs(ways[0].To) < LeastCents && ways[0].End <= GlideInSeconds)
        {
            found.GlideIn = start < 0 ? GlideIn.FromBelow : GlideIn.FromAbove;
            ways.RemoveAt(0);
            found.VibratoAfter = Math.Max(0, found.VibratoAfter - 1);
        }
        if (ways.Count == 0 || end - ways[^1].End > RestSeconds) return;
        if (next is { } semitones && semitones != 0 && Math.Abs(ways[^1].To - 100 * semitones) <= 60) found.GlidesOn = true;
        else if (ways[^1].Steps && Math.Abs(ways[^1].To - ways[^1].From) >= 90) found.GlideOut = ways[^1].To < ways[^1].From ? GlideOut.Downwards : GlideOut.Upwards;
        else return;
        ways.RemoveAt(ways.Count - 1);
    }

    // Quarter tones and what lies between in whole cents; a hand is not that exact, a file of this program is.
    private static int Rounded(double cents)
    {
        var quarter = 25 * (int)Math.Round(cents / 25);
        return Math.Abs(cents - quarter) <= 3 ? quarter : (int)Math.Round(cents);
    }
}
