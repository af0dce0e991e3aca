using System.Collections.Immutable;
using Fretlore.Binding.Form;
using Fretlore.Binding.Lessons;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Recordings;
using Fretlore.Binding.Riffs;
using Fretlore.Binding.Settings;
using Fretlore.Guitar;
using Fretlore.Syntax;

namespace Fretlore.Binding;

/// <summary>Makes a song of a sheet: the meaning of its text, checked.</summary>
public static class SongBinder
{
    /// <summary>Binds a sheet. Never fails, whatever the tree: what is wrong is said in the findings, the parser's included.</summary>
    public static BoundSong Bind(ParsedSheet sheet) => Bind(sheet, writesRepeats: true);

    /// <param name="sheet">The parsed sheet.</param>
    /// <param name="writesRepeats">False to leave every repeat written out, for comparison.</param>
    internal static BoundSong Bind(ParsedSheet sheet, bool writesRepeats)
    {
        var declared = new Dictionary<string, RiffSyntax>();
        var context = new BindContext { Riffs = NoRiffs.Instance };
        var problems = context.Problems;
        foreach (var riff in sheet.Root.Blocks.OfType<RiffSyntax>())
        {
            if (!riff.Name.IsMissing && !declared.TryAdd(riff.Name.Text, riff)) problems.Add(NameProblems.DeclaredTwice(riff.Name, "riff"));
        }
        var settings = SettingsBinder.Bind(sheet.Root, problems);
        var hasParts = sheet.Root.Blocks.Any(b => b is PartSyntax);
        if (settings.Neck.Tuning is null && !hasParts && !sheet.Root.Blocks.IsEmpty) problems.Add(SettingProblems.NoTuning(new TextSpan(0, 0)));
        var songNeck = settings.Neck.On(new Neck(Tuning.Standard));
        var parts = PartBinder.Bind(sheet.Root, settings, songNeck, problems);
        var hasTuning = settings.Neck.Tuning is not null || sheet.Root.Blocks.OfType<PartSyntax>().Any(p => p.Settings.Any(s => s.Word.Text == "tuning"));

        var names = new SectionNames(sheet.Root, parts, problems);
        var owners = Owners(declared, names, parts, settings.Neck.Tuning is null ? parts[0].Neck : songNeck, problems);
        var riffNecks = declared.Values.ToDictionary(r => r.Name.Text, owners.NeckOf);
        ShapeBinder.Bind(sheet.Root, [.. ShapeNecks(settings, songNeck, parts, riffNecks.Values)], context);
        RoadMapBinder.Bind(sheet.Root, context, parts, declared.Keys);

        var order = RiffOrder.Of(declared, problems);
        var table = new RiffTable(context, declared, order);
        context.Riffs = table;
        var riffBinder = new RiffBinder(context, settings, table);
        foreach (var riff in order.Riffs) table.Add(riffBinder.Bind(riff, riffNecks[riff.Name.Text]));

        var draft = new SongDraft(parts) { Jumps = new JumpCheck(problems) };
        var sections = new SectionBinder(context, draft, new Timeline(settings, problems), names);
        foreach (var section in names.All) sections.Bind(section);
        draft.Jumps.Report();
        if (draft.Columns.Count > SongLimits.MostBarsInLine)
        {
            context.Limits.Refuse(names.All[^1].Span, problems);
        }
        var lesson = LessonBinder.Bind(sheet.Root, context, declared.Keys, names, [.. parts.Select(p => p.Name)]);
        if (context.Limits.IsExceeded || !hasTuning) return new BoundSong(null, [], problems.MergedWith(sheet.Diagnostics));
        var assembler = new SongAssembler(context, settings) { WritesRepeats = writesRepeats };
        var (song, spans, symbols) = assembler.Assemble(draft, table.InOrderWritten, lesson?.Plan);
        LessonCheck.Check(lesson, song, problems);
        song = RecordingBinder.Bind(sheet.Root, song, problems);
        return new BoundSong(song, spans, problems.MergedWith(sheet.Diagnostics)) { Symbols = symbols };
    }

    private static RiffOwners Owners(
        Dictionary<string, RiffSyntax> declared, SectionNames names, ImmutableArray<DeclaredPart> parts, Neck otherwise, DiagnosticBag problems)
    {
        var owners = new RiffOwners(declared, (riff, neck) => OwnNeck(riff, neck, problems), otherwise);
        foreach (var section in names.All)
        {
            foreach (var (part, line) in names.LinesOf(section)) owners.Claim(line.Music, parts[part].Neck);
        }
        return owners;
    }

    private static Neck OwnNeck(RiffSyntax riff, Neck neck, DiagnosticBag problems)
    {
        var own = riff.Settings.Aggregate(new NeckSettings(), (read, setting) => NeckReader.Read(read, setting, problems));
        if (own == new NeckSettings()) return neck;
        var on = own.On(neck);
        if (riff.Settings.FirstOrDefault(s => s.Word.Text is "capo") is { } capo) CapoReader.Check(on.Capo, on.Tuning, capo.Span, problems);
        else if (riff.Settings.FirstOrDefault(s => s.Word.Text is "tuning") is { } tuning) CapoReader.Check(on.Capo, on.Tuning, tuning.Span, problems);
        return on;
    }

    // A shape belongs to the song's tuning where it fits, or else to that of a part or riff.
    private static IEnumerable<Neck> ShapeNecks(
        SongSettings settings, Neck songNeck, ImmutableArray<DeclaredPart> parts, IEnumerable<Neck> riffs) =>
        (settings.Neck.Tuning is null ? [] : new[] { songNeck }).Concat(parts.Select(p => p.Neck)).Concat(riffs);
}
