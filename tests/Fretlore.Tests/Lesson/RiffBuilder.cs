using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Tests.Lesson;

/// <summary>Makes riffs note by note, as a hand would play them, for tests of what is said about them.</summary>
internal sealed class RiffBuilder
{
    private readonly string name;
    private readonly Neck neck;
    private readonly List<Bar> bars = [];
    private readonly List<PartBar> content = [];
    private readonly List<Strand> strands = [];
    private readonly Dictionary<StringNumber, Fret> last = [];
    private List<Event> events = [];
    private StrandKind kind = StrandKind.Main;
    private Beats time;
    private StringNumber[] place = [];
    private NoteValue[] cell = [new(ValueBase.Quarter)];
    private Tuplet? tuplet;
    private int cellAt;

    public RiffBuilder(string name = "test", string tuning = "E2 A2 D3 G3 B3 E4")
    {
        Assert.True(Tuning.TryParse(tuning, out var parsed));
        (this.name, neck) = (name, new Neck(parsed));
    }

    public int StringCount => neck.StringCount;

    public Meter Meter { get; init; } = Meter.FourFour;

    public string? VariationOf { get; init; }

    public RiffBuilder On(params int[] strings)
    {
        place = [.. strings.OrderDescending().Select(s => new StringNumber(s))];
        return this;
    }

    /// <summary>Values that cycle: W H Q E S Y, a dot dots one.</summary>
    public RiffBuilder In(string values, Tuplet? group = null)
    {
        var read = new List<NoteValue>();
        foreach (var letter in values)
        {
            if (letter == '.') read[^1] = new NoteValue(read[^1].Base, 1);
            else read.Add(new NoteValue((ValueBase)(1 << "WHQESYZ".IndexOf(letter, StringComparison.Ordinal))));
        }
        (cell, tuplet, cellAt) = ([.. read], group, 0);
        return this;
    }

    /// <summary>Frets on the strings in force: <c>7</c>, <c>0m</c> muted, <c>h9</c> hammered or pulled, <c>s9</c> slid, <c>t9</c> tapped, <c>x</c> dead, <c>=</c> held, <c>R</c> rest.</summary>
    public RiffBuilder Play(string frets, Func<Note, Note>? change = null)
    {
        foreach (var word in frets.Split(' ', StringSplitOptions.RemoveEmptyEntries)) Add(word == "R" ? []
            : [.. place.Select(s => Read(word, s)).Select(n => change?.Invoke(n) ?? n)]);
        return this;
    }

    /// <summary>A shape low to high; null where not sounded.</summary>
    public RiffBuilder Shape(string? named, params int?[] lowToHigh)
    {
        Add([.. lowToHigh.Select((f, i) => (f, i)).Where(p => p.f is not null)
            .Select(p => At(new StringNumber(lowToHigh.Length - p.i), new Fret(p.f!.Value)))], named);
        return this;
    }

    /// <summary>Single strings of a held shape, ringing.</summary>
    public RiffBuilder Pick(string? named, int?[] lowToHigh, params int[] strings)
    {
        foreach (var s in strings) Add([At(new StringNumber(s),
            new Fret(lowToHigh[lowToHigh.Length - s] ?? 0)) with { LetsRing = true }], named);
        return this;
    }

    public RiffBuilder Event(params Note[] notes)
    {
        Add(notes);
        return this;
    }

    public RiffBuilder Change(Func<Event, Event> change)
    {
        events[^1] = change(events[^1]);
        return this;
    }

    public RiffBuilder Strand(StrandKind next, Beats from)
    {
        if (events.Count > 0) strands.Add(new Strand(kind, events.ToValueList()));
        (events, kind, time) = ([], next, from);
        return this;
    }

    public RiffBuilder Bar(Func<Bar, Bar>? change = null)
    {
        Strand(StrandKind.Main, Beats.Zero);
        content.Add(new PartBar(neck, strands.ToValueList()));
        strands.Clear();
        var bar = new Bar { Number = bars.Count + 1, Meter = Meter, Key = null, Length = Meter.Length };
        bars.Add(change?.Invoke(bar) ?? bar);
        cellAt = 0;
        return this;
    }

    public Riff Build() =>
        new() { Name = name, VariationOf = VariationOf, Neck = neck, Bars = bars.ToValueList(), Content = content.ToValueList() };

    public Note At(StringNumber number, Fret fret) => new() { String = number, Fret = fret, Sounding = neck.Sounding(number, fret) };

    private void Add(Note[] notes, string? shape = null)
    {
        var item = new Event { Start = time, Value = cell[cellAt], Tuplet = tuplet, Notes = notes.ToValueList(), Shape = shape };
        cellAt = (cellAt + 1) % cell.Length;
        time += item.Duration;
        events.Add(item);
        foreach (var note in notes) last[note.String] = note.Fret;
    }

    private Note Read(string word, StringNumber number)
    {
        var muted = word.EndsWith('m');
        var digits = new string([.. word.Where(char.IsAsciiDigit)]);
        var before = last.GetValueOrDefault(number);
        var fret = word[0] == '=' ? before : digits.Length == 0 ? Fret.Open
            : new Fret(int.Parse(digits, System.Globalization.CultureInfo.InvariantCulture));
        return At(number, fret) with
        {
            IsPalmMuted = muted,
            IsDead = word[0] == 'x',
            Attack = word[0] switch
            {
                'h' => fret.Number > before.Number ? Attack.HammerOn : Attack.PullOff,
                's' => Attack.Glide,
                't' => Attack.Tap,
                '=' => Attack.Held,
                _ => Attack.Picked,
            },
        };
    }
}
