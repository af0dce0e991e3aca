using System.Text;

namespace Fretlore.Lesson.Script;

/// <summary>Plain Markdown: headings, paragraphs, lists, with one blank line between blocks.</summary>
internal sealed class Markdown
{
    private readonly StringBuilder text = new();
    private bool inList;

    /// <summary>Words of the sheet, so that they show as typed.</summary>
    public static string Escape(string words)
    {
        var escaped = new StringBuilder();
        foreach (var sign in words)
        {
            if (sign is '\\' or '`' or '*' or '_' or '[' or ']' or '<' or '>' or '#' or '|') escaped.Append('\\');
            escaped.Append(sign is '\r' or '\n' ? ' ' : sign);
        }
        return escaped.ToString();
    }

    public void Heading(int level, string words) => Block(new string('#', level) + " " + words);

    public void Paragraph(string words) => Block(words);

    public void Quote(string words) => Block("> " + words);

    public void Item(string words) => Entry("- " + words);

    public void Numbered(int number, string words) =>
        Entry(number.ToString(System.Globalization.CultureInfo.InvariantCulture) + ". " + words);

    public override string ToString() => text.ToString();

    private void Block(string words)
    {
        if (text.Length > 0) text.Append('\n');
        text.Append(words).Append('\n');
        inList = false;
    }

    private void Entry(string words)
    {
        if (!inList && text.Length > 0) text.Append('\n');
        text.Append(words).Append('\n');
        inList = true;
    }
}
