using System.Collections.Immutable;
using Fretlore.Syntax.Parsing;

namespace Fretlore.Syntax.Formatting;

/// <summary>Writes a sheet block by block.</summary>
internal sealed class SheetLayout
{
    private const int Indent = 2;
    private const int SongSettingColumn = 8;

    private static readonly ImmutableArray<string> StepCells = ["teach", "at", "say"];

    private readonly SheetSyntax sheet;
    private readonly DeclaredNames names;
    private readonly SheetWriter writer;
    private readonly int partColumn;
    private readonly int partSettingColumn;
    private readonly int shapeColumn;

    public SheetLayout(ParsedSheet parsed, string lineEnd)
    {
        sheet = parsed.Root;
        names = DeclaredNames.In(parsed.Text.Text);
        writer = new SheetWriter(lineEnd);
        var parts = sheet.Blocks.OfType<PartSyntax>().ToList();
        partColumn = "part ".Length + parts.Select(p => p.Name.Text.Length).DefaultIfEmpty().Max() + 1;
        partSettingColumn = partColumn + parts.Select(p => p.Title?.Text.Length ?? 0).DefaultIfEmpty().Max() + 2;
        shapeColumn = "shape ".Length + sheet.Blocks.OfType<ShapeSyntax>().Select(s => s.Name.Text.Length).DefaultIfEmpty().Max() + 1;
    }

    public string Write()
    {
        for (var i = 0; i < sheet.Blocks.Length; i++)
        {
            var block = sheet.Blocks[i];
            var first = (SyntaxToken)block.Children[0];
            var standsApart = i > 0 && (block is RiffSyntax or SectionSyntax or RoadMapSyntax or LessonSyntax or RecordingSyntax
                || block.GetType() != sheet.Blocks[i - 1].GetType());
            writer.Line(Trivia.Of(first), 0, blankLine: standsApart);
            writer.Append(first.Text);
            Block(block);
        }
        return writer.Finish(Trivia.Of(sheet.EndOfFile));
    }

    private void Block(BlockSyntax block)
    {
        switch (block)
        {
            case SettingSyntax setting:
                writer.PadTo(SongSettingColumn - 1);
                Values(setting, setting.Values, SongSettingColumn);
                break;
            case PartSyntax part:
                Part(part);
                break;
            case ShapeSyntax shape:
                writer.Append(" " + shape.Name.Text);
                writer.PadTo(shapeColumn - 1);
                MusicLayout.Write(Spaced(), Chunks.Of(shape.Frets!), Indent, beginsLine: false);
                break;
            case RiffSyntax riff:
                Riff(riff);
                break;
            case SectionSyntax section:
                Section(section);
                break;
            case RoadMapSyntax roadMap:
                writer.Append(" " + roadMap.Name.Text);
                foreach (var rule in roadMap.Rules) Line(rule, RuleWidth(roadMap));
                break;
            case RecordingSyntax recording:
                writer.Append(" " + recording.Name.Text);
                Recording(recording);
                break;
            case LessonSyntax lesson:
                Lesson(lesson);
                break;
        }
    }

    private SheetWriter Spaced()
    {
        writer.Append(" ");
        return writer;
    }

    private void Part(PartSyntax part)
    {
        writer.Append(" " + part.Name.Text);
        if (part.Title is { } title)
        {
            writer.PadTo(partColumn);
            writer.Append(title.Text);
        }
        var isFirst = true;
        foreach (var setting in part.Settings)
        {
            var trivia = Trivia.Of(setting.Word);
            if (trivia.HasLineEnd) writer.Line(trivia, Indent, Indent);
            else if (isFirst) writer.PadTo(partSettingColumn);
            else writer.Append("  ");
            isFirst = false;
            writer.Append(setting.Word.Text);
            Values(setting, setting.Values, Indent + 2);
        }
    }

    private void Riff(RiffSyntax riff)
    {
        writer.Append(" " + riff.Name.Text);
        foreach (var setting in riff.Settings) Line(setting, 0);
        MusicLayout.Write(writer, Chunks.Of(riff.Music), Indent, beginsLine: true);
        if (riff.Variation is not { } variation) return;
        writer.Append($" = {variation.BaseName.Text}");
        foreach (var edit in variation.Edits) Edit(edit);
    }

    private void Edit(EditSyntax edit)
    {
        var word = (SyntaxToken)edit.Children[0];
        var trivia = Trivia.Of(word);
        if (trivia.HasLineEnd) writer.Line(trivia, Indent, Indent);
        else writer.Append(" ");
        writer.Append(word.Text);
        foreach (var token in edit.Children.Skip(1).OfType<SyntaxToken>())
        {
            var isTight = token.Text is ":" or "-" || token == edit.To;
            writer.Append(isTight ? token.Text : " " + token.Text);
        }
        if (edit.Music is not { Items.Length: > 0 } music) return;
        var chunks = Chunks.Of(music);
        var beginsLine = chunks[0].BeginsLine;
        if (!beginsLine) writer.Append(" ");
        MusicLayout.Write(writer, chunks, Indent, beginsLine);
    }

    private void Section(SectionSyntax section)
    {
        foreach (var token in section.Children.OfType<SyntaxToken>().Skip(1)) writer.Append(" " + token.Text);
        var widest = section.Lines.Select(l => l.PartName.Text.Length).DefaultIfEmpty().Max();
        foreach (var child in section.Body)
        {
            if (child is SettingSyntax setting) Line(setting, 0);
            else PartLine((PartLineSyntax)child, widest);
        }
    }

    private void PartLine(PartLineSyntax line, int widest)
    {
        var chunks = Chunks.Of(line.Music);
        if (line.PartName.IsMissing)
        {
            MusicLayout.Write(writer, chunks, Indent, beginsLine: true, MayBeginSectionLine);
            return;
        }
        writer.Line(Trivia.Of(line.PartName), Indent, Indent);
        writer.Append(line.PartName.Text);
        if (chunks.Count == 0) return;
        var column = Indent + widest + 2;
        if (!chunks[0].HasComments) writer.PadTo(column);
        MusicLayout.Write(writer, chunks, column, beginsLine: false, MayBeginSectionLine);
    }

    /// <summary>False for a riff that at the start of a section's line would be taken for a part.</summary>
    private bool MayBeginSectionLine(string chunk) =>
        chunk[^1] == '{' || !names.CouldBePart(string.Concat(chunk.TakeWhile(Names.IsNameCharacter)));

    /// <summary>The longest word of a road map's rules; <c>may use</c> is one.</summary>
    private static int RuleWidth(RoadMapSyntax roadMap) =>
        roadMap.Rules.Select(r => r.Word.Text.Length + (IsMayUse(r) ? " use".Length : 0)).DefaultIfEmpty().Max();

    private static bool IsMayUse(SettingSyntax rule) => rule.Word.Text == "may" && rule.Values is [{ Text: "use" }, ..];

    private void Lesson(LessonSyntax lesson)
    {
        var rows = lesson.Settings.Where(s => s.Word.Text == "step").Select(Cells).ToList();
        var widths = Enumerable.Range(0, StepCells.Length + 1)
            .Select(i => rows.Where(row => row.Count > i + 1).Select(row => row[i].Length).DefaultIfEmpty().Max()).ToList();
        foreach (var setting in lesson.Settings)
        {
            if (setting.Word.Text == "step") Step(setting, Cells(setting), widths);
            else Line(setting, 0);
        }
    }

    /// <summary>Bars with their times under each other.</summary>
    private void Recording(RecordingSyntax recording)
    {
        var widest = recording.Bars.Select(Place).Select(p => p.Length).DefaultIfEmpty().Max();
        foreach (var bar in recording.Bars)
        {
            writer.Line(Trivia.Of(bar.Word), Indent, Indent);
            writer.Append(Place(bar));
            var rest = bar.Values.SkipWhile(v => v.Text != "at").Select(v => v.Text).ToList();
            if (rest.Count == 0) continue;
            writer.PadTo(Indent + widest + 1);
            writer.Append(string.Join(' ', rest));
        }

        static string Place(SettingSyntax bar) => string.Join(' ', bar.Values.TakeWhile(v => v.Text != "at").Select(v => v.Text).Prepend(bar.Word.Text));
    }

    private void Line(SettingSyntax setting, int widest)
    {
        writer.Line(Trivia.Of(setting.Word), Indent, Indent);
        writer.Append(setting.Word.Text);
        if (!setting.Values.IsEmpty && !IsMayUse(setting)) writer.PadTo(Indent + widest);
        Values(setting, setting.Values, Indent);
    }

    /// <summary>A lesson's step, with what it teaches, its speeds and its words each under those of the other steps.</summary>
    private void Step(SettingSyntax step, List<string> cells, List<int> widths)
    {
        writer.Line(Trivia.Of(step.Word), Indent, Indent);
        writer.Append(step.Word.Text);
        var column = writer.Column + 1;
        for (var i = 0; i < cells.Count; i++)
        {
            writer.PadTo(column);
            writer.Append(cells[i]);
            column = Math.Max(writer.Column, column + (i < widths.Count ? widths[i] : 0)) + 2;
        }
    }

    private static List<string> Cells(SettingSyntax step)
    {
        List<string> cells = [];
        foreach (var value in step.Values)
        {
            var begins = cells.Count == 0 || (value.Kind == TokenKind.Word && StepCells.Contains(value.Text));
            if (begins) cells.Add(value.Text);
            else cells[^1] += value.LeadingTrivia.Length == 0 ? value.Text : " " + value.Text;
        }
        return cells;
    }

    /// <summary>Values after their word: one blank where there are blanks, and around the <c>=</c> of a tempo.</summary>
    private void Values(SettingSyntax setting, ImmutableArray<SyntaxToken> values, int indent)
    {
        var isTempo = setting.Word.Text == "tempo";
        for (var i = 0; i < values.Length; i++)
        {
            var trivia = Trivia.Of(values[i]);
            var isEquals = isTempo && (values[i].Text == "=" || (i > 0 && values[i - 1].Text == "="));
            if (trivia.HasLineEnd) writer.Line(trivia, indent, indent);
            else if (i == 0 || isEquals || values[i].LeadingTrivia.Length > 0) writer.Append(" ");
            writer.Append(values[i].Text);
        }
    }
}
