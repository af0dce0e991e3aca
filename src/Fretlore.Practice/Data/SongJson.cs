using System.Text.Json;
using System.Text.Json.Serialization;

namespace Fretlore.Practice.Data;

/// <summary>Writes a song's data. The usual encoder writes every sign that could end a script element as an escape.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(SongData))]
internal sealed partial class SongJson : JsonSerializerContext
{
    public static string Write(SongData song) => JsonSerializer.Serialize(song, Default.SongData);
}
