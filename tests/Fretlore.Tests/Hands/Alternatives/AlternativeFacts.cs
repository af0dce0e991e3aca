using Fretlore.Hands.Alternatives;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Hands.Alternatives;

/// <summary>Other ways to play a riff.</summary>
public sealed class AlternativeFacts
{
    private static readonly PlayingHand Average = new(HandSize.Average);

    [Fact]
    public void EveryAlternative_SoundsTheSame_AndGainsSomething()
    {
        var count = 0;
        foreach (var riff in Demos().SelectMany(demo => demo.Song.Riffs))
        {
            var found = AlternativeFinder.Find(riff, Average);
            var notes = riff.Content.SelectMany(bar => bar.Notes).ToDictionary(n => n.Id);
            Assert.InRange(found.Length, 0, AlternativeFinder.Most);
            foreach (var way in found)
            {
                count++;
                Assert.NotEmpty(way.Gains);
                Assert.Equal(notes.Keys.Order(Comparer<NoteId>.Create((a, b) => a.Index - b.Index)), way.Notes.Select(n => n.Id).Order(Comparer<NoteId>.Create((a, b) => a.Index - b.Index)));
                Assert.All(way.Notes, note =>
                {
                    if (notes[note.Id] is { Harmonic: null, IsDead: false } written) Assert.Equal(written.Sounding, riff.Neck.Sounding(note.String, note.Fret));
                });
                if (way.Kind == AlternativeKind.OtherFingers) Assert.All(way.Notes, note => Assert.Equal((notes[note.Id].String, notes[note.Id].Fret), (note.String, note.Fret)));
                else Assert.True(2 * way.Notes.Count(note => notes[note.Id].String != note.String) >= way.Notes.Length);
            }
            Assert.Equal(found.Length, found.Select(w => string.Join(' ', w.Notes)).Distinct().Count());
        }
        Assert.True(count > 20, $"{count} alternatives for all demos.");
    }

    [Fact]
    public void ALineThatJumps_IsOfferedInOnePosition()
    {
        var riff = Sheets.Song("title T\ntuning E2 A2 D3 G3 B3 E4\ntempo Q = 160\nriff jump\n  E @2 5 12 5 12 7 13 7 13 |\nsection A\n  jump\n").Riffs[0];
        var best = AlternativeFinder.Find(riff, Average).First(way => way.Kind == AlternativeKind.OtherPlace);
        Assert.Contains("no shifting", best.Gains);
        Assert.True(best.Cost < best.CostAsWritten);
    }

    [Fact]
    public void WhatIsEasyAlready_NeedsNoOther()
    {
        var riff = Sheets.Song("title T\ntuning E2 A2 D3 G3 B3 E4\ntempo Q = 80\nriff easy\n  Q @4 0 2 0 2 |\nsection A\n  easy\n").Riffs[0];
        Assert.DoesNotContain(AlternativeFinder.Find(riff, Average), way => way.Kind == AlternativeKind.OtherFingers);
    }

    [Fact]
    public void APlanFromTheOneBefore_IsTheSameAsAnew()
    {
        var random = new Random(7);
        foreach (var (name, song) in Demos())
        {
            var before = HandPlanner.Plan(song, Average);
            for (var edit = 0; edit < 6; edit++)
            {
                var part = random.Next(song.Parts.Count);
                var bar = random.Next(song.Parts[part].Bars.Count);
                var edited = song with { Parts = song.Parts.Select((p, i) => i != part ? p : p with { Bars = p.Bars.Select((b, k) => k != bar ? b : Edited(b, random)).ToValueList() }).ToValueList() };
                var (anew, after) = (HandPlanner.Plan(edited, Average), HandPlanner.Plan(edited, Average, before));
                Assert.Equal(anew.Notes, after.Notes);
                for (var p = 0; p < song.Parts.Count; p++)
                {
                    Assert.Equal(anew.Parts[p].Whole.Cost, after.Parts[p].Whole.Cost, 1e-6);
                    Assert.Equal(anew.Parts[p].Problems, after.Parts[p].Problems);
                }
                before = edit % 2 == 0 ? after : before;
            }
            Assert.True(song.NoteCount > 0, name);
        }
    }

    [Fact]
    public void TheThumb_ComesOverTheNeck_OnlyWhereItMay()
    {
        // A bass note under a chord that leaves no finger for it.
        var song = Sheets.Line("W [2 . 4 3 2 5] |");
        Assert.DoesNotContain(Finger.Thumb, HandPlanner.Plan(song, Average).Notes.Select(n => n.Finger ?? Finger.Index));
        Assert.Contains(Finger.Thumb, HandPlanner.Plan(song, new PlayingHand(HandSize.Average, UsesThumb: true)).Notes.Select(n => n.Finger ?? Finger.Index));
    }

    private static PartBar Edited(PartBar bar, Random random) => bar with
    {
        Strands = bar.Strands.Select(s => s with
        {
            Events = s.Events.Select(e => random.Next(3) > 0 ? e : e with { Notes = e.Notes.Select(n => n with { Fret = new(n.Fret.Number == 0 ? 0 : Math.Max(1, n.Fret.Number + random.Next(-2, 3))) }).ToValueList() }).ToValueList(),
        }).ToValueList(),
    };

    private static IEnumerable<(string Name, Song Song)> Demos() => DemoSongs.Names.Select(row => (row.Data, DemoSongs.Load(row.Data)));
}
