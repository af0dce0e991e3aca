using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>What is in force in one strand while it is written: time, place, and what sounds for the next joint.</summary>
internal sealed class StrandHand
{
    public RhythmCell? Cell { get; set; }

    /// <summary>For each event of the bar in hand the time to write before it, or null.</summary>
    public RhythmCell?[] Times { get; set; } = [];

    /// <summary>Selected strings, low to high; empty when none are.</summary>
    public ImmutableArray<StringNumber> Place { get; set; } = [];

    /// <summary>The notes of the event before, as the sheet's reader keeps them for joints.</summary>
    public ImmutableArray<Note> Sounding { get; set; } = [];

    /// <summary>The line in which its last event stands, and where, for a glide that is written after it.</summary>
    public List<Token>? LastLine { get; set; }

    public int LastToken { get; set; } = -1;

    /// <summary>Time and place have to be written again.</summary>
    public void Forget() => (Cell, Place) = (null, []);
}

/// <summary>How notes are reached, as the sheet writes it.</summary>
internal static class JointText
{
    private static readonly string[] Joints = ["", ",", ";", "; "];

    /// <summary>The joint that says how these notes are reached, and whether it says it for all of them.</summary>
    public static (string Joint, bool IsExact) Of(IReadOnlyList<Note> notes, ImmutableArray<Note> sounding)
    {
        if (notes.Count == 0) return ("", true);
        var (best, most) = ("", -1);
        foreach (var joint in Joints)
        {
            var right = 0;
            var isSound = true;
            foreach (var note in notes)
            {
                var read = Read(joint, note, sounding);
                isSound &= read is not null;
                if (read == note.Attack) right++;
            }
            if (isSound && right > most) (best, most) = (joint, right);
        }
        return (best, most == notes.Count);
    }

    // How the joint is read before this note; null where it would be a slip.
    private static Attack? Read(string joint, Note note, ImmutableArray<Note> sounding)
    {
        var before = sounding.LastOrDefault(n => n.String == note.String && !n.IsDead);
        if (note.Attack == Attack.Tap)
        {
            if (note.Fret.IsOpen || joint.StartsWith(';')) return null;
            return joint == "," && before is not null && note.Fret.Number <= before.Fret.Number ? null : Attack.Tap;
        }
        switch (joint)
        {
            case ",":
                if (before is null || note.IsDead) return note.Fret.IsOpen && !note.IsDead ? null : Attack.HammerFromNowhere;
                if (note.Fret == before.Fret) return null;
                return note.Fret.Number > before.Fret.Number ? Attack.HammerOn : Attack.PullOff;
            case ";" or "; ":
                if (before is null || note.Fret == before.Fret || note.Fret.IsOpen || before.Fret.IsOpen) return null;
                return joint == ";" ? Attack.Glide : Attack.PickedGlide;
            default:
                return Attack.Picked;
        }
    }
}
