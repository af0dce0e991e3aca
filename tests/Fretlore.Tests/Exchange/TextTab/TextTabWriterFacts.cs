using Fretlore.Exchange.TextTab;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Exchange.TextTab;

/// <summary>Plain-text tab as it is written; its signs are common practice.</summary>
public sealed class TextTabWriterFacts
{
    [Fact]
    public void ASong_HasItsHeaderOnce_AndForEachStringALine_WithValuesAbove()
    {
        var text = Write("(mf) @6 E pm{ 0 0 } 3,5 @5 Q 7+v S 5;7 4,5 | @1 H 3 12*").Text;
        Assert.StartsWith(
            """
            Title: Test Piece
            Metre: 4/4
            Tempo: Q = 120

            Part: Guitar
            Tuning: E2 A2 D3 G3 B3 E4 (low to high)

            [All]

               (mf)
               PM--|
               E   E   E   E   Q       S S S S   H       H
            e|---------------------------------|-3------<12>-----||
            B|---------------------------------|-----------------||
            G|---------------------------------|-----------------||
            D|---------------------------------|-----------------||
            A|-----------------7b9~----5/7-4h5-|-----------------||
            E|-0---0---3h--5-------------------|-----------------||

            Signs:

            """,
            text,
            StringComparison.Ordinal);
        Assert.Contains("\n  b          bent to the pitch of\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("tapped", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Q 5 7 H 9", "-5---7---9")]
    [InlineData("Q 5,7,5;9", "-5h--7p--5/--9-")]
    [InlineData("Q 5; 9 9; 5", "-5S--9---9S--5-")]
    [InlineData("Q 7+ 7+h 7+q 7+wh", "-7b9-----7b8-----7b(1/4)-7b10-")]
    [InlineData("Q 7+- +7 +7- 7+h+", "-7b9r--7pb9--7pb9r-7b8b9-")]
    [InlineData("Q 7v 7vv 7+v 7v+", "-7~---7~~--7b9~-7~b9-")]
    [InlineData("Q lo;7 7;lo hi;7 7;hi", "-/7---7\\-\\7---7/-")]
    [InlineData("Q 7;hi 9 7;lo 9", "-7//-9---7\\--9-")]
    [InlineData("Q 12* 3*15 5*p t12", "-<12>----3<15>-[5]----t12-")]
    [InlineData("Q x x5 5? x?", "-x-----x(5)-(5)---(x)-")]
    [InlineData("Q g5,7 H. 7", "-g5h7---7-")]
    [InlineData("H 7 =", "-7-------=-")]
    public void ATechnique_HasTheSignOfTheTrade(string music, string signs) => Assert.Contains("E|" + signs, Write("@6 " + music).Text, StringComparison.Ordinal);

    [Theory]
    [InlineData("@6 E:3 5 7 9 Q. 5 E 3 Q 3", "E:3 E:3 E:3 Q.")]
    [InlineData("@6 E du{ 5 5 } Q d3 H 3", "d u d\n")]
    [InlineData("by pima{ @4 Q 2@4 0@3 0@2 0@1 }", "p   i   m   a\n")]
    [InlineData("@6 Q roll[0 2 2 1 0 0] 5! 5' 5", "roll    .\n")]
    [InlineData("(f) \"Slower\" (Q = 60) @6 W 5", "\"Slower\"")]
    [InlineData("(chord Am9) @6 W 5", "Am9\n")]
    [InlineData("@6 Q let{ 5 5 } trem{ 5 5 }", "ring|   trem|")]
    [InlineData("upbeat{ @6 Q 5 } W 3", "(upbeat)")]
    public void WhatStandsAboveTheNotes_IsWrittenAboveTheStrings(string music, string above) => Assert.Contains(above, Write(music).Text, StringComparison.Ordinal);

    [Fact]
    public void RepeatsAndEndings_StandAtTheirBars()
    {
        var text = Write("times 3{ @1 W 3 | on 1,3{ W 5 | } on 2{ W 7 | } } W 8").Text;
        Assert.Contains("                   1,3.------------|  2.--------------|\n", text, StringComparison.Ordinal);
        Assert.Contains("e|:-3", text, StringComparison.Ordinal);
        Assert.Contains(":|-7", text, StringComparison.Ordinal);
    }

    [Fact]
    public void BarsOfRest_AreOneBarThatSaysHowMany()
    {
        var text = Write("@1 W 3 | rest 6 | W 5").Text;
        Assert.Contains("rest 6", text, StringComparison.Ordinal);
        Assert.Contains("|----------|", text, StringComparison.Ordinal);
    }

    [Fact]
    public void LinesBesideEachOther_AreOne_AndTheReportSaysSo()
    {
        var tab = Write("drone{ @6 W 0 } @1 Q 3 R 5 7");
        Assert.Contains("e|-3-------5---7---|", tab.Text, StringComparison.Ordinal);
        Assert.Contains("E|-0---------------|", tab.Text, StringComparison.Ordinal);
        Assert.Equal("bar 1 of Guitar: Lines played beside each other are written as one, without how long each note is held.", Assert.Single(tab.Remarks).ToString());
    }

    [Theory]
    [InlineData(40)]
    [InlineData(80)]
    [InlineData(120)]
    public void NoLine_IsWiderThanAsked_AndTheLinesOfASystemEndTogether(int width) => SheetGen.Valid(200, 100, song =>
    {
        // Titles and tunings are as long as they are.
        var lines = Write(song, width).Text.Split('\n').SkipWhile(l => !l.StartsWith('[')).Where(l => !l.StartsWith("Tuning", StringComparison.Ordinal)).ToList();
        Assert.Equal("", string.Join('\n', lines.Where(l => l.Length > width)));
        var strings = song.Parts[0].Neck.StringCount;
        for (var i = 0; i < lines.Count; i++)
        {
            if (!IsString(lines[i]) || (i > 0 && IsString(lines[i - 1]))) continue;
            var system = lines.Skip(i).TakeWhile(IsString).ToList();
            Assert.Equal(strings, system.Count);
            Assert.Single(system.Select(l => l.Length).Distinct());
        }
    });

    [Fact]
    public void ALongNoteAmongShortOnes_FitsTheNarrowestTab() =>
        Assert.DoesNotContain(Write(Fretlore.Tests.Songs.Sheets.Line("(meter 5/4) @1 S 12 12 12 12 W 12 |"), TabStyle.Narrowest).Text.Split('\n'), l => l.Length > TabStyle.Narrowest);

    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void ADemoSong_FitsItsWidth(string name) => Assert.DoesNotContain(Write(DemoSongs.Load(name), 80).Text.Split('\n'), l => l.Length > 80);

    private static bool IsString(string line) => line.Length > 2 && char.IsAsciiLetter(line[0]) && (line[1] is '|' or ' ' or '#' or 'b') && line.Contains('-', StringComparison.Ordinal) && !line.StartsWith("Signs", StringComparison.Ordinal);

    private static WrittenTab Write(string music) => Write(Fretlore.Tests.Songs.Sheets.Line(music + " |"), 80);

    private static WrittenTab Write(Song song, int width) => TextTabWriter.Write(song, SongReader.Read(song), new TabStyle(width));
}
