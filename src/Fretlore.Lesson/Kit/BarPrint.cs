using System.Security.Cryptography;
using System.Text;
using Fretlore.Lesson.CallOuts.Telling;
using Fretlore.Score;

namespace Fretlore.Lesson.Kit;

/// <summary>Short fingerprints of bars, so that two kits can be compared bar by bar without their sheets.</summary>
internal static class BarPrint
{
    /// <summary>Eight hexadecimal digits for each written bar of a part: what is played, its metre, key and tempo. Equal bars have equal ones.</summary>
    public static IEnumerable<string> Of(Song song, Part part)
    {
        for (var i = 0; i < song.Bars.Count; i++)
        {
            var bar = song.Bars[i] with { Number = 0, EndLine = BarLine.Single };
            var text = $"{bar}|{BarForm.Of(part.Bars[i])}|{part.Bars[i].RoadMap}|{string.Join(',', part.Bars[i].Strands.SelectMany(s => s.Events).Select(e => $"{e.Dynamic}{e.Words}{e.ChordSymbol}"))}";
            yield return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)).AsSpan(0, 4));
        }
    }
}
