using System.Globalization;
using System.Text;

namespace Fretlore.Engraving.Output.Pdf;

/// <summary>Tags a PDF, so that a screen reader reads its pages in order: title, then system by system the words over it and its bars.</summary>
/// <remarks>
/// Source: ISO 32000-1, 14.6 "Marked content", 14.7 "Logical structure" and 14.8 "Tagged PDF". A bar is a figure with its notes as alternate description, a section's name
/// a heading; staff lines, brackets and later pages' feet are artifacts. The drawing library can't mark content: a sign is drawn where each part begins, and is
/// replaced here.
/// </remarks>
internal static class PdfTags
{
    /// <summary>Left, top, width and height of the sign, in staff spaces: powers of two, that are written in full.</summary>
    public static readonly (float Left, float Top, float Width, float Height) Sign = (0.5f, 0.5f, 0.0078125f, 0.015625f);

    // As the drawing library writes it.
    private const string WrittenSign = ".5 .5 .0078125 .015625 re\nf\n";

    /// <param name="pdf">The file.</param>
    /// <param name="parts">The parts of each page in the order they were drawn, each after a sign.</param>
    /// <param name="language">The language of the title and the sections' names; null where it is not said. All else is English.</param>
    public static void Add(PdfFile pdf, IReadOnlyList<List<PagePart>> parts, string? language)
    {
        var pages = pdf.Pages;
        var tree = new Tree(pdf, language);
        for (var page = 0; page < pages.Length; page++)
        {
            var contents = pdf.ContentsOf(pages[page]);
            pdf.PutStream(contents, tree.Mark(pdf.Stream(contents), parts[page], pages[page]));
            pdf.AddTo(pages[page], string.Create(CultureInfo.InvariantCulture, $"/StructParents {page}"));
        }
        var root = tree.Write();
        pdf.AddTo(pdf.Root, $"/Lang (en)\n/MarkInfo <</Marked true>>\n/StructTreeRoot {root} 0 R");
    }

    private sealed class Tree(PdfFile pdf, string? language)
    {
        private readonly int root = pdf.Free;
        private readonly List<(int Number, string Content)> elements = [];
        private readonly List<string> ofPages = [];
        private readonly List<int> top = [];

        private int Document => root + 1;

        // Elements follow the root and the document.
        private int NextNumber => root + 2 + elements.Count;

        /// <summary>The page's drawing with its parts marked.</summary>
        public string Mark(string drawing, List<PagePart> parts, int page)
        {
            var pieces = drawing.Split(WrittenSign);
            if (pieces.Length != parts.Count + 1) throw new InvalidOperationException($"A page of {parts.Count} parts was written with {pieces.Length - 1} signs.");
            var marked = new StringBuilder(pieces[0]);
            var owners = new List<int>();
            for (var i = 0; i < parts.Count; i++)
            {
                if (parts[i].Kind == PartKind.Artifact) marked.Append("/Artifact BMC\n");
                else marked.Append(CultureInfo.InvariantCulture, $"/{RoleOf(parts[i].Kind)} <</MCID {owners.Count}>> BDC\n");
                // What is put back at the page's end was put away before its first part.
                var body = pieces[i + 1];
                var end = i + 1 < parts.Count ? body.Length : EndOfDrawing(body);
                marked.Append(body, 0, end).Append("EMC\n").Append(body, end, body.Length - end);
                if (parts[i].Kind != PartKind.Artifact) owners.Add(i);
            }
            ofPages.Add(Elements(parts, owners, page));
            return marked.ToString();
        }

        /// <returns>The number of the tree's root.</returns>
        public int Write()
        {
            pdf.Put(root, string.Create(CultureInfo.InvariantCulture, $"<</Type /StructTreeRoot\n/K {Document} 0 R\n/ParentTree <</Nums [{string.Join('\n', ofPages.Select((owners, page) => $"{page} [{owners}]"))}]>>\n/ParentTreeNextKey {ofPages.Count}>>"));
            pdf.Put(Document, $"<</Type /StructElem\n/S /Document\n/P {root} 0 R\n/K [{References(top)}]>>");
            foreach (var (number, content) in elements) pdf.Put(number, content);
            return root;
        }

        // In reading order: the words over a system are drawn after its bars, and read before them.
        private string Elements(List<PagePart> parts, List<int> owners, int page)
        {
            var numbers = new int[owners.Count];
            var order = Enumerable.Range(0, owners.Count).ToList();
            for (var from = 0; from < order.Count;)
            {
                var system = parts[owners[order[from]]].System;
                var to = from;
                while (to < order.Count && parts[owners[order[to]]].System == system) to++;
                var together = ReadingOrder(parts, owners, order[from..to]);
                if (system < 0)
                {
                    foreach (var id in together) top.Add(numbers[id] = Leaf(parts[owners[id]], id, page, Document));
                }
                else
                {
                    var section = NextNumber;
                    elements.Add((section, ""));
                    foreach (var id in together) numbers[id] = Leaf(parts[owners[id]], id, page, section);
                    elements[section - root - 2] = (section, $"<</Type /StructElem\n/S /Sect\n/P {Document} 0 R\n/K [{References(together.Select(id => numbers[id]))}]>>");
                    top.Add(section);
                }
                from = to;
            }
            return References(numbers);
        }

        // Words over the system first, and a section's name before the bar it stands over.
        private static List<int> ReadingOrder(List<PagePart> parts, List<int> owners, List<int> ids)
        {
            var ordered = ids.OrderBy(id => parts[owners[id]].Kind == PartKind.Words ? 0 : 1).Where(id => parts[owners[id]].Kind != PartKind.Heading).ToList();
            foreach (var heading in ids.Where(id => parts[owners[id]].Kind == PartKind.Heading))
            {
                var bar = ordered.FindIndex(id => parts[owners[id]].Kind == PartKind.Bar && parts[owners[id]].X > parts[owners[heading]].X);
                ordered.Insert(bar < 0 ? ordered.Count : bar, heading);
            }
            return ordered;
        }

        private int Leaf(PagePart part, int id, int page, int parent)
        {
            var number = NextNumber;
            var spoken = part.Spoken is { } words ? $"\n/{(part.Kind == PartKind.Bar ? "Alt" : "ActualText")} {PdfFile.TextOf(words)}" : "";
            var tag = language is not null && part.Kind is PartKind.Title or PartKind.Heading ? $"\n/Lang ({language})" : "";
            elements.Add((number, $"<</Type /StructElem\n/S /{RoleOf(part.Kind)}\n/P {parent} 0 R\n/Pg {page} 0 R\n/K {id}{tag}{spoken}>>"));
            return number;
        }

        private static string References(IEnumerable<int> numbers) => string.Join(' ', numbers.Select(n => $"{n} 0 R"));

        private static string RoleOf(PartKind kind) => kind switch
        {
            PartKind.Title => "H1",
            PartKind.Heading => "H2",
            PartKind.Bar => "Figure",
            _ => "P",
        };

        private static int EndOfDrawing(string body)
        {
            var end = body.Length;
            while (end >= 2 && body.AsSpan(0, end).EndsWith("Q\n")) end -= 2;
            return end;
        }
    }
}
