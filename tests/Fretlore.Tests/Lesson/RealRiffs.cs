using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Tests.Lesson;

/// <summary>Riffs as players write them, invented for these tests.</summary>
internal static class RealRiffs
{
    private const string DroppedBaritone = "A1 E2 A2 D3 F#3 B3";

    private static readonly Tuplet Triplet = new(3, 2, ValueBase.Eighth);
    private static readonly int?[] Lantern = [null, 3, 2, 0, 1, 0];

    public static Riff IssueExample => new RiffBuilder().On(6, 5, 4).In("Q").Play("7 7 0 10").Bar().Build();

    public static Riff Furnace => new RiffBuilder("furnace", DroppedBaritone)
        .On(6, 5, 4).In("ESS").Play("0m 0m 0m 7 0m 0m").In("E").Play("10 0m").In("Q").Play("7").Bar()
        .In("E").Play("0 8").In("S").On(5).Play("4 h6 h4 0").In("E").On(6, 5, 4).Play("8 7").In("Q").Play("R").Bar().Build();

    public static Riff FurnaceTurn => new RiffBuilder("furnace.turn", DroppedBaritone) { VariationOf = "furnace" }
        .On(6, 5, 4).In("ESS").Play("0m 0m 0m 7 0m 0m").In("E").Play("10 0m").In("Q").Play("7").Bar()
        .In("H").Shape("lift", 7, 7, 7, 9, null, null).Shape(null, 8, 8, 8, 10, null, null).Bar().Build();

    public static Riff FourGallops => new RiffBuilder("charge")
        .On(6, 5).In("ESS").Play("0m 0m 0m 0m 0m 0m 3 3 3 5 5 5").Bar()
        .Play("0m 0m 0m 0m 0m 0m 3 3 3 7 7 7").Bar().Build();

    public static Riff OpenDrone => new RiffBuilder("drone")
        .On(1).In("S").Play("12 0 10 0 12 0 10 0 8 0 7 0 5 0 7 0").Bar().Build();

    public static Riff ChugAndHit => new RiffBuilder("anvil")
        .On(6).In("E").Play("0m 0m 3").Play("0m 0m 5").Play("0m 3").Bar()
        .Play("0m 0m 3").Play("0m 0m 5").Play("6 5").Bar().Build();

    public static Riff LegatoRun => new RiffBuilder("ember")
        .On(3).In("S").Play("5 h7 h9 h7").On(2).Play("5 h6 h8 h6").On(1).Play("5 h7 h8 h7").On(1).In("Q").Play("s12", n =>
            n with { Vibrato = new Vibrato(VibratoWidth.Normal) }).Bar().Build();

    public static Riff Bends => new RiffBuilder("cry")
        .On(2).In("Q").Play("15", n => n with { Bend = new Bend(0, [200]) }).In("E").Play("=", n =>
            n with { Bend = new Bend(200, [0]) }).Play("13")
        .On(3).In("H").Play("14", n => n with { Bend = new Bend(0, [100]), Vibrato = new Vibrato(VibratoWidth.Wide, 1) }).Bar().Build();

    public static Riff Triplets => new RiffBuilder("tumble")
        .On(4).In("E", Triplet).Play("5 h7 h5").On(5).Play("7 h5 0").On(6).Play("8 h7 h5").In("Q").Play("3").Bar().Build();

    public static Riff PickedShape => new RiffBuilder("lantern")
        .In("E").Pick("lantern", Lantern, 5, 3, 2, 3, 1, 3, 2, 3).Bar()
        .Pick("lantern", Lantern, 5, 3, 2, 3, 1, 3, 2, 3).Bar().Build();

    public static Riff MovedShapes => new RiffBuilder("stairs")
        .In("Q").Shape(null, 5, 7, 7, null, null, null).Shape(null, 5, 7, 7, null, null, null).Shape(null, 8, 10, 10, null, null,
            null).Shape(null, 3, 5, 5, null, null, null).Bar().Build();

    public static Riff Pinches => new RiffBuilder("well") { Meter = new Meter(6, 8) }
        .In("E").Shape(null, null, 0, null, null, 3,
            null).On(3).Play("2").On(2).Play("3").On(1).Play("0").On(2).Play("3").On(3).Play("2").Bar()
        .In("Q.").On(5).Play("12", n =>
            n with { Harmonic = new Harmonic(HarmonicKind.Natural, new Guitar.Fret(12)) }).Play("R").Bar().Build();

    public static Riff Taps => new RiffBuilder("sparks")
        .On(2).In("S").Play("t17 h10 h13 t17 h10 h13 t17 h10 h13").Play("t17 h10 h13 t17").In("E.").Play("15").Bar().Build();

    public static Riff TwoLines => new RiffBuilder("tide")
        .On(2).In("E").Play("3 5 3 0 3 5 7 5").Strand(StrandKind.Bass, Beats.Zero).On(5).In("H").Play("0 2").Bar().Build();

    public static IEnumerable<Riff> All =>
    [
        IssueExample, Furnace, FurnaceTurn, FourGallops, OpenDrone, ChugAndHit, LegatoRun, Bends, Triplets, PickedShape, MovedShapes,
            Pinches, Taps, TwoLines,
    ];

    public static Song Song => new()
    {
        Info = new SongInfo("Salt Furnace"),
        Bars = [],
        Parts = [],
        Riffs = All.ToValueList(),
        Shapes =
        [
            new NamedShape("lantern", new Guitar.Shape([null, new(3), new(2), new(0), new(1), new(0)]), PickedShape.Neck),
            new NamedShape("lift", new Guitar.Shape([new(7), new(7), new(7), new(9), null, null]), Furnace.Neck),
        ],
        NoteCount = 0,
    };
}
