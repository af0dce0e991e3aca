using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Retuning;

/// <summary>Writes a song for another tuning, sounding the same wherever it can.</summary>
/// <remarks>
/// Each note keeps its string where the new one can play it and the hand can hold it; else another string is found with the fingers to go with it, and what is nowhere to be had
/// moves by octaves or is left out. Open strings that sound on, and what one finger holds, are kept where that is possible. A riff, a shape and a bar that comes
/// back are placed once.
/// </remarks>
public sealed class Retuner
{
    private readonly Song song;
    private readonly RetuneOrder order;
    private readonly NeckMove[] moves;
    private readonly SongTransposer transposer;
    private readonly List<NamedShape> shapes = [];
    private readonly Dictionary<(NeckMove Move, string Shape), string> shapeNames = [];
    private readonly Dictionary<(NeckMove Move, string Riff), string> riffNames = [];
    private readonly HashSet<string> names;

    private Retuner(Song song, RetuneOrder order)
    {
        (this.song, this.order) = (song, order);
        var known = new Dictionary<(Tuning, bool), NeckMove>();
        moves = [.. song.Parts.Select((part, i) =>
        {
            var key = (part.Neck.Tuning, order.Parts.Contains(i));
            return known.TryGetValue(key, out var move) ? move : known[key] = new NeckMove(key.Tuning, key.Item2, order);
        })];
        transposer = new SongTransposer(song, order.Semitones);
        names = [.. song.Riffs.Select(r => r.Name), .. song.RoadMaps.Select(r => r.Name), .. song.Shapes.Select(s => s.Name), .. song.Parts.Select(p => p.Name)];
    }

    public static RetunedSong Retune(Song song, RetuneOrder order) => new Retuner(song, order).Run();

    private RetunedSong Run()
    {
        foreach (var shape in song.Shapes) Add(shape);
        var unplayed = new List<(string, ValueList<RetuneLoss>)>();
        var riffs = song.Riffs.SelectMany(riff => Moved(riff, unplayed)).ToList();
        var losses = new List<ValueList<RetuneLoss>>();
        var parts = song.Parts.Select((part, i) => Moved(part, moves[i], losses)).ToList();
        var maps = RoadMaps().ToList();
        var moved = song with
        {
            Bars = transposer.Bars(song.Bars),
            Parts = parts.ToValueList(),
            Riffs = riffs.ToValueList(),
            Shapes = shapes.ToValueList(),
            RoadMaps = maps.ToValueList(),
            RiffUses = song.RiffUses.Select(use => use with { Riff = riffNames.GetValueOrDefault((moves[use.Part], use.Riff), use.Riff) }).ToValueList(),
        };
        moved = moved with { RiffUses = moved.RiffUses.Where(use => IsAsPlayed(moved, use)).ToValueList() };
        return new RetunedSong(NoteNumbers.Anew(moved), losses.ToValueList(), unplayed.ToValueList());
    }

    // The tunings in which something of the song is played, those that stay first: they keep the names.
    private IEnumerable<NeckMove> MovesFrom(Tuning tuning, Func<int, bool> plays)
    {
        var from = moves.Where(move => move.From == tuning).Distinct().ToList();
        var playing = moves.Where((move, i) => move.From == tuning && plays(i)).Distinct().OrderBy(move => !move.ChangesNothing).ToList();
        return playing.Count > 0 ? playing : from.Take(1);
    }

    private void Add(NamedShape shape)
    {
        var playing = MovesFrom(shape.Neck.Tuning, part => song.Parts[part].Bars.Any(bar => bar.Strands.Any(strand => strand.Events.Any(item => item.Shape == shape.Name)))).ToList();
        if (playing.Count == 0) shapes.Add(shape);
        foreach (var move in playing)
        {
            var moved = move.ChangesNothing ? shape : move.Place(shape);
            // No string of it is left.
            if (moved.Shape.LowToHigh.Items.All(fret => fret is null)) continue;
            if (move != playing[0]) moved = moved with { Name = shapeNames[(move, shape.Name)] = NewName(shape.Name, move) };
            shapes.Add(moved);
        }
    }

    private IEnumerable<Riff> Moved(Riff riff, List<(string, ValueList<RetuneLoss>)> unplayed)
    {
        var playing = MovesFrom(riff.Neck.Tuning, part => song.RiffUses.Any(use => use.Part == part && use.Riff == riff.Name)).ToList();
        if (playing.Count == 0) yield return riff;
        foreach (var move in playing)
        {
            var (content, losses) = Moved(riff.Bars, riff.Content, move);
            if (losses.Count > 0 && !song.RiffUses.Any(use => use.Riff == riff.Name)) unplayed.Add((riff.Name, losses));
            var moved = riff with { Neck = move.Moved(riff.Neck), Bars = transposer.Bars(riff.Bars), Content = content };
            if (move != playing[0]) moved = moved with { Name = riffNames[(move, riff.Name)] = NewName(riff.Name, move), VariationOf = null };
            yield return moved;
        }
    }

    private Part Moved(Part part, NeckMove move, List<ValueList<RetuneLoss>> all)
    {
        var (content, losses) = Moved(song.Bars, part.Bars, move);
        all.Add(losses);
        return part with { Neck = move.Moved(part.Neck), Bars = content };
    }

    private (ValueList<PartBar> Content, ValueList<RetuneLoss> Losses) Moved(ValueList<Bar> bars, ValueList<PartBar> content, NeckMove move)
    {
        if (move.ChangesNothing || content.Count == 0) return (content, []);
        var line = SourceLine.Read(bars, content);
        var places = move.Place(line);
        var own = shapeNames.Where(name => name.Key.Move == move).ToDictionary(name => name.Key.Shape, name => name.Value);
        var known = new Dictionary<string, NamedShape>();
        foreach (var shape in song.Shapes)
        {
            if (shapes.Find(s => s.Name == own.GetValueOrDefault(shape.Name, shape.Name)) is { } there) known.Add(shape.Name, there);
        }
        var moved = new LineRewriter(move, line, places, known, own).Write(transposer.Symbol);
        return (moved, LossFinder.Find(line, places, order.Semitones));
    }

    // The stretch of neck of a road map goes along with its part.
    private IEnumerable<RoadMap> RoadMaps()
    {
        foreach (var map in song.RoadMaps)
        {
            var use = song.RoadMapUses.FirstOrDefault(use => use.RoadMap == map.Name);
            var moved = transposer.Map(map);
            if (use is not null && !moves[use.Part].ChangesNothing) moved = RoadMapMove.Along(moved, moves[use.Part], song.Parts[use.Part].Neck, order.Semitones);
            yield return moved.WithRiffs(name => use is null ? name : riffNames.GetValueOrDefault((moves[use.Part], name), name));
        }
    }

    private string NewName(string name, NeckMove move)
    {
        var stem = $"{name}-{song.Parts[Array.IndexOf(moves, move)].Name}";
        var unique = stem;
        for (var n = 2; !names.Add(unique); n++) unique = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{stem}-{n}");
        return unique;
    }

    private static bool IsAsPlayed(Song song, RiffUse use)
    {
        if (song.Riffs.FirstOrDefault(riff => riff.Name == use.Riff) is not { } riff || riff.Content.Count != use.BarCount) return true;
        for (var bar = 0; bar < use.BarCount; bar++)
        {
            if (BarText.WithoutIds(riff.Content[bar]).Strands != BarText.WithoutIds(song.Parts[use.Part].Bars[use.FirstBar + bar]).Strands) return false;
        }
        return true;
    }
}
