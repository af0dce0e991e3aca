using Fretlore.Music;
using Fretlore.Music.Chords;
using Fretlore.Reading.Chords;

namespace Fretlore.Tests.Outside;

/// <summary>Chord names against npm @tombatossals/chords-db 0.5.1 (MIT): 2,069 guitar positions in standard tuning with their names.</summary>
/// <remarks>
/// The dataset names the position it was looking for; we name what sounds. Where the same intervals over the same bass stand in the dataset under several
/// names (C/A and Am7, Csus2/D and D7sus4, Caug and Eaug), no namer without context can give them all: those count as
/// homonyms when the dataset itself has our name elsewhere. Positions whose notes are not what their name says are data errors.
/// </remarks>
public class ChordDatasetChecks(ITestOutputHelper output)
{
    [Fact]
    public void Names_AgreeWithTheDataset_OrTheExceptionIsExplained()
    {
        var positions = Positions();
        var names = positions.Where(p => p.NotesMatchName).Select(p => p.Sound with { Root = p.RootAboveBass }).ToHashSet();
        int strict = 0, homonyms = 0, mistakes = 0, amongThree = 0, amongThreeOrHomonym = 0;
        foreach (var position in positions)
        {
            var candidates = ChordNamer.Name(position.Heights).Candidates;
            var isHomonym = !position.IsNamedBy(candidates[0]) && names.Contains(position.Sound with { Root = NoteName.Wrap(candidates[0].Root.PitchClass - position.Bass, 12) });
            var isThird = candidates.Take(3).Any(c => c.Root.PitchClass == position.Root);
            if (position.IsNamedBy(candidates[0])) strict++;
            else if (isHomonym) homonyms++;
            else if (!position.NotesMatchName) mistakes++;
            if (isThird) amongThree++;
            if (isThird || isHomonym || !position.NotesMatchName) amongThreeOrHomonym++;
        }
        // What sounds alike gets one name; the dataset gives it several.
        var reachable = positions.GroupBy(p => p.Sound).Sum(alike => alike.Where(p => p.NotesMatchName).GroupBy(p => p.RootAboveBass).Select(g => g.Count()).DefaultIfEmpty(0).Max());
        double Percent(int count) => Math.Round(100.0 * count / positions.Length, 2);
        output.WriteLine($"the dataset's own root {Percent(strict)} %, where no naming of what sounds could reach more than {Percent(reachable)} %");
        output.WriteLine($"with the dataset's own homonyms {Percent(strict + homonyms)} % · positions that are not what they are called, besides {mistakes}");
        output.WriteLine($"among three {Percent(amongThree)} % · with homonyms and mistakes {Percent(amongThreeOrHomonym)} %");
        Assert.InRange(Percent(strict), 89.4, 100);
        Assert.InRange(Percent(strict + homonyms), 97.2, 100);
        Assert.InRange(Percent(amongThree), 98.8, 100);
        Assert.InRange(Percent(amongThreeOrHomonym), 99.6, 100);
    }

    [Fact]
    public void EveryPositionThatHasAnotherNameWithUs_IsListedWithTheSideThatIsRight()
    {
        var differing = Differing();
        Assert.Equal(ChordDatasetVerdicts.All.Keys.Order(StringComparer.Ordinal), differing.Select(kind => kind.Key).Order(StringComparer.Ordinal));
        Assert.All(differing.SelectMany(kind => kind), p => Assert.Equal(ChordDatasetVerdicts.All[p.Kind].Ours, p.NameOnC));
        foreach (var side in differing.GroupBy(kind => ChordDatasetVerdicts.All[kind.Key].Side)) output.WriteLine($"{side.Key}: {side.Sum(kind => kind.Count())} positions of {side.Count()} kinds");
    }

    /// <summary>So that the right root also means the right chord: our symbol, read again, has the tones that sound, and nothing it must have is missing.</summary>
    [Fact]
    public void TheSymbolWeGive_ReadAgain_IsWhatSounds()
    {
        foreach (var position in Positions())
        {
            var best = ChordNamer.Name(position.Heights).Candidates[0];
            Assert.True(ChordSymbol.TryParse(best.Symbol, out var symbol, out _), best.Symbol);
            var sounding = PitchClassSet.Of(position.Heights).From(best.Root.PitchClass);
            var bass = NoteName.Wrap(best.Bass.PitchClass - best.Root.PitchClass, 12);
            Assert.True(sounding.IsWithin(symbol.Tones.With(bass)), $"{best.Symbol}: {sounding}, read as {symbol.Tones}");
            Assert.True(symbol.Needed.IsWithin(sounding), $"{best.Symbol}: {sounding}, needs {symbol.Needed}");
        }
    }

    /// <summary>Positions that get another name first from us, or are not what they are called, by their kind.</summary>
    internal static ILookup<string, Position> Differing() => Positions().Where(p => !p.IsNamedBy(ChordNamer.Name(p.Heights).Candidates[0])).ToLookup(p => p.Kind);

    private static Position[] Positions()
    {
        var positions = OutsideProgram.Node("chords-db.mjs").Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(Position.Parse).ToArray();
        Assert.Equal(2069, positions.Length);
        return positions;
    }

    /// <summary>The twin that needs no package: a few positions of the dataset written in, each a different kind of case.</summary>
    [Theory]
    [InlineData("48 52 55 60 64", "C")]
    [InlineData("45 52 55 60 64", "Am7")]
    [InlineData("43 48 53 55", "Csus4/G")]
    [InlineData("48 51 54 57", "Cdim7")]
    [InlineData("48 52 56 59", "Cmaj7#5")]
    [InlineData("47 52 56 59 62 66", "E9/B")]
    public void Names_OfAFewPositions_AreTheDatasets(string midi, string symbol)
    {
        var heights = midi.Split(' ').Select(m => new Height(int.Parse(m, System.Globalization.CultureInfo.InvariantCulture))).ToArray();
        Assert.Equal(symbol, ChordNamer.Name(heights).Candidates[0].Symbol);
    }

    /// <summary>Intervals above the bass, and where the root stands above it.</summary>
    internal sealed record Sound(PitchClassSet Intervals, int Root);

    internal sealed record Position(string Key, string Suffix, int Root, int Bass, Height[] Heights, Sound Sound)
    {
        public int RootAboveBass => NoteName.Wrap(Root - Bass, 12);

        /// <summary>Suffix, semitones above the root, bass above the root.</summary>
        public string Kind => $"{(Suffix.Contains('/', StringComparison.Ordinal) ? Suffix[..Suffix.IndexOf('/', StringComparison.Ordinal)] + "/…" : Suffix)} "
            + $"{PitchClassSet.Of(Heights).From(Root)} over {NoteName.Wrap(Bass - Root, 12)}";

        /// <summary>Our first name for it, moved so that the dataset's root is C.</summary>
        public string NameOnC => ChordNamer.Name([.. Heights.Select(h => h + (12 - Root))]).Candidates[0].Symbol;

        /// <summary>True for a name on the dataset's root, where the notes are those of the dataset's chord.</summary>
        public bool IsNamedBy(Fretlore.Reading.ChordReading reading) => NotesMatchName && reading.Root.PitchClass == Root;

        /// <summary>True when every note belongs to the name and the name's telling notes sound.</summary>
        public bool NotesMatchName
        {
            get
            {
                var notes = PitchClassSet.Of(Heights).From(Root);
                if (Suffix.Contains('/', StringComparison.Ordinal))
                {
                    var triad = Suffix.StartsWith('m') ? PitchClassSet.Of(0, 3, 7) : PitchClassSet.Of(0, 4, 7);
                    var slash = NoteName.TryParse(Suffix.AsSpan(Suffix.IndexOf('/', StringComparison.Ordinal) + 1), out var name) ? name.PitchClass : -1;
                    return slash == Bass && notes == triad.With(NoteName.Wrap(slash - Root, 12));
                }
                var (needed, optional) = ChordDatasetFormulas.All[Suffix];
                return PitchClassSet.Of(needed).IsWithin(notes) && notes.IsWithin(PitchClassSet.Of(needed) | PitchClassSet.Of(optional));
            }
        }

        public static Position Parse(string line)
        {
            var fields = line.Split('|');
            Assert.True(NoteName.TryParse(fields[0], out var root));
            var heights = fields[2].Split(' ').Select(m => new Height(int.Parse(m, System.Globalization.CultureInfo.InvariantCulture))).ToArray();
            var bass = heights.Min().PitchClass;
            var sound = new Sound(PitchClassSet.Of(heights).From(bass), 0);
            return new Position(fields[0], fields[1], root.PitchClass, bass, heights, sound);
        }
    }
}
