using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Output.Pdf;

/// <summary>A bar in words: "Bar 5. Lead guitar: String 1, fret 7, B4; String 2, fret 5, E4. Bass: rest".</summary>
internal static class SpokenBar
{
    /// <param name="title">Its number.</param>
    /// <param name="bar">What is drawn; a group without an id is what one of several parts plays.</param>
    public static string Of(string title, Group bar)
    {
        var sentences = new List<string> { title };
        var notes = new List<string>();
        foreach (var mark in bar.Marks)
        {
            if (mark is not Group group) continue;
            if (group is { Id: null, Title: { } part })
            {
                var played = new List<string>();
                AddNotes(group, played);
                sentences.Add($"{part}: {(played.Count == 0 ? "rest" : string.Join("; ", played))}");
            }
            else AddNotes(new Group(null, null, [group]), notes);
        }
        if (notes.Count > 0) sentences.Add(string.Join("; ", notes));
        return string.Join(". ", sentences);
    }

    private static void AddNotes(Group group, List<string> notes)
    {
        foreach (var mark in group.Marks)
        {
            if (mark is not Group inner) continue;
            if (inner.Title is { } note) notes.Add(note);
            AddNotes(inner, notes);
        }
    }
}
