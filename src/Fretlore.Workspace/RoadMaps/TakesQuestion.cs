using System.Collections.Immutable;
using System.Globalization;
using Fretlore.RoadMaps.Conflicts;
using Fretlore.RoadMaps.Model;
using Fretlore.RoadMaps.Stretches;
using Fretlore.RoadMaps.Takes;
using Fretlore.Score;
using Fretlore.Workspace.Questions;

namespace Fretlore.Workspace.RoadMaps;

/// <summary>How could a solo go?</summary>
/// <param name="Name">The road map.</param>
/// <param name="Takes">How many solos, 1 to 1,000.</param>
/// <param name="Seed">Chance: the same seed gives the same solos.</param>
/// <param name="Level">From 0, easy, to 1, full; null for from one to the other.</param>
/// <param name="Section">The section it is played in; null for the first.</param>
/// <param name="Model">The weights of the phrase model; null for the usual ones.</param>
public sealed record TakesQuestion(string Name, int Takes = 1, int Seed = 1, double? Level = null, string? Section = null, PhraseModel? Model = null)
{
    public const int Most = 1000;

    /// <param name="workspace">The sheet; there must be a song.</param>
    public Answer<TakesAnswer> Ask(SongWorkspace workspace)
    {
        var typed = Takes.ToString(CultureInfo.InvariantCulture);
        if (Takes is < 1 or > Most) return new Misread(typed, 1, typed.Length, $"{typed} is no number of takes.", "Give a number from 1 to 1000.");
        var place = RoadMapPlace.Find(workspace, Name, Section);
        if (place.Misread is { } misread) return misread;
        var stretch = place.Value;
        var maker = new TakeMaker(stretch, Model);
        var takes = ImmutableArray.CreateBuilder<WrittenTake>(Takes);
        for (var number = 1; number <= Takes; number++)
        {
            // A take is the quickest proof that the rules can be kept: conflicts are looked for where there is none.
            if (takes.Count == 0 && number > 1) break;
            if (maker.Make(Seed, number, LevelOf(number)) is { } take) takes.Add(new WrittenTake(take, TakeSheet.Write(workspace, stretch, take)));
        }
        return new TakesAnswer(stretch, takes.ToImmutable(), takes.Count > 0 ? [] : ConflictFinder.Find(stretch));
    }

    private double LevelOf(int number) => Level ?? (Takes == 1 ? 0.5 : (number - 1.0) / (Takes - 1));
}

/// <summary>Solos made from a road map.</summary>
/// <param name="Stretch">The road map where it stands.</param>
/// <param name="Takes">In order; fewer than asked for where none was found that a hand can play.</param>
/// <param name="Conflict">The fewest rules that no solo keeps together; empty when a solo can keep all.</param>
public sealed record TakesAnswer(SoloStretch Stretch, ImmutableArray<WrittenTake> Takes, ImmutableArray<RoadMapRule> Conflict);

/// <summary>A take and the sheet it is written in.</summary>
public sealed record WrittenTake(SoloTake Take, string Sheet);
