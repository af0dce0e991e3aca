using System.Collections.Immutable;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music.Chords;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>What a riff's telling notes are to the ear: the one it starts on, the one it comes to rest on, and where its bends go.</summary>
/// <remarks>Only single notes of the chord, tensions and notes of the key are told of: a passing tone is no place to start or land.</remarks>
internal sealed class RoleTeller(Riff riff, ImmutableArray<NoteRole> roles)
{
    // More of them would be a list, and no longer something to listen for.
    private const int MostBends = 2;

    /// <summary>Sentences without their full stops; none when there is nothing to tell.</summary>
    public IEnumerable<string> Tell()
    {
        if (roles.IsEmpty) yield break;
        var lines = riff.Content.Where(b => !b.IsRest).Select(b => b.Strands[0]).ToArray();
        if (lines.Length == 0) yield break;
        var first = lines[0].Events.FirstOrDefault(e => !e.IsRest);
        var last = RiffTeller.Landing(riff.Content[^1].IsRest ? riff.Content[^1] with { Strands = [lines[^1]] } : riff.Content[^1], riff.Bars[^1].Meter);
        if (EndPoints(Told(first), ReferenceEquals(first, last) ? null : Told(last)) is { } ends) yield return ends;
        var bends = riff.Content.SelectMany(b => b.Strands).SelectMany(s => s.Events).Where(e => e.Notes.Count == 1 && e.Notes[0].Bend is { ToCents.Count: > 0 })
            .Select(Told).OfType<NoteRole>().Where(r => r.Reached is not null).Select(Words).Distinct().ToArray();
        if (bends.Length is > 0 and <= MostBends) yield return RoleWords.Bends(bends);
    }

    private NoteRole? Told(Event? item)
    {
        if (item is not { Notes: [{ IsDead: false } note] } || note.Id.Index >= roles.Length) return null;
        var role = roles[note.Id.Index];
        return role.Kind is RoleKind.ChordTone or RoleKind.Tension or RoleKind.KeyNote ? role : null;
    }

    private static string? EndPoints(NoteRole? start, NoteRole? end) => (start, end) switch
    {
        (null, null) => null,
        ({ } from, null) => RoleWords.Start(Words(from)),
        (null, { } to) => RoleWords.Landing(Words(to)),
        ({ } from, { } to) when Words(from) == Words(to) => RoleWords.Both(Words(from)),
        ({ } from, { } to) => from.IsOfKey && to.IsOfKey
            ? RoleWords.InKey(Degree.Words(from.Degree), Degree.Words(to.Degree))
            : RoleWords.StartAndLanding(Words(from), Words(to)),
    };

    private static string Words(NoteRole role) => Degree.Words(role.Degree) + (role.IsOfKey ? RoleWords.OfTheKey : "");
}
