using System.Reflection;
using System.Text.RegularExpressions;
using Fretlore.Binding;
using Fretlore.Binding.Problems;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Syntax;
using Fretlore.Tests.Songs;
using Fretlore.Tests.Syntax;

namespace Fretlore.Tests.Binding;

/// <summary>Every finding of the binder once, with the place it points to; and what holds for all of them.</summary>
public partial class DiagnosticFacts
{
    private const string Top = Sheets.Top;
    private const string Line = Sheets.Top + "section All\n  guitar ";
    private const string Riff = Sheets.Top + "riff furnace\n  ";
    private const string TwoParts = "title Two\ntempo Q = 100\ntuning E2 A2 D3 G3 B3 E4\npart one\npart two\n";
    private const string Phrase = Sheets.Top + "riff dive\n  @1 W 5 | 7 |\n";
    private const string Map = Sheets.Top + "roadmap descent\n  ";
    private const string Lesson = Sheets.Top + "lesson\n  ";

    private const string Taught = Sheets.Top
        + "riff main\n  @1 W 0 |\nroadmap descent\n  scale A dorian\nsection Verse 1\n  guitar main times 2\nlesson\n  step \"Main\" teach ";

    /// <summary>A finding's code and a sheet that shows it alone.</summary>
    public static TheoryData<string, string> Settings => new()
    {
        { "FL2001", "⟦⟧tempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\n" },
        { "FL2002", "⟦⟧title Song\ntempo Q = 90\n" },
        { "FL2002", "title Song\ntempo Q = 90\npart ⟦lead⟧\n" },
        { "FL2003", "⟦⟧title Song\ntuning E2 A2 D3 G3 B3 E4\n" },
        { "FL2004", Top + "⟦tempo⟧ Q = 90" },
        { "FL2005", Top + "⟦artist⟧\n" },
        { "FL2024", Top + "⟦language French⟧" },
        { "FL2024", Top + "⟦language fr_CA⟧" },
        { "FL2006", Top + "⟦meter 7/5⟧" },
        { "FL2006", Top + "⟦meter 7/8 2+2+2⟧" },
        { "FL2006", Line + "@1 ⟦(meter)⟧ W 5 |" },
        { "FL2007", "title Song\ntuning E2 A2 D3 G3 B3 E4\n⟦tempo 120⟧\n" },
        { "FL2007", Line + "@1 ⟦(Q = 5000)⟧ W 5 |" },
        { "FL2008", Top + "⟦key H dur⟧" },
        { "FL2009", Top + "⟦capo 30⟧" },
        { "FL2010", Top + "⟦feel funky⟧" },
        { "FL2011", "title Song\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\npart lead\n  tuning E2 A2 D3 G3 B3 ⟦E44⟧\n" },
        { "FL2012", "title Song\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\npart lead\n  ⟦tuning E2 A2 D3⟧\n" },
        { "FL2013", "title Song\ntempo Q = 90\n⟦tuning E4 B3 G3 D3 A2 E2⟧\n" },
        { "FL2014", Top + "⟦frets 240⟧" },
        { "FL2015", Top + "⟦scale-length 26.5⟧" },
        { "FL2016", Line + "@1 ⟦(metre 7/8)⟧ W 5 |" },
        { "FL2017", Line + "@1 ⟦(chord)⟧ W 5 |" },
        { "FL2018", Line + "@1 W 5 | ⟦(D.S. al finish)⟧" },
        { "FL2019", Top + "gauges 46w 36w 26w 17 ⟦fat⟧ 10" },
        { "FL2019", Top + "gauges 46w 36w 26w 17 ⟦131⟧ 10" },
        { "FL2020", Top + "⟦gauges 46w 36w 26w 17 13⟧" },
        { "FL2020", TwoParts + "part three\n  ⟦gauges 46w 36w⟧\n" },
        { "FL2009", Top + "⟦capo 0 on 5-3⟧" },
        { "FL2009", Top + "⟦capo 2 on⟧" },
        { "FL2021", Top + "⟦capo 2 on 531⟧" },
        { "FL2021", Top + "⟦capo 2 on low-high⟧" },
        { "FL2021", Line + "⟦(capo 2 on 5-0)⟧ @1 W 5 |" },
        { "FL2022", Line + "⟦(capo 2 on 8-5)⟧ @1 W 5 |" },
        { "FL2022", "title Song\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\n⟦capo 2 on 7-5⟧\n" },
        { "FL2022", "title Song\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\ncapo 2 on 5-3\npart ⟦bass⟧\n  tuning E1 A1 D2 G2\n" },
        { "FL2022", TwoParts + "part three\n  ⟦capo 3 on 9⟧\n" },
        { "FL2023", Line + "⟦(capo 2 on 6-1)⟧ @1 W 5 |" },
        { "FL2050", Line + "⟦furnace⟧" },
        { "FL2050", Top + "riff turn = ⟦furnace⟧ with bar 1: @1 W 0" },
        { "FL2050", Map + "may use ⟦furnace⟧" },
        { "FL2051", Line + "W ⟦#lift⟧ |".Replace("⟦#lift⟧", "#⟦lift⟧") },
        { "FL2052", Line + "roadmap ⟦descent⟧ 2 bars" },
        { "FL2053", Line + "rest\nsection Two like ⟦Al⟧" },
        { "FL2054", Top + "part ⟦guitar⟧" },
        { "FL2054", Riff + "@1 W 0 |\nriff ⟦furnace⟧\n  @1 W 0 |" },
        { "FL2054", Lesson + "budget 6:00\n⟦lesson⟧\n  budget 7:00" },
        { "FL2055", Line + "rest\nsection ⟦All⟧\n  guitar rest" },
    };

    public static TheoryData<string, string> TimeAndPlace => new()
    {
        { "FL2100", Line + "@1 ⟦Q 5 5 5 E 5⟧ |".Replace("⟦Q 5", "Q ⟦5") },
        { "FL2100", Riff + "@1 Q ⟦5 5 5⟧ | 5 5 5 5 |" },
        { "FL2101", Line + "@1 Q 5 5 5 5 | ⟦5 5 5 5 5⟧ |" },
        { "FL2102", Line + "⟦bass{ @6 W. 0 } @1 W 5⟧ |" },
        { "FL2103", Line + "@1 W 5 | ⟦|⟧ 5 |" },
        { "FL2104", Line + "⟦upbeat{ @1 E }⟧ | Q 5 5 5 5 |" },
        { "FL2105", Line + "upbeat{ @1 W ⟦5⟧ } | 5 |" },
        { "FL2106", Line + "upbeat{ @1 E:3 ⟦5⟧ } | W 5 |" },
        { "FL2107", Line + "@1 ⟦5⟧ |" },
        { "FL2107", Riff + "drone{ @6 ⟦0⟧ } @1 W 5 |" },
        { "FL2108", Line + "@1 ⟦E:1⟧ 5 Q 5 5 5 E 5 |" },
        { "FL2109", Line + "@1 E:7 5 E:11 5 E:13 5 E:17 5 E:19 ⟦5⟧ |" },
        { "FL2110", Line + "bass{ @6 W 0 } @1 H 5 ⟦bass⟧{ @5 H 0 } 5 |" },
        { "FL2150", Line + "W ⟦5⟧ |" },
        { "FL2151", Line + "⟦@7⟧ W 5@1 |" },
        { "FL2151", Line + "⟦@7-6⟧ W 5@1 |" },
        { "FL2152", Line + "@1 W ⟦25⟧ |" },
        { "FL2153", Line + "⟦@122⟧ W 5 |" },
        { "FL2154", Line + "drone{ @6 W 0 } @5 H 0 ⟦0@6⟧ |" },
        { "FL2154", Line + "drone{ @6 W 0 } @6 W ⟦5⟧ |" },
        { "FL2155", Line + "@65 W ⟦[5 7 7]⟧ |" },
        { "FL2156", TwoParts + "part three\n  tuning A1 E2 A2 D3 G3 B3 E4\nshape lift [0 0 0 0 0 0 0]\nsection All\n  one W ⟦#lift⟧ |" },
        { "FL2157", Top + "shape lift ⟦[7 7 9]⟧" },
        { "FL2158", Top + "shape lift ⟦[. . . . x .]⟧" },
        { "FL2159", Top + "shape lift [7 7 9 ⟦5v⟧ . .]" },
        { "FL2159", Top + "shape lift [7 7 9f3 ⟦0f1⟧ . .]" },
        { "FL2160", Line + "pick [. 3 2 0 1 0]{ H 5 ⟦6⟧ } |" },
        { "FL2161", TwoParts + "part four\n  tuning D3 G3 B3 E4\nriff furnace\n  @6 W 0 |\nsection All\n  one furnace\n  four ⟦furnace as fretted⟧" },
        { "FL2163", Line + "(capo 2 on 5-3) @4 W ⟦2⟧ |" },
        { "FL2163", Line + "(capo 2 on 5-3) @4 W 0⟦~1⟧ |" },
        { "FL2163", Riff + "@4 W 1 |\nsection All\n  guitar (capo 2 on 5-3) ⟦furnace as fretted⟧" },
        { "FL2164", Riff + "@4 W 12* |\nsection All\n  guitar (capo 2 on 5-3) ⟦furnace as fretted⟧" },
        { "FL2162", TwoParts + "part four\n  tuning D3 G3 B3 E4\nriff furnace\n  @6 W 0 |\nsection All\n  one furnace\n  four ⟦furnace as sounded⟧" },
    };

    public static TheoryData<string, string> Techniques => new()
    {
        { "FL2200", Line + "@1 H 8,⟦t5⟧ |" },
        { "FL2201", Line + "@1 H 8,⟦8⟧ |" },
        { "FL2202", Line + "@1 H 8,⟦0@2⟧ |" },
        { "FL2203", Line + "@1 W ,⟦0⟧ |" },
        { "FL2204", Line + "@1 W ;⟦5⟧ |" },
        { "FL2205", Line + "@1 H 5;⟦7@2⟧ |" },
        { "FL2206", Line + "@1 H 5;⟦5⟧ |" },
        { "FL2207", Line + "@1 H 5;⟦0⟧ |" },
        { "FL2208", Line + "@1 H 5;⟦t9⟧ |" },
        { "FL2209", Line + "@1 W ⟦t0⟧ |" },
        { "FL2210", Line + "@1 W lo⟦,⟧15 |" },
        { "FL2211", Line + "@1 H 5,⟦R⟧ |" },
        { "FL2211", Line + "@1 W 5⟦;⟧ |" },
        { "FL2212", Line + "@1 H 5,⟦=⟧ |" },
        { "FL2213", Line + "@1 W ⟦=⟧ |" },
        { "FL2213", Riff + "@1 W = |\nsection All\n  guitar furnace".Replace("W =", "W ⟦=⟧") },
        { "FL2214", Line + "@1 H 5 =⟦!⟧ |" },
        { "FL2215", Line + "@1 W 5 | g⟦7⟧" },
        { "FL2216", Line + "@1 W 5⟦~5⟧ |" },
        { "FL2216", Line + "@1 W x⟦~7⟧ |" },
        { "FL2217", Line + "@1 W 5⟦~40⟧ |" },
        { "FL2218", Line + "@1 W x⟦_⟧ |" },
        { "FL2219", Line + "@1 W ⟦rake[. . . . . 9]⟧ |" },
        { "FL2220", Line + "@1 W 5⟦-⟧ |" },
        { "FL2220", Line + "@1 H 5 =⟦-⟧ |" },
        { "FL2221", Line + "@1 W 5⟦+ww50c⟧ |" },
        { "FL2222", Line + "@1 W 0⟦+⟧ |" },
        { "FL2222", Line + "@1 H 0 =⟦+⟧ |" },
        { "FL2223", Line + "@1 W x5⟦+⟧ |" },
        { "FL2230", Line + "@1 W ⟦11*⟧ |" },
        { "FL2231", Line + "@1 W 3⟦*14⟧ |" },
        { "FL2232", Line + "@1 W x5⟦*⟧ |" },
        { "FL2240", Line + "@1 W 5⟦f7⟧ |" },
        { "FL2241", Line + "by ⟦pix⟧{ @1 W 5 } |" },
    };

    public static TheoryData<string, string> Form => new()
    {
        { "FL2250", Riff + "@1 W 0 | ⟦furnace⟧" },
        { "FL2250", Riff + "tail\nriff tail\n  ⟦furnace⟧" },
        { "FL2250", Top + "riff one-riff = two-riff with bar 1: @1 W 0\nriff two-riff = ⟦one-riff⟧ with bar 1: @1 W 0" },
        { "FL2252", TwoParts + "part three\n  tuning D2 A2 D3 G3 A3 D4\nriff furnace\n  @6 W 0 |\nsection All\n  one furnace\n  three ⟦furnace⟧" },
        { "FL2253", Riff + "@1 W 0 |\nriff turn = furnace ⟦with bar 2: @1 W 0⟧" },
        { "FL2254", Riff + "@1 W 0 |\nriff turn = furnace with bar 1: @1 W 0 | ⟦with last bar: @1 W 0⟧" },
        { "FL2255", Riff + "times 2{ @1 W 0 | 1 | } 2 |\nriff turn = furnace ⟦with bars 2-3: @1 W 0⟧" },
        { "FL2256", Line + "times ⟦0⟧{ @1 W 0 }" },
        { "FL2257", Line + "⟦times⟧ 2{ } rest" },
        { "FL2258", Line + "times 2{ @1 W 0 on 1{ 1 } on 2,⟦3⟧{ 2 } }" },
        { "FL2259", Line + "times 2{ @1 W 0 on 1-2{ 1 } on ⟦2⟧{ 2 } }" },
        { "FL2260", Line + "⟦times⟧ 2{ @1 W 0 on 1{ 1 } }" },
        { "FL2261", Line + "@1 W 0 | again ⟦3⟧" },
        { "FL2262", Line + "⟦again⟧" },
        { "FL2263", Line + "bass{ @6 H 0 ⟦|⟧ H 0 } @1 W 5 |" },
        { "FL2263", Line + "upbeat{ @1 Q 5 ⟦rest 2⟧ } rest" },
        { "FL2264", Line + "bass{ @6 H 0 ⟦top{ @1 H 0 }⟧ } @1 W 5 |" },
        { "FL2266", Line + "⟦pm⟧ on @6 W 5 |" },
        { "FL2267", Line + "⟦pm off⟧ @6 W 5 |" },
        { "FL2268", Line + "@1 H 5 ⟦(meter 3/4)⟧ 5 |" },
        { "FL2269", Riff + "⟦(capo 3)⟧ @1 W 5 |" },
        { "FL2270", Line + "@1 W 5 | ⟦\"slowly\"⟧" },
        { "FL2270", Line + "@1 W 5 | ⟦(key E minor)⟧" },
        { "FL2271", TwoParts + "riff seven\n  meter 7/8\n  @1 H.. 5 |\nsection All\n  one seven\n  two ⟦(meter 4/4)⟧ @1 H.. 5 |" },
        { "FL2271", TwoParts + "riff seven\n  meter 7/8\n  @1 H.. 5 |\nriff eight\n  @1 W 5 |\nsection All\n  one seven\n  two ⟦eight⟧" },
        { "FL2272", TwoParts + "section All\n  one (key E minor) rest\n  two ⟦(key E major)⟧ rest" },
        { "FL2273", TwoParts + "section All\n  one upbeat{ @1 Q 5 } rest\n  two upbeat{ @1 E ⟦5⟧ } rest" },
        { "FL2274", TwoParts + "section All\n  one rest 4\n  ⟦two⟧ rest 3" },
        { "FL2275", Top + "⟦section All⟧" },
        { "FL2276", TwoParts + "section All\n  one rest\n  ⟦one⟧ rest" },
        { "FL2277", Line + "rest\nsection Two like Three\nsection Three like ⟦Two⟧" },
        { "FL2279", Riff + "@1 W 5 ⟦(fine)⟧ |" },
        { "FL2280", Line + "⟦(D.C.)⟧ @1 W 5 |" },
        { "FL2281", Line + "@1 W 5 | 7 | ⟦(D.S.)⟧" },
        { "FL2281", Line + "@1 W 5 | 7 | ⟦(D.C. al fine)⟧" },
        { "FL2281", Line + "(segno) @1 W 5 (to coda) | ⟦(D.S. al coda)⟧ 7 |".Replace("| ⟦(D.S. al coda)⟧ 7 |", "| 7 | ⟦(D.S. al coda)⟧") },
        { "FL2282", Line + "(segno) @1 W 5 | ⟦(segno)⟧ 7 | (D.S.)" },
        { "FL2282", Line + "@1 W 5 | (D.C.) 7 | ⟦(D.C.)⟧" },
        { "FL2283", Line + "⟦(coda)⟧ @1 W 5 |" },
        { "FL2278", Line + "⟦rest 9999⟧ rest 9999".Replace("⟦rest 9999⟧ rest 9999", "rest 9999 rest 9999 ⟦rest 9999⟧") },
    };

    public static TheoryData<string, string> RoadMapsAndLessons => new()
    {
        { "FL2300", Map + "⟦scale⟧" },
        { "FL2301", Map + "scale A ⟦dorean⟧" },
        { "FL2302", Map + "⟦strings 1-9⟧" },
        { "FL2303", Map + "⟦from fret 14⟧" },
        { "FL2304", Map + "⟦density fast⟧" },
        { "FL2305", Map + "⟦aim high⟧" },
        { "FL2306", Map + "⟦may use⟧" },
        { "FL2307", Map + "avoid F, ⟦H⟧" },
        { "FL2308", Map + "aim A ⟦by magic⟧ in bar 4" },
        { "FL2309", Map + "aim A ⟦by a half-step bend of G⟧ in bar 4" },
        { "FL2310", Map + "scale A dorian ⟦in bars 4-2⟧" },
        { "FL2311", Phrase + "roadmap descent\n  ⟦fixed dive⟧" },
        { "FL2312", Map + "roles root, ⟦tenth⟧" },
        { "FL2313", Map + "rhythm ESS, ⟦Q:1⟧" },
        { "FL2314", Map + "⟦contour sideways⟧" },
        { "FL2315", Map + "⟦end softly⟧" },
        { "FL2316", Map + "aim A in bar 9\nsection All\n  guitar ⟦roadmap descent 8 bars⟧" },
        { "FL2317", Phrase + "roadmap descent\n  ⟦fixed dive in last bar⟧\nsection All\n  guitar roadmap descent 8 bars" },
        { "FL2318", Phrase + "roadmap descent\n  fixed dive in bar 1\n  ⟦fixed dive in bar 2⟧\nsection All\n  guitar roadmap descent 8 bars" },
        { "FL2319", Map + "contour rising\n  ⟦contour⟧ falling" },
        { "FL2350", Top + "riff dive\n  tuning D2 A2 D3 G3 B3 E4\n  @1 W 5 |\nroadmap descent\n  ⟦fixed dive in bar 1⟧\nsection All\n  guitar roadmap descent 8 bars" },
        { "FL2320", Lesson + "⟦budget long⟧" },
        { "FL2321", Lesson + "⟦step Main teach furnace⟧" },
        { "FL2322", Lesson + "⟦step \"Main\"⟧" },
        { "FL2323", Lesson + "step \"Main\" teach ⟦furnace⟧ say \"Now.\"" },
        { "FL2324", Lesson + "step \"Main\" say \"Now.\" at ⟦600%⟧" },
        { "FL2325", Lesson + "step \"Main\" ⟦say⟧ now say \"Now.\"" },
        { "FL2326", Lesson + "step \"Main\" say \"Now.\" ⟦teech⟧ furnace" },
        { "FL2326", Lesson + "step \"Main\" say \"Now.\" keep ⟦it⟧" },
        { "FL2327", Lesson + "⟦speaking-rate fast⟧" },
        { "FL2328", Lesson + "⟦excerpt⟧" },
        { "FL2329", Taught + "main ⟦bars⟧ 3-2" },
        { "FL2330", Taught + "⟦main bars 2-3⟧" },
        { "FL2330", Taught + "⟦Verse 1 bar 3⟧" },
        { "FL2330", Taught + "main\n  excerpt ⟦bars 1-9⟧" },
        { "FL2331", Taught + "Verse 1 of ⟦guitarr⟧" },
        { "FL2332", Taught + "⟦main of guitar⟧" },
        { "FL2333", Taught + "⟦descent bar 1⟧" },
        { "FL2334", Lesson + "step \"Main\" say \"Now.\" ⟦as⟧ opera" },
    };

    private const string Recorded = Top + "section All\n  guitar times 2{ @1 W 5 | 7 | }\nrecording ";

    public static TheoryData<string, string> Recordings => new()
    {
        { "FL2340", Recorded + "\"a.wav\"\n  ⟦bar 1⟧" },
        { "FL2340", Recorded + "\"a.wav\"\n  ⟦bar 1 at noon⟧" },
        { "FL2340", Recorded + "\"a.wav\"\n  ⟦bar 1 at 0:60⟧" },
        { "FL2340", Recorded + "\"a.wav\"\n  ⟦bar 1 time 0 at 0:01⟧" },
        { "FL2341", Recorded + "\"a.wav\"\n  ⟦bar 3 at 0:01⟧" },
        { "FL2341", Recorded + "\"a.wav\"\n  ⟦bar 2 time 3 at 0:01⟧" },
        { "FL2342", Recorded + "\"a.wav\"\n  bar 1 time 2 at 0:01\n  ⟦bar 2 at 0:02⟧" },
        { "FL2343", Recorded + "\"a.wav\"\n  bar 1 at 0:02\n  ⟦bar 2 at 0:02⟧" },
        { "FL2344", Recorded + "⟦\"a.wav\"⟧" },
        { "FL2054", Recorded + "\"a.wav\"\n  bar 1 at 0:02\nrecording ⟦\"a.wav\"⟧\n  bar 1 at 0:03" },
    };

    private static IEnumerable<string> Shown =>
        new[] { Settings, TimeAndPlace, Techniques, Form, RoadMapsAndLessons, Recordings }.SelectMany(t => t).Select(row => row.Data.Item1);

    /// <summary>Too deep riffs, and groups deeper than the parser lets through, have tests of their own.</summary>
    private static readonly string[] ShownElsewhere = ["FL2251", "FL2265"];

    [Theory]
    [MemberData(nameof(Settings))]
    [MemberData(nameof(TimeAndPlace))]
    [MemberData(nameof(Techniques))]
    [MemberData(nameof(Form))]
    [MemberData(nameof(RoadMapsAndLessons))]
    [MemberData(nameof(Recordings))]
    public void Finding_PointsAtWhatIsWrong(string code, string marked)
    {
        var (text, span) = MarkedText.From(marked);
        var bound = Sheets.Read(text);
        var wrong = bound.Diagnostics.Where(d => d.Code == code && d.Span == span);
        Assert.True(wrong.Count() == 1, $"{code} expected at {span}, found:\n{Sheets.Describe(bound, text)}");
    }

    [Fact]
    public void RiffsThatNestTooDeep_AreRefusedWhereTheyAreCalled()
    {
        var chain = Enumerable.Range(1, 40).Select(i => $"riff level-{i}\n  level-{i - 1}\n");
        var text = Top + "riff level-0\n  @1 W 0 |\n" + string.Concat(chain);
        var found = Assert.Single(Sheets.Read(text).Diagnostics, d => d.Code == "FL2251");
        Assert.Equal("level-31", text.Substring(found.Span.Start, found.Span.Length));
    }

    [Fact]
    public void GroupsDeeperThanTheParserAllows_AreRefused()
    {
        static SyntaxToken Word(string text) => new(TokenKind.Word, text, 0);
        ItemSyntax nested = new WordsSyntax(Word("\"deep\""));
        for (var i = 0; i < 100; i++) nested = new SpanSyntax(Word("pm"), null, Word("{"), [nested], Word("}"));
        var riff = new RiffSyntax(Word("riff"), Word("furnace"), [], null, new MusicSyntax([nested]));
        var sheet = new SheetSyntax([riff], new SyntaxToken(TokenKind.EndOfFile, "", 0));
        Assert.Contains(SongBinder.Bind(new ParsedSheet(new SourceText(""), sheet, [])).Diagnostics, d => d.Code == "FL2265");
    }

    [Fact]
    public void EveryFinding_HasACodeOfItsOwn_AndATest()
    {
        var codes = Factories.Where(f => !IsOverload(f)).Select(f => Make(f).Code).ToList();
        Assert.Equal(codes.Count, codes.Distinct().Count());
        Assert.Equal(codes.Order(), Shown.Concat(ShownElsewhere).Distinct().Order());
    }

    [Fact]
    public void EveryFinding_SpeaksInWholeSentences_AndSaysWhatToDo() => Assert.All(Factories, factory =>
    {
        var found = Make(factory);
        Assert.Matches("^FL2[0-9]{3}$", found.Code);
        Assert.Matches(WholeSentence(), found.Message);
        Assert.Matches(WholeSentence(), found.Remedy);
    });

    [Theory]
    [InlineData("section All\n  guitar furnase", "riff furnace\n  @1 W 0 |\n", "`furnace`")]
    [InlineData("section All\n  guitar W #lfit |", "shape lift [7 7 9 . . .]\n", "`lift`")]
    [InlineData("section Two like Al", "section All\n  guitar rest\n", "`All`")]
    [InlineData("roadmap r-map\n  scale A dorean", "", "`Dorian`")]
    [InlineData("lesson\n  step \"One\" teach furnaec", "riff furnace\n  @1 W 0 |\n", "`furnace`")]
    public void NearMiss_GetsASuggestion(string wrong, string before, string suggestion) =>
        Assert.Contains(Sheets.Read(Top + before + wrong).Diagnostics, d => d.Remedy.StartsWith($"Perhaps {suggestion} was meant.", StringComparison.Ordinal));

    private static IEnumerable<MethodInfo> Factories => typeof(FormProblems).Assembly.GetTypes()
        .Where(t => t.Namespace == typeof(FormProblems).Namespace && t != typeof(Finding))
        .SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Static)).Where(m => m.ReturnType == typeof(Diagnostic));

    // The same finding about a token and about a word.
    private static bool IsOverload(MethodInfo factory) =>
        factory.Name == nameof(NameProblems.UnknownRiff) && factory.GetParameters()[0].ParameterType == typeof(SyntaxToken);

    private static Diagnostic Make(MethodInfo factory) => (Diagnostic)factory.Invoke(null, [.. factory.GetParameters().Select(Any)])!;

    private static object? Any(ParameterInfo parameter) => parameter.ParameterType switch
    {
        var t when t == typeof(string) => "Word",
        var t when t == typeof(SyntaxToken) => new SyntaxToken(TokenKind.Word, "word", 0),
        var t when t == typeof(Neck) => new Neck(Tuning.Standard),
        var t when t == typeof(Beats) => Beats.Quarter,
        var t when t == typeof(IEnumerable<string>) => new[] { "lead", "bed" },
        var t when t == typeof(IEnumerable<int>) => new[] { 6, 7 },
        var t => Activator.CreateInstance(t),
    };

    [GeneratedRegex(@"^[`A-Z][^\n]*[.]$")]
    private static partial Regex WholeSentence();
}
