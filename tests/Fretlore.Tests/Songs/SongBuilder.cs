using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Tests.Songs;

/// <summary>Makes small songs from records for tests that must not depend on the sheet language.</summary>
internal sealed class SongBuilder
{
    private readonly List<(string Name, Neck Neck, List<PartBar> Bars)> parts = [];
    private readonly List<Bar> bars = [];
    private int notes;

    public Meter Meter { get; init; } = Meter.FourFour;

    public Key? Key { get; init; }

    public Tempo Tempo { get; init; } = Tempo.Default;

    public SongBuilder Part(string name, string tuning = "E2 A2 D3 G3 B3 E4", Capo capo = default)
    {
        Assert.True(Tuning.TryParse(tuning, out var parsed));
        parts.Add((name, new Neck(parsed, capo), []));
        return this;
    }

    /// <summary>Adds a bar to the last part: events one after another.</summary>
    public SongBuilder Bar(params Func<Neck, Event>[] events) =>
        Strands(events.Length == 0 ? [] : [(StrandKind.Main, Beats.Zero, events)]);

    /// <summary>Adds a bar to the last part: several strands, each from a place in the bar on.</summary>
    public SongBuilder Strands(params (StrandKind Kind, Beats Start, Func<Neck, Event>[] Events)[] strands)
    {
        var (_, neck, content) = parts[^1];
        var made = new List<Strand>();
        foreach (var (kind, start, events) in strands)
        {
            var time = start;
            var placed = new List<Event>();
            foreach (var make in events)
            {
                var item = make(neck) with { Start = time };
                item = item with { Graces = Numbered(item.Graces), Notes = Numbered(item.Notes) };
                placed.Add(item);
                time = item.End;
            }
            made.Add(new Strand(kind, placed.ToValueList()));
        }
        content.Add(new PartBar(neck, made.ToValueList()));
        if (content.Count > bars.Count)
        {
            bars.Add(new Bar
            {
                Number = bars.Count + 1,
                Meter = Meter,
                Key = Key,
                Length = Meter.Length,
                Tempos = bars.Count == 0 ? [new TempoMark(Beats.Zero, Tempo)] : [],
            });
        }
        return this;
    }

    private ValueList<Note> Numbered(ValueList<Note> unnumbered) =>
        unnumbered.Select(n => n with { Id = new NoteId(notes++) }).ToValueList();

    public Song Build(string title = "Untitled study") => new()
    {
        Info = new SongInfo(title),
        Bars = bars.ToValueList(),
        Parts = parts.Select(p => new Part
        {
            Name = p.Name,
            Title = p.Name,
            Neck = p.Neck,
            Bars = p.Bars.Concat(Enumerable.Repeat(new PartBar(p.Neck, []), bars.Count - p.Bars.Count)).ToValueList(),
        }).ToValueList(),
        NoteCount = notes,
    };

    /// <summary>One event: places as (string, fret), low string first.</summary>
    public static Func<Neck, Event> Play(ValueBase value, params (int String, int Fret)[] places) => neck => new Event
    {
        Start = Beats.Zero,
        Value = new NoteValue(value),
        Notes = places.OrderByDescending(p => p.String).Select(p => new Note
        {
            String = new StringNumber(p.String),
            Fret = new Fret(p.Fret),
            Sounding = neck.Sounding(new StringNumber(p.String), new Fret(p.Fret)),
        }).ToValueList(),
    };

    public static Func<Neck, Event> Rest(ValueBase value) => _ => new Event { Start = Beats.Zero, Value = new NoteValue(value) };

    /// <summary>An event whose notes are changed, such as with a technique.</summary>
    public static Func<Neck, Event> With(Func<Neck, Event> play, Func<Note, Note> change) =>
        neck => play(neck) is var item ? item with { Notes = item.Notes.Select(change).ToValueList() } : throw new InvalidOperationException();
}
