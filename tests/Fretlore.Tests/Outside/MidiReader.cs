using System.Text.Json;

namespace Fretlore.Tests.Outside;

/// <summary>One event as the npm package midi-file reads it.</summary>
internal sealed record ReadMidiEvent(
    long Tick, string Type, int Channel, int NoteNumber, int Velocity, int Value, int ControllerType, int ProgramNumber, string? Text,
    int MicrosecondsPerBeat, int Numerator, int Denominator, int Key, int Scale);

internal sealed record ReadMidiHeader(int Format, int NumTracks, int TicksPerBeat);

internal sealed record ReadMidi(ReadMidiHeader Header, ReadMidiEvent[][] Tracks)
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    public static ReadMidi From(byte[] file)
    {
        using var temporary = new TemporaryFile(".mid", file);
        return JsonSerializer.Deserialize<ReadMidi>(OutsideProgram.Node("read-midi.mjs", temporary.Path), Options)!;
    }
}

/// <summary>One note as verovio plays it from MusicXML.</summary>
internal sealed record PlayedXmlNote(int Track, int Key, double Onset);

internal sealed record PlayedXml(int Pages, string Log, PlayedXmlNote[] Notes)
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    public static PlayedXml From(byte[] file) => From([file])[0];

    /// <summary>All of them in one run of node, which takes longer to start than to play.</summary>
    public static PlayedXml[] From(IReadOnlyList<byte[]> files)
    {
        var temporary = files.Select(f => new TemporaryFile(".musicxml", f)).ToList();
        try
        {
            return JsonSerializer.Deserialize<PlayedXml[]>(OutsideProgram.Node("play-musicxml.mjs", [.. temporary.Select(t => t.Path)]), Options)!;
        }
        finally
        {
            foreach (var file in temporary) file.Dispose();
        }
    }
}
