using CsCheck;
using Fretlore.Binding;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Tests.Songs;
using Fretlore.Tests.Syntax;

namespace Fretlore.Tests.Binding;

/// <summary>What holds for any sheet, valid or broken.</summary>
public class BindingProperties
{
    private static readonly Gen<string> Bar = Gen.OneOf(
        "@6 W 5 |", "@5 H 5 7 |", "@6 Q 0 1 = 3 |", "@2 E:3 5,7,8 8,7,5 Q 5 R |", "@654 ESS pm{ 0 0 0 0 0 0 0 0 0 0 0 0 } |", "@1 S:5/4 1 2 3 4 5 Q 5;7 H 15+v |",
        "drone{ @6 W 0 } @4 Q. 7 E 9 Q [7] 5 |", "@6 Q = 0 0 0 |", "@3 H. g5,7 Q 7 |", "rest |", "rest 2 |", "@1 Q 5 bass{ @6 Q. 0 E 1 } 5 5 5 |", "again |", "@2 W = |",
        "upbeat{ @1 E 5 7 } |", "(meter 3/4) @1 H. 5 | (meter 4/4)", "(Q = 90) @1 W 5 |", "@1 H 5 (Q = 70) H 7 |", "pick [. 3 2 0 1 0]{ E 5 3 2 1 5 3 2 1 } |");

    private static readonly Gen<string> Music = Gen.Recursive<string>((depth, inner) => depth > 2
        ? Bar
        : Gen.OneOf(
            Bar,
            Bar.Array[1, 3].Select(bars => string.Join(' ', bars)),
            Gen.Select(Gen.Int[1, 3], inner).Select((n, music) => $"times {n}{{ {music} }}"),
            Gen.Select(inner, inner, inner).Select((body, first, second) => $"times 2{{ {body} on 1{{ {first} }} on 2{{ {second} }} }}"),
            Gen.Select(inner, inner, inner).Select((body, first, second) => $"times 3{{ {body} on 1,3{{ {first} }} on 2{{ {second} }} }}"),
            Gen.Select(Gen.OneOf("low", "high", "pair"), Gen.Int[1, 3]).Select((name, n) => $"{name} times {n}"),
            Gen.Select(inner, inner).Select((a, b) => a + " " + b)));

    private static readonly Gen<string> AnySheet = Gen.Select(Bar.Array[1, 3], Bar.Array[1, 3], Music, Music, Music).Select((low, high, one, two, three) =>
        "title Any\ntempo Q = 100\ntuning E2 A2 D3 G3 B3 E4\npart one\npart two\n"
        + $"riff low\n  {string.Join(' ', low)}\nriff high\n  {string.Join(' ', high)}\nriff pair\n  low times 2, high\n"
        + $"section A\n  one {one}\n  two {two}\nsection B\n  one {three}\n  two {three}\n");

    [Fact]
    public void Repeats_SoundTheSameWrittenOut() => AnySheet.Sample(text =>
    {
        var parsed = Sheet.Parse(text);
        var (folded, unrolled) = (SongBinder.Bind(parsed), SongBinder.Bind(parsed, writesRepeats: false));
        Assert.Equal(folded.Diagnostics, unrolled.Diagnostics);
        if (folded.Song is null) return;
        Assert.Equal(Performed(unrolled.Song!), Performed(folded.Song));
    });

    [Fact]
    public void MainStrand_FillsEachBarExactly() => AnySheet.Sample(text =>
    {
        var bound = Sheets.Read(text);
        if (bound.HasErrors) return;
        var song = bound.Song!;
        Assert.All(song.Parts, part => Assert.All(part.Bars.Select((b, i) => (Content: b, Bar: song.Bars[i])), b => IsFull(b.Content, b.Bar)));
        Assert.All(song.Riffs, riff => Assert.All(riff.Content.Select((b, i) => (Content: b, Bar: riff.Bars[i])), b => IsFull(b.Content, b.Bar)));
    });

    [Fact]
    public void NoteIds_AreDense_WithASpanEach() => AnySheet.Sample(text =>
    {
        var bound = Sheets.Read(text);
        if (bound.Song is not { } song) return;
        var ids = song.Parts.SelectMany(p => p.Bars).Concat(song.Riffs.SelectMany(r => r.Content)).SelectMany(b => b.Notes).Select(n => n.Id.Index);
        Assert.Equal(Enumerable.Range(0, song.NoteCount), ids);
        Assert.Equal(song.NoteCount, bound.Spans.Length);
        Assert.All(bound.Spans, s => Assert.InRange(s.End, 1, text.Length));
    });

    [Fact]
    public void ManySheets_AreValid()
    {
        // The properties above say little if the generator makes only broken sheets.
        var valid = 0;
        AnySheet.Sample(text => { if (!Sheets.Read(text).HasErrors) Interlocked.Increment(ref valid); }, iter: 600, threads: 1);
        Assert.InRange(valid, 20, 600);
    }

    [Fact]
    public void AnyMutatedSheet_IsBoundWithoutFailing() => Gen.OneOf(ParserProperties.MutatedSheet, Mutated(AnySheet)).Sample(text =>
    {
        var bound = Sheets.Read(text);
        Assert.All(bound.Diagnostics, d => Assert.InRange(d.Span.End, d.Span.Start, text.Length));
        Assert.Equal(bound.Diagnostics.OrderBy(d => d.Span.Start).Select(d => d.Span.Start), bound.Diagnostics.Select(d => d.Span.Start));
        if (bound.Song is not null) _ = PlayOrder.Of(bound.Song.Bars);
    });

    private static Gen<string> Mutated(Gen<string> sheets) => Gen.Select(
        sheets, Gen.Select(Gen.Int[0, 1000], Gen.Int[0, 6], Gen.OneOf("", "9", "=", "@7", "|", "}", "low ", ",", ";", "t", "*", "+", "E:31 ", "g", "rest ", "#x ", "12"))
            .Array[1, 4]).Select((text, edits) =>
    {
        foreach (var (at, length, insert) in edits)
        {
            var start = at % (text.Length + 1);
            text = text[..start] + insert + text[Math.Min(text.Length, start + length)..];
        }
        return text;
    });

    private static void IsFull(PartBar content, Bar bar)
    {
        if (content.IsRest) return;
        Assert.Equal(bar.Length, content.Strands[0].Events.Aggregate(Beats.Zero, (sum, e) => sum + e.Duration));
        Assert.All(content.Strands, s => Assert.True(s.End <= bar.Length));
    }

    /// <summary>What a listener hears bar by bar: metre, tempo, and every part's music without ids.</summary>
    private static IEnumerable<string> Performed(Song song)
    {
        var tempo = Tempo.Default;
        foreach (var played in PlayOrder.Of(song.Bars))
        {
            var bar = song.Bars[played.Bar];
            var marks = string.Join(' ', bar.Tempos.Where(t => !t.At.IsZero));
            if (bar.Tempos.Count > 0 && bar.Tempos[0].At.IsZero) tempo = bar.Tempos[0].Tempo;
            var parts = song.Parts.Select(p => string.Join('/', p.Bars[played.Bar].Strands.Select(s => $"{s.Kind} {string.Join(' ', s.Events.Select(Heard))}")));
            yield return $"{played.Start} {bar.Meter} {bar.Length} {tempo} {marks} {string.Join(" // ", parts)}";
            if (bar.Tempos.Count > 0) tempo = bar.Tempos[^1].Tempo;
        }
    }

    private static string Heard(Event e) => (e with
    {
        Notes = e.Notes.Select(n => n with { Id = default }).ToValueList(),
        Graces = e.Graces.Select(n => n with { Id = default }).ToValueList(),
    }).ToString();
}
