using Fretlore.Listening.Spectra;

namespace Fretlore.Listening.Alignment;

/// <summary>Finds the way of the least distance through a song and a take: dynamic time warping whose ends are open on the take's side.</summary>
/// <remarks>
/// A take may be half as fast to twice as fast as the sheet (steps 1:1, 2:1, 1:2; Müller, Fundamentals of Music Processing, 2015, ch. 3), and may wait; each
/// step that leaves the tempo costs a little, so that bars alike don't lead astray. Every moment of the song counts once, however long the take, also those before the
/// take begins and after it ends.
/// </remarks>
internal static class Warping
{
    private const float Waiting = 0.15f;
    private const float Turning = 0.3f;

    /// <summary>What a moment costs that is not in the take: more than one that sounds like the sheet, less than one that does not.</summary>
    public const float Missing = 0.8f;

    private const float Far = float.MaxValue / 4;

    private enum Step : byte
    {
        Start,
        Same,
        Faster,
        Slower,
        Wait,
    }

    /// <param name="song">What should be heard.</param>
    /// <param name="take">What is heard.</param>
    /// <param name="from">For each of the song's moments the first of the take's that it may be.</param>
    /// <param name="width">How many it may be from there on.</param>
    /// <param name="isWhole">Whether all of the song is in the take; else it may begin before it or end after it, each moment that is missing for a price.</param>
    /// <param name="cancel">Ends the work early.</param>
    /// <returns>
    /// For each of the song's moments the take's at which it is heard, never backwards; those that are missing lie before 0 or beyond the take's end. Null
    /// where there is no way.
    /// </returns>
    public static int[]? Find(MusicFrames song, MusicFrames take, int[] from, int width, bool isWhole, CancellationToken cancel)
    {
        var steps = new Step[song.Count][];
        var (two, one, now) = (new float[width], new float[width], new float[width]);
        Array.Fill(one, Far);
        float[] cost = new float[width], costBefore = new float[width];
        var (least, end) = (Far, (Moment: -1, At: -1));
        for (var i = 0; i < song.Count; i++)
        {
            cancel.ThrowIfCancellationRequested();
            steps[i] = new Step[width];
            for (var k = 0; k < width; k++)
            {
                var j = from[i] + k;
                cost[k] = j < take.Count ? song.Distance(i, take, j) : Far;
                now[k] = Far;
                if (j >= take.Count) continue;
                if (i == 0 || (j == 0 && !isWhole)) Try(now, k, i * Missing + cost[k], Step.Start);
                if (i == 0) continue;
                Try(now, k, At(one, from[i - 1], j - 1) + cost[k], Step.Same);
                Try(now, k, At(one, from[i - 1], j - 2) + cost[k] + Turning, Step.Slower);
                if (i > 1) Try(now, k, At(two, from[i - 2], j - 1) + At(costBefore, from[i - 1], j - 1) + cost[k] + Turning, Step.Faster);
                if (k > 0) Try(now, k, now[k - 1] + Waiting, Step.Wait);
                if (j == take.Count - 1 && !isWhole) MayEnd(now[k] + (song.Count - 1 - i) * Missing, i, j);
            }
            (two, one, now) = (one, now, two);
            (costBefore, cost) = (cost, costBefore);

            void Try(float[] row, int k, float sum, Step step)
            {
                if (sum >= row[k]) return;
                row[k] = sum;
                steps[i][k] = step;
            }
        }
        for (var k = 0; k < width; k++) MayEnd(one[k], song.Count - 1, from[^1] + k);
        return end.Moment < 0 ? null : Back(steps, from, end);

        float At(float[] row, int first, int j) => j - first is >= 0 and var k && k < width ? row[k] : Far;

        void MayEnd(float sum, int moment, int at)
        {
            if (sum < least) (least, end) = (sum, (moment, at));
        }
    }

    private static int[] Back(Step[][] steps, int[] from, (int Moment, int At) end)
    {
        var moments = new int[steps.Length];
        var (i, j) = end;
        for (var after = i + 1; after < moments.Length; after++) moments[after] = j + after - i;
        moments[i] = j;
        while (i > 0 && steps[i][j - from[i]] != Step.Start)
        {
            switch (steps[i][j - from[i]])
            {
                case Step.Same: (i, j) = (i - 1, j - 1); break;
                case Step.Slower: (i, j) = (i - 1, j - 2); break;
                case Step.Faster:
                    moments[i - 1] = j;
                    (i, j) = (i - 2, j - 1);
                    break;
                default: j--; break;
            }
            moments[i] = j;
        }
        for (var before = i - 1; before >= 0; before--) moments[before] = j + before - i;
        return moments;
    }
}
