using System.Globalization;
using Fretlore.Score;

namespace Fretlore.Sound.Mixing;

/// <summary>What a sound is called in its tags: the song's title and what of it is heard.</summary>
internal static class SoundTitle
{
    /// <param name="song">The whole song.</param>
    /// <param name="request">What of it is heard.</param>
    /// <param name="alone">The part that plays a riff alone, or null.</param>
    public static string Of(Song song, SoundRequest request, Part? alone)
    {
        string Names(IEnumerable<int> parts) => string.Join(", ", parts.Where(i => i >= 0 && i < song.Parts.Count).Select(i => song.Parts[i].Title));
        var bars = (request.FromBar, request.ToBar) switch
        {
            ({ } from, { } to) => string.Create(CultureInfo.InvariantCulture, $"bars {from} to {to}"),
            ({ } from, _) => string.Create(CultureInfo.InvariantCulture, $"from bar {from}"),
            (_, { } to) => string.Create(CultureInfo.InvariantCulture, $"to bar {to}"),
            _ => null,
        };
        string?[] details =
        [
            request.Section ?? request.Riff,
            bars,
            alone?.Title ?? (request.Parts.Count > 0 ? Names(request.Parts) : null),
            request.Without.Count > 0 ? "without " + Names(request.Without) : null,
            request.Speed != 1 ? string.Create(CultureInfo.InvariantCulture, $"{request.Speed * 100:0.##}%") : null,
        ];
        var said = details.Where(detail => !string.IsNullOrEmpty(detail)).ToList();
        return said.Count == 0 ? song.Info.Title : $"{song.Info.Title}: {string.Join(", ", said)}";
    }
}
