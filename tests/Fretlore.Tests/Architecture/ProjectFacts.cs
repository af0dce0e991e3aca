using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Architecture;

/// <summary>Holds the projects to the table in ARCHITECTURE.md.</summary>
public sealed partial class ProjectFacts
{
    private static readonly string Sources = Path.Combine(Repository.Root, "src");

    [Fact]
    public void TheTable_ListsEveryProjectOnce()
    {
        var folders = Directory.GetDirectories(Sources).Select(folder => Path.GetFileName(folder)!).Order(StringComparer.Ordinal);
        Assert.Equal(folders, Table().Select(row => row.Project).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void AProject_RefersOnlyToWhatTheTableAllows()
    {
        foreach (var (project, allowed) in Table())
        {
            var file = XDocument.Load(Path.Combine(Sources, project, project + ".csproj"));
            var references = file.Descendants("ProjectReference")
                .Select(reference => Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value.Replace('\\', '/')));
            Assert.Empty(references.Except(allowed).Select(reference => $"{project} refers to {reference}"));
        }
    }

    [Fact]
    public void AnAssembly_UsesOnlyWhatItsProjectMaySee_DirectlyOrThroughIt()
    {
        var table = Table().ToDictionary(row => row.Project, row => row.MaySee);
        foreach (var (project, _) in table)
        {
            var seen = new HashSet<string>();
            Visit(project);
            var used = Assembly(project).GetReferencedAssemblies().Select(a => a.Name!).Where(table.ContainsKey);
            Assert.Empty(used.Except(seen).Select(other => $"{project} uses {other}"));

            void Visit(string from)
            {
                foreach (var next in table[from].Where(seen.Add)) Visit(next);
            }
        }
    }

    [Fact]
    public void NoType_HasStaticStateThatChanges()
    {
        foreach (var (project, _) in Table())
        {
            var fields = Assembly(project).GetTypes()
                .Where(type => type.Namespace?.StartsWith("Fretlore", StringComparison.Ordinal) == true && !IsMadeByTheCompiler(type))
                .SelectMany(type => type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
                .Where(field => !field.IsInitOnly && !field.IsLiteral && !field.Name.StartsWith('<'));
            Assert.Empty(fields.Select(field => $"{field.DeclaringType}.{field.Name}"));
        }
    }

    // Lambdas' caches and the writers that the JSON source generator makes.
    private static bool IsMadeByTheCompiler(Type type) =>
        type.Name.StartsWith('<') || type.DeclaringType is { } outer && IsMadeByTheCompiler(outer)
        || typeof(System.Text.Json.Serialization.JsonSerializerContext).IsAssignableFrom(type);

    private static Assembly Assembly(string project) =>
        System.Reflection.Assembly.Load(project == "Fretlore.Cli" ? "fretlore" : project);

    /// <summary>The rows <c>| `project` | job | may see |</c>.</summary>
    private static List<(string Project, IReadOnlyList<string> MaySee)> Table()
    {
        var rows = new List<(string, IReadOnlyList<string>)>();
        foreach (Match row in Row().Matches(File.ReadAllText(Path.Combine(Repository.Root, "ARCHITECTURE.md"))))
        {
            var seen = row.Groups["see"].Value.Trim();
            rows.Add((row.Groups["project"].Value, seen == "nothing" ? [] : [.. seen.Split(',', StringSplitOptions.TrimEntries).Select(s => "Fretlore." + s)]));
        }
        Assert.NotEmpty(rows);
        return rows;
    }

    [GeneratedRegex(@"^\| `(?<project>Fretlore\.\w+)` \|[^|]*\|(?<see>[^|]*)\|\s*$", RegexOptions.Multiline)]
    private static partial Regex Row();
}
