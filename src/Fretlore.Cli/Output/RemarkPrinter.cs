using System.Globalization;
using Fretlore.Exchange.Reports;

namespace Fretlore.Cli.Output;

/// <summary>Lists what became of things on their way in or out, the same thing once with all its places.</summary>
internal static class RemarkPrinter
{
    private const int MostPlaces = 12;

    private static ReadOnlySpan<(RemarkKind Kind, string Heading)> Headings => new[]
    {
        (RemarkKind.LeftOut, "Not carried over:"),
        (RemarkKind.Changed, "Carried over in another form:"),
        (RemarkKind.Guessed, "Worked out, because the file does not say it:"),
    };

    public static void Write(TextWriter output, IReadOnlyList<Remark> remarks)
    {
        foreach (var (kind, heading) in Headings)
        {
            var ofKind = remarks.Where(r => r.Kind == kind).ToList();
            if (ofKind.Count == 0) continue;
            output.WriteLine(heading);
            foreach (var same in ofKind.GroupBy(r => (r.Text, r.Part)))
            {
                var place = string.Join(" of ", new[] { Places(same), same.Key.Part ?? "" }.Where(p => p.Length > 0));
                output.WriteLine($"  {(place.Length > 0 ? place + ": " : "")}{same.Key.Text}");
            }
        }
    }

    private static string Places(IEnumerable<Remark> same)
    {
        var remarks = same.ToList();
        var lines = remarks.Select(r => r.Line).OfType<int>().ToList();
        return lines.Count > 0 ? Places("line", lines) : Places("bar", [.. remarks.Select(r => r.Bar).OfType<int>()]);
    }

    // "bar 3"; "bars 9 to 20 and 37".
    private static string Places(string word, List<int> numbers)
    {
        var runs = new List<(int First, int Last)>();
        foreach (var number in numbers.Distinct().Order())
        {
            if (runs.Count > 0 && runs[^1].Last == number - 1) runs[^1] = (runs[^1].First, number);
            else runs.Add((number, number));
        }
        if (runs.Count == 0) return "";
        var shown = runs.Take(MostPlaces).Select(r => r.First == r.Last
            ? r.First.ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{r.First} to {r.Last}")).ToList();
        if (runs.Count > MostPlaces) shown.Add(string.Create(CultureInfo.InvariantCulture, $"{runs.Count - MostPlaces} more places"));
        var list = shown.Count == 1 ? shown[0] : $"{string.Join(", ", shown.Take(shown.Count - 1))} and {shown[^1]}";
        return $"{word}{(runs.Count > 1 || runs[0].First != runs[0].Last ? "s" : "")} {list}";
    }
}
