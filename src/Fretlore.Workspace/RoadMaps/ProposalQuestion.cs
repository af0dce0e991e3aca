using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Exchange.Sheets;
using Fretlore.Music;
using Fretlore.RoadMaps.Proposing;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;
using Fretlore.Workspace.Questions;

namespace Fretlore.Workspace.RoadMaps;

/// <summary>By which rules may several takes of one solo have been played?</summary>
/// <param name="Name">What the road map is to be called.</param>
/// <param name="Part">The part that plays the solo; null for the one in which the takes differ.</param>
/// <param name="Section">The section it is in; null for where the takes differ.</param>
public sealed partial record ProposalQuestion(string Name = "solo-map", string? Part = null, string? Section = null)
{
    /// <param name="takes">Sheets of the same song with the solo written out, three at least; each must have a song.</param>
    public Answer<ProposalAnswer> Ask(IReadOnlyList<SongWorkspace> takes)
    {
        var typed = takes.Count.ToString(CultureInfo.InvariantCulture);
        if (takes.Count < MapProposer.LeastTakes) return new Misread(typed, 1, typed.Length, $"{typed} {(takes.Count == 1 ? "take says" : "takes say")} too little of what is fixed and what is free.", "Give three takes or more.");
        Song[] songs = [.. takes.Select(t => t.Song ?? throw new InvalidOperationException("A sheet without a song is no take."))];
        if (!Names().IsMatch(Name) || songs[0].Riffs.Any(r => r.Name == Name)) return new Misread(Name, 1, Name.Length, $"A road map can't be called \"{Name}\" here.", "Give a name of small letters, digits, dots and dashes that no riff has.");
        var place = TakesPlace.Find(songs, Part, Section);
        if (place.Misread is { } misread) return misread;
        var (part, first, count) = place.Value;
        var song = Bare(songs[0], part, first, count);
        var played = songs.Select(s => ImmutableArray.CreateRange(s.Parts[TakesPlace.PartLike(s, songs[0].Parts[part].Name, part)].Bars.Items.Slice(first, count))).ToImmutableArray();
        var proposal = MapProposer.Propose(song, takes[0].Reading, new RoadMapUse(Name, part, first, count), played);
        var sheet = SheetWriter.Write(proposal.Song, new SheetStyle(FindsRiffs: false)).Text;
        return new ProposalAnswer(proposal, Blocks(sheet, proposal), sheet);
    }

    // Without the riff that is the take itself; what the lesson taught of it, it teaches of the road map.
    private Song Bare(Song song, int part, int first, int count)
    {
        var whole = song.RiffUses.Where(u => u.Part == part && u.FirstBar == first && u.BarCount == count).Select(u => u.Riff).ToHashSet();
        whole.RemoveWhere(name => song.RiffUses.Any(u => u.Riff == name && (u.Part != part || u.FirstBar != first)));
        return song with
        {
            Riffs = song.Riffs.Where(r => !whole.Contains(r.Name)).ToValueList(),
            RiffUses = song.RiffUses.Where(u => !whole.Contains(u.Riff)).ToValueList(),
            Lesson = song.Lesson is not { } lesson ? null : lesson with
            {
                Steps = lesson.Steps.Select(s => s with { Teaches = s.Teaches.Select(t => whole.Contains(t.Name) ? new Taught(Name) : t).ToValueList() }).ToValueList(),
            },
        };
    }

    // The riffs that were made for the road map, and its block.
    private static string Blocks(string sheet, Proposal proposal)
    {
        var starts = proposal.Riffs.Select(r => $"riff {r}\n").Append($"roadmap {proposal.Map.Name}\n");
        return string.Join('\n', starts.Select(start =>
        {
            var at = sheet.IndexOf("\n" + start, StringComparison.Ordinal) + 1;
            var end = sheet.IndexOf("\n\n", at, StringComparison.Ordinal);
            return sheet[at..(end + 1)];
        }));
    }

    [System.Text.RegularExpressions.GeneratedRegex("^[a-z][A-Za-z0-9.-]+$")]
    private static partial System.Text.RegularExpressions.Regex Names();
}

/// <summary>A proposed road map.</summary>
/// <param name="Proposal">What was found.</param>
/// <param name="Block">The road map's block, with the riffs made for it before it.</param>
/// <param name="Sheet">The first take's song with the road map in the solo's place.</param>
public sealed record ProposalAnswer(Proposal Proposal, string Block, string Sheet)
{
    public SoloStretch Stretch => Proposal.Stretch;
}

/// <summary>Finds the bars in which takes of one song are different takes.</summary>
internal static class TakesPlace
{
    public static Answer<(int Part, int First, int Count)> Find(Song[] songs, string? part, string? section)
    {
        var form = songs[0].Bars;
        for (var i = 1; i < songs.Length; i++)
        {
            if (songs[i].Bars.Count == form.Count && songs[i].Bars.Zip(form).All(b => b.First.Length == b.Second.Length)) continue;
            var take = (i + 1).ToString(CultureInfo.InvariantCulture);
            return new Misread(take, 1, take.Length, $"Take {take} doesn't have the bars of take 1.", "Give takes of the same song, bar for bar.");
        }
        var chosen = PartOf(songs, part);
        if (chosen.Misread is { } misread) return misread;
        var index = chosen.Value;
        if (section is not null)
        {
            if (songs[0].Sections.Items.FirstOrDefault(s => s.Name.Equals(section, StringComparison.OrdinalIgnoreCase)) is { } named) return (index, named.FirstBar, named.BarCount);
            return new Misread(section, 1, section.Length, $"The takes have no section \"{section}\".", $"Their sections are {string.Join(", ", songs[0].Sections.Select(s => s.Name))}.");
        }
        var bars = Enumerable.Range(0, form.Count).Where(b => Differ(songs, index, b)).ToList();
        if (bars.Count == 0) return new Misread("takes", 1, 5, "The takes are all the same.", "Give takes that differ; what never changes needs no road map.");
        var sections = songs[0].Sections.Where(s => bars.Exists(b => b >= s.FirstBar && b < s.FirstBar + s.BarCount)).ToList();
        if (sections.Count == 1) return (index, sections[0].FirstBar, sections[0].BarCount);
        var names = string.Join(", ", sections.Select(s => s.Name));
        return new Misread(names, 1, names.Length, "The takes differ in several sections.", "Say which one is the solo with --section.");
    }

    public static int PartLike(Song song, string name, int otherwise) => song.Parts.Items.ToList().FindIndex(p => p.Name == name) is >= 0 and var at ? at : otherwise;

    private static Answer<int> PartOf(Song[] songs, string? part)
    {
        if (part is not null)
        {
            var chosen = PartChoice.Read(part, songs[0]);
            if (chosen.Misread is { } misread) return misread;
            return chosen.Value.Count == 1 ? chosen.Value[0] : new Misread(part, 1, part.Length, "A solo is one part.", "Name one part.");
        }
        if (songs.Any(s => s.Parts.Count != songs[0].Parts.Count)) return new Misread("parts", 1, 5, "The takes don't have the same parts.", "Give takes of the same song, or say the part with --part.");
        var differing = Enumerable.Range(0, songs[0].Parts.Count).Where(p => Enumerable.Range(0, songs[0].Bars.Count).Any(b => Differ(songs, p, b))).ToList();
        if (differing.Count == 1 || songs[0].Parts.Count == 1) return differing.Count == 1 ? differing[0] : 0;
        var names = string.Join(", ", songs[0].Parts.Select(p => p.Name));
        return new Misread(names, 1, names.Length, differing.Count == 0 ? "The takes are all the same." : "Several parts differ from take to take.", "Say which part is the solo with --part.");
    }

    private static bool Differ(Song[] songs, int part, int bar)
    {
        var first = SoloLine.Of([songs[0].Parts[part].Bars[bar]], [songs[0].Bars[bar].Length]);
        return songs.Skip(1).Any(s =>
        {
            var other = SoloLine.Of([s.Parts[part].Bars[bar]], [s.Bars[bar].Length]);
            return other.Length != first.Length || !other.Zip(first).All(p => p.First.At == p.Second.At && p.First.IsSameAs(p.Second));
        });
    }
}
