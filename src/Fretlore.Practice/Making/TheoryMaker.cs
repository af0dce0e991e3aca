using Fretlore.Music;
using Fretlore.Music.Scales;
using Fretlore.Performance;
using Fretlore.Practice.Data;
using Fretlore.Reading;

namespace Fretlore.Practice.Making;

/// <summary>Chords, scales and roles of a song, each once, and where they are in time.</summary>
internal sealed class TheoryMaker(PerformedSong performed, SongReading reading)
{
    private readonly List<ChordData> chords = [];
    private readonly Dictionary<(string Symbol, string Reason), int> chordIndex = [];
    private readonly List<ScaleData> scales = [];
    private readonly Dictionary<(string Name, string Reason), int> scaleIndex = [];
    private readonly List<RoleData> roles = [];
    private readonly Dictionary<RoleData, int> roleIndex = [];

    public IReadOnlyList<ChordData> Chords => chords;

    public IReadOnlyList<ScaleData> Scales => scales;

    public IReadOnlyList<RoleData> Roles => roles;

    /// <summary>The index of what a note does.</summary>
    public int RoleOf(NoteRole role)
    {
        var kind = role.Kind switch
        {
            RoleKind.ChordTone => "chord",
            RoleKind.Tension => "tension",
            RoleKind.PassingTone or RoleKind.NeighbourTone or RoleKind.ApproachNote => "leading",
            RoleKind.KeyNote => "key",
            RoleKind.Outside => "outside",
            _ => "dead",
        };
        return IndexOf(new RoleData(role.Kind == RoleKind.Dead ? "" : role.Degree.ToDegree(), role.Words, kind), roles, roleIndex, r => r);
    }

    /// <summary>The chords of a part in the order played.</summary>
    public IReadOnlyList<MomentData> ChordsOf(int part)
    {
        var byBar = reading.Parts[part].Chords.ToLookup(moment => moment.Bar);
        return InTime(bar => byBar[bar].Select(moment => (moment.At, IndexOf(moment))));
    }

    /// <summary>The scales of a part in the order played; none where the part rests.</summary>
    public IReadOnlyList<MomentData> ScalesOf(int part)
    {
        var phrases = reading.Parts[part].Phrases;
        return InTime(bar =>
        {
            foreach (var phrase in phrases)
            {
                if (bar >= phrase.FirstBar && bar < phrase.FirstBar + phrase.BarCount && !phrase.Scales.IsDefaultOrEmpty) return [(Beats.Zero, IndexOf(phrase.Scales[0]))];
            }
            return [(Beats.Zero, -1)];
        });
    }

    /// <summary>The chords in written bars of a part, each once.</summary>
    public IEnumerable<int> ChordsIn(int part, int firstBar, int barCount) => reading.Parts[part].Chords
        .Where(moment => moment.Bar >= firstBar && moment.Bar < firstBar + barCount).Select(IndexOf).Distinct();

    /// <summary>The scales over written bars of a part, each once.</summary>
    public IEnumerable<int> ScalesIn(int part, int firstBar, int barCount) => reading.Parts[part].Phrases
        .Where(phrase => phrase.FirstBar < firstBar + barCount && firstBar < phrase.FirstBar + phrase.BarCount && !phrase.Scales.IsDefaultOrEmpty)
        .Select(phrase => IndexOf(phrase.Scales[0])).Distinct();

    /// <summary>A scale by the name it has in the sheet; null when we don't know it.</summary>
    public static ScaleData? ScaleOf(NoteName root, string name, string reason = "")
    {
        if (!ScaleTable.TryFind(name, out var scale)) return null;
        var tones = scale.Degrees.Select(degree => (Degree: degree, Name: root.Transpose(degree)));
        return new ScaleData($"{root} {name}", [.. tones.Select(t => new ToneData(t.Name.PitchClass, t.Degree.ToDegree(), t.Name.ToString()))], reason);
    }

    private int IndexOf(ChordMoment moment)
    {
        var chord = new ChordData(
            moment.Symbol, moment.Override is null ? moment.Best.Reason : $"as written in the sheet; the notes make {moment.Best.Symbol}",
            [.. moment.Best.Notes.Select(note => note.ToString())]);
        return IndexOf(chord, chords, chordIndex, c => (c.Symbol, c.Reason));
    }

    private int IndexOf(ScaleReading read)
    {
        var scale = ScaleOf(read.Root, read.Name, read.Reason) ?? new ScaleData($"{read.Root} {read.Name}", [], read.Reason);
        return IndexOf(scale, scales, scaleIndex, s => (s.Name, s.Reason));
    }

    private static int IndexOf<T, TKey>(T item, List<T> all, Dictionary<TKey, int> index, Func<T, TKey> keyOf)
        where TKey : notnull
    {
        var key = keyOf(item);
        if (index.TryGetValue(key, out var known)) return known;
        all.Add(item);
        return index[key] = all.Count - 1;
    }

    private List<MomentData> InTime(Func<int, IEnumerable<(Beats At, int Index)>> inBar)
    {
        var moments = new List<MomentData>();
        foreach (var played in performed.Bars)
        {
            foreach (var (at, index) in inBar(played.Bar))
            {
                if (moments.Count > 0 && moments[^1].Index == index) continue;
                moments.Add(new MomentData(Seconds.Rounded(performed.Tempo.SecondsAt(played.Start + at)), index));
            }
        }
        return moments;
    }
}
