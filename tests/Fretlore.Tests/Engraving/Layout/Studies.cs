using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;
using static Fretlore.Tests.Songs.SongBuilder;

namespace Fretlore.Tests.Engraving.Layout;

/// <summary>Small songs, invented for these tests, that use the signs pages must show.</summary>
internal static class Studies
{
    public static Func<Neck, Event> E(int @string, int fret) => Play(ValueBase.Eighth, (@string, fret));

    public static Func<Neck, Event> S(int @string, int fret) => Play(ValueBase.Sixteenth, (@string, fret));

    public static Func<Neck, Event> Q(int @string, int fret) => Play(ValueBase.Quarter, (@string, fret));

    public static Func<Neck, Event> H(int @string, int fret) => Play(ValueBase.Half, (@string, fret));

    public static Func<Neck, Event> Note(Func<Neck, Event> play, Func<Note, Note> change) => With(play, change);

    public static Func<Neck, Event> Change(Func<Neck, Event> play, Func<Event, Event> change) => neck => change(play(neck));

    public static Func<Neck, Event> Dotted(Func<Neck, Event> play) => Change(play, e => e with { Value = e.Value with { Dots = 1 } });

    public static Func<Neck, Event> Triplet(Func<Neck, Event> play, ValueBase unit = ValueBase.Eighth) =>
        Change(play, e => e with { Tuplet = new Tuplet(3, 2, unit) });

    public static Func<Neck, Event> Muted(Func<Neck, Event> play) => With(play, n => n with { IsPalmMuted = true });

    public static Func<Neck, Event> By(Func<Neck, Event> play, Attack attack) => With(play, n => n with { Attack = attack });

    public static Func<Neck, Event> Grace(Func<Neck, Event> play, int @string, int fret) => neck => play(neck) is var e
        ? e with
        {
            Graces = [new Note { String = new(@string), Fret = new(fret), Sounding = neck.Sounding(new(@string), new(fret)) }],
            Notes = e.Notes.Select(n => n with { Attack = Attack.HammerOn }).ToValueList(),
        }
        : throw new InvalidOperationException();

    /// <summary>Numbers all notes of a song again, grace notes and second strands included.</summary>
    public static Song Renumbered(this Song song)
    {
        var next = 0;
        Note Numbered(Note note) => note with { Id = new NoteId(next++) };
        var parts = song.Parts.Select(part => part with
        {
            Bars = part.Bars.Select(bar => bar with
            {
                Strands = bar.Strands.Select(strand => strand with
                {
                    Events = strand.Events.Select(e => e with
                    {
                        Graces = e.Graces.Select(Numbered).ToValueList(),
                        Notes = e.Notes.Select(Numbered).ToValueList(),
                    }).ToValueList(),
                }).ToValueList(),
            }).ToValueList(),
        }).ToValueList();
        return song with { Parts = parts, NoteCount = next };
    }

    public static Song WithBar(this Song song, int index, Func<Bar, Bar> change) =>
        song with { Bars = song.Bars.Select((b, i) => i == index ? change(b) : b).ToValueList() };

    public static Song WithPartBar(this Song song, int part, int index, Func<PartBar, PartBar> change) => song with
    {
        Parts = song.Parts.Select((p, k) => k != part ? p : p with { Bars = p.Bars.Select((b, i) => i == index ? change(b) : b).ToValueList() }).ToValueList(),
    };

    /// <summary>A strand whose events follow each other from the bar's start.</summary>
    public static Strand StrandOf(StrandKind kind, Neck neck, params Func<Neck, Event>[] events)
    {
        var at = Beats.Zero;
        var placed = new List<Event>();
        foreach (var make in events)
        {
            placed.Add(make(neck) with { Start = at });
            at = placed[^1].End;
        }
        return new Strand(kind, placed.ToValueList());
    }

    /// <summary>A reading that only spells, by the key of each bar: notes of the key as they are in it, others as sharps, or flats in flat keys.</summary>
    public static SongReading SpelledByKey(Song song, params (int Bar, Beats At, string Symbol)[] chords)
    {
        var spellings = new Pitch[song.NoteCount];
        foreach (var part in song.Parts)
        {
            for (var b = 0; b < part.Bars.Count; b++)
            {
                var key = song.Bars[b].Key ?? new Key(new NoteName(Step.C), Mode.Ionian);
                foreach (var note in part.Bars[b].Notes) spellings[note.Id.Index] = Spell(note.Sounding, key);
            }
        }
        var moments = chords.Select(c => new ChordMoment(c.Bar, c.At,
            [new ChordReading(c.Symbol, default, "", default, [], "as given", 0)], c.Symbol)).ToImmutableArray();
        var parts = song.Parts.Select((_, i) => new PartReading(i == 0 ? moments : [], [])).ToImmutableArray();
        return new SongReading([.. spellings], [.. new Interval[song.NoteCount]], parts, []);
    }

    private static Pitch Spell(Height height, Key key)
    {
        foreach (var name in key.Notes)
        {
            if (name.PitchClass == height.PitchClass) return height.Spell(name);
        }
        var wanted = key.Signature < 0 ? -1 : 1;
        foreach (var step in Enum.GetValues<Step>())
        {
            foreach (var alteration in new[] { 0, wanted })
            {
                if (new NoteName(step, alteration).PitchClass == height.PitchClass) return height.Spell(new NoteName(step, alteration));
            }
        }
        throw new InvalidOperationException();
    }
}
