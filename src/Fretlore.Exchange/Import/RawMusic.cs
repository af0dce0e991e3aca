using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>A note as a file has it: a pitch, and a string and fret where it says them.</summary>
internal sealed class RawNote
{
    /// <summary>What sounds, as a MIDI number.</summary>
    public required int Midi { get; set; }

    public int? String { get; set; }

    public int? Fret { get; set; }

    /// <summary>What is played with it; string, fret and pitch are not filled in.</summary>
    public Note Marks { get; set; } = new() { String = new StringNumber(1), Fret = Guitar.Fret.Open, Sounding = default };

    /// <summary>True when the next note of its pitch goes on from it.</summary>
    public bool StartsTie { get; set; }

    /// <summary>Bends in cents, each from where the one before ended; a first one before the attack is told apart.</summary>
    public List<(int Cents, bool Before)> Bends { get; } = [];
}

/// <summary>Notes that start together in one voice, or a rest.</summary>
internal sealed class RawEvent
{
    public required Beats Start { get; set; }

    public required Beats Duration { get; set; }

    /// <summary>The value it is written with, when that gives its duration.</summary>
    public NoteValue? Value { get; set; }

    public Tuplet? Tuplet { get; set; }

    public required int Voice { get; init; }

    public int Staff { get; init; } = 1;

    public List<RawNote> Notes { get; } = [];

    public List<RawNote> Graces { get; } = [];

    /// <summary>Its strokes, spans and words; values and notes are not filled in.</summary>
    public Event Marks { get; set; } = new() { Start = Beats.Zero, Value = default };

    public Beats End => Start + Duration;
}

/// <summary>One part's music bar by bar.</summary>
internal sealed class RawPart
{
    public required string Title { get; init; }

    public string? Sound { get; set; }

    /// <summary>The tuning the file states, or null.</summary>
    public Tuning? Tuning { get; set; }

    /// <summary>True when the file has something else than notes with pitches here, such as drums.</summary>
    public bool HasUnpitched { get; init; }

    /// <summary>For each bar its events, in any order.</summary>
    public List<List<RawEvent>> Bars { get; } = [];

    /// <summary>Where a capo is put or moved, by bar.</summary>
    public SortedDictionary<int, Capo> Capos { get; } = [];

    /// <summary>The shapes drawn beside the music, in order.</summary>
    public List<StatedShape> Shapes { get; } = [];

    /// <summary>Bars under a sign for playing the last bar, or the last two, again; and how many.</summary>
    public SortedDictionary<int, int> Again { get; } = [];

    public IEnumerable<RawEvent> Events => Bars.SelectMany(b => b);
}

/// <summary>A file's music before strings are chosen and bars are made.</summary>
internal sealed class RawSong
{
    /// <summary>True for a file that Fretlore wrote.</summary>
    public bool IsOwn { get; init; }

    public SongInfo Info { get; set; } = new("Untitled");

    public List<Bar> Bars { get; } = [];

    public List<RawPart> Parts { get; } = [];

    public List<Section> Sections { get; } = [];
}
