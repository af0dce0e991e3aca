using System.Globalization;
using System.Text;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.TextTab;

/// <summary>The signs at one string and moment; <see cref="Body"/> begins at the moment's column.</summary>
internal sealed class TabCell
{
    public string Before { get; set; } = "";

    public string Body { get; set; } = "";

    public string After { get; set; } = "";
}

/// <summary>The signs of plain-text tab as the trade types them, and which of them a tab uses.</summary>
internal sealed class TabSigns
{
    private static readonly (string Sign, string Meaning)[] Meanings =
    [
        ("h", "hammered on"), ("p", "pulled off"), ("/", "glide up"), ("\\", "glide down"), ("S", "glide, picked on arrival"), ("b", "bent to the pitch of"),
        ("pb", "bent before it is picked"), ("r", "released"), ("~", "vibrato"), ("t", "tapped"), ("x", "dead note"), ("( )", "ghost note"), ("< >", "harmonic, touched at"),
        ("[ ]", "pinched harmonic"), ("g", "grace note"), ("=", "sounds on"), (">", "accent"), (".", "staccato"), ("PM", "palm mute"), ("let ring", "let the notes ring"),
        ("trem", "tremolo-picked"), ("arm", "with the tremolo arm"), ("wah", "with the wah pedal"), ("cresc", "getting louder"), ("dim", "getting softer"),
        ("roll", "rolled, low to high"), ("roll-down", "rolled, high to low"), ("rake", "raked over dead strings"),
        ("tr(7)", "trilled with fret 7"), ("dip(1)", "dipped by so many steps"), ("fermata", "held for longer"), ("segno", "D.S. goes back to it"), ("coda", "the coda begins"),
        ("d u", "downstroke, upstroke"), ("p i m a c", "fingers of the picking hand"),
    ];

    private static readonly (string Sign, string Meaning)[] Values =
        [("W H Q E", "whole, half, quarter, 8th"), ("S Y Z", "16th, 32nd, 64th"), ("Q.", "half as long again"), ("E:3", "three in the time of two")];

    private readonly HashSet<string> used = [];

    /// <summary>Says that a tab uses a sign of the legend.</summary>
    public string Use(string sign, string? text = null)
    {
        used.Add(sign);
        return text ?? sign;
    }

    /// <summary>A note's signs without what joins it to others.</summary>
    /// <param name="note">The note.</param>
    /// <param name="doubles">True to write a glide off twice, where the next note would else be taken to be its end.</param>
    public TabCell CellOf(Note note, bool doubles)
    {
        var cell = new TabCell();
        if (note.IsTiedFromBefore) cell.Body = Use("=");
        else
        {
            if (note.GlideIn != GlideIn.None) cell.Before = note.GlideIn == GlideIn.FromBelow ? Use("/") : Use("\\");
            if (note.Attack == Attack.Tap) cell.Before += Use("t");
            if (note.Attack == Attack.HammerFromNowhere) cell.Before += Use("h");
            WriteFret(note, cell);
        }
        WriteMoves(note, cell);
        if (note.GlideOut != GlideOut.None)
        {
            var sign = note.GlideOut == GlideOut.Upwards ? Use("/") : Use("\\");
            cell.After += doubles ? sign + sign : sign;
        }
        return cell;
    }

    /// <summary>The sign for how a note is reached from the one before it; empty when it is picked.</summary>
    public string JointOf(Note note, Note? from) => note.Attack switch
    {
        Attack.HammerOn => Use("h"),
        Attack.PullOff => Use("p"),
        Attack.PickedGlide => Use("S"),
        Attack.Glide => from is not null && from.Fret.Number > note.Fret.Number ? Use("\\") : Use("/"),
        _ => "",
    };

    /// <summary>True when a sign that leads on to the next note comes last.</summary>
    public static bool EndsInJoint(TabCell cell) => cell.After.Length > 0 && cell.After[^1] is 'h' or 'p' or 'S' or '/' or '\\';

    public void WriteLegend(StringBuilder text)
    {
        text.Append("Signs:\n");
        foreach (var (sign, meaning) in Values) text.Append("  ").Append(sign.PadRight(9)).Append("  ").Append(meaning).Append('\n');
        foreach (var (sign, meaning) in Meanings.Where(m => used.Contains(m.Sign))) text.Append("  ").Append(sign.PadRight(9)).Append("  ").Append(meaning).Append('\n');
    }

    private void WriteFret(Note note, TabCell cell)
    {
        var (before, after) = ("", "");
        if (note.IsGhost) (before, after) = (Use("( )", "("), ")");
        if (note.IsDead) cell.Body = Use("x") + (note.Fret.IsOpen ? "" : $"({note.Fret})");
        else
        {
            cell.Body = note.Fret.ToString();
            switch (note.Harmonic?.Kind)
            {
                case HarmonicKind.Natural:
                    (before, after) = (before + Use("< >", "<"), ">" + after);
                    break;
                case HarmonicKind.Pinch:
                    (before, after) = (before + Use("[ ]", "["), "]" + after);
                    break;
                case HarmonicKind.Touched:
                    after = Use("< >", "<") + note.Harmonic.TouchedAt + ">" + after;
                    break;
            }
        }
        cell.Before += before;
        cell.After = after;
    }

    private void WriteMoves(Note note, TabCell cell)
    {
        var vibrato = note.Vibrato.Width switch { VibratoWidth.None => "", VibratoWidth.Wide => Use("~", "~~"), _ => Use("~") };
        var moves = note.Bend?.ToCents ?? [];
        var at = note.Bend?.FromCents ?? 0;
        if (!note.IsTiedFromBefore && at > 0) cell.After += Use("pb") + Target(note, at);
        for (var i = 0; i <= moves.Count; i++)
        {
            if (i == Math.Min(note.Vibrato.AfterMoves, moves.Count)) cell.After += vibrato;
            if (i == moves.Count) break;
            if (moves[i] == 0) cell.After += Use("r");
            else cell.After += (moves[i] < at ? Use("r") : Use("b")) + Target(note, moves[i]);
            at = moves[i];
        }
    }

    // A bend is written as the fret whose pitch it reaches, or in parts of a whole step where there is none.
    private static string Target(Note note, int cents)
    {
        if (cents % 100 == 0) return (note.Fret.Number + cents / 100).ToString(CultureInfo.InvariantCulture);
        var steps = Beats.Of(cents, 200);
        return string.Create(CultureInfo.InvariantCulture, $"({steps.Numerator}/{steps.Denominator})");
    }
}
