using BenchmarkDotNet.Attributes;
using Fretlore.Engraving.Fonts;
using Fretlore.Score;

namespace Fretlore.Bench;

/// <summary>Each way through the house for a song of 120 bars and one of 1,200.</summary>
[MemoryDiagnoser]
public class StageBenchmarks
{
    private readonly FontLibrary fonts = new();
    private string sheet = "";
    private Song song = null!;

    [Params(120, 1200)]
    public int Bars { get; set; }

    [GlobalSetup]
    public void WriteSheet()
    {
        sheet = GeneratedSong.Sheet(Bars);
        song = Stages.Song(sheet);
    }

    [Benchmark]
    public object TextToTree() => Stages.TextToTree(sheet);

    [Benchmark]
    public object TextToSong() => Stages.TextToSong(sheet);

    [Benchmark]
    public object TextToReading() => Stages.TextToReading(sheet);

    [Benchmark]
    public object SongToReading() => Stages.SongToReading(song);

    [Benchmark]
    public object TextToPictures() => Stages.TextToPictures(sheet, fonts);

    [Benchmark]
    public object TextToKit() => Stages.TextToKit(sheet);
}
