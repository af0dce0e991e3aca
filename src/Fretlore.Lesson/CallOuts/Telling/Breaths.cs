using System.Text;
using Fretlore.Music;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>How a piece of speech is joined to what is said before it.</summary>
internal enum Joint
{
    /// <summary>The next thing to play.</summary>
    Item,

    /// <summary>The next thing to play, on a beat or at the start of a tuplet or gallop: the best place for a breath.</summary>
    Beat,

    /// <summary>The next thing to play, inside a tuplet or gallop: the last place for a breath.</summary>
    Within,

    /// <summary>More about the thing just said.</summary>
    Mark,

    /// <summary>Runs on without a pause.</summary>
    RunOn,
}

/// <summary>Builds sentences from pieces and starts a new one before the breath runs out.</summary>
internal sealed class Breaths
{
    /// <summary>Words in a breath. Common practice for spoken text: under twenty.</summary>
    public const int Limit = 18;

    private const int LastResort = 20;

    private readonly List<string> sentences = [];
    private readonly List<(string Text, Joint Joint)> pieces = [];
    private string? heading;
    private bool headingRunsOn;
    private bool goesOn;

    public ValueList<string> Sentences => sentences.ToValueList();

    /// <summary>True when the sentence so far is a heading that runs on.</summary>
    public bool RunsOn => headingRunsOn && pieces.Count == 0;

    public bool IsOpen => heading is not null || pieces.Count > 0;

    /// <summary>Ends what is open and says a sentence of its own.</summary>
    public void Say(string sentence)
    {
        End();
        sentences.Add(Capital(sentence) + ".");
    }

    /// <summary>Starts a sentence with words that end in a colon; a heading that runs on takes them up.</summary>
    public void Head(string words)
    {
        if (headingRunsOn && pieces.Count == 0) words = heading + " " + words;
        else End();
        (heading, headingRunsOn) = (words, false);
    }

    /// <summary>Starts a sentence with words that run on without a pause.</summary>
    public void Lead(string words)
    {
        End();
        (heading, headingRunsOn) = (words, true);
    }

    public void Add(string text, Joint joint = Joint.Item)
    {
        pieces.Add((text, joint));
        if (OpenWords() + 1 > Limit) Break();
    }

    // Out of breath: what was said about the last thing goes with it into the next sentence, unless it fills one alone; so does the tuplet that it is in.
    private void Break()
    {
        var from = LastStart(Joint.Beat, Limit / 3);
        if (from <= 0) from = LastStart(Joint.Item, 0);
        if (from <= 0) from = pieces.FindLastIndex(p => p.Joint is Joint.Item or Joint.Beat);
        if (from <= 0) from = LastStart(Joint.Within, 0);
        // Next to last, before what is done to a note, and only when there is no breath left for it.
        if (from <= 0 && OpenWords() + 1 <= LastResort) return;
        if (from <= 0) from = pieces.FindLastIndex(p => p.Joint == Joint.Mark);
        if (from <= 0) from = pieces.Count - 1;
        if (from <= 0) return;
        var rest = pieces[from..];
        pieces.RemoveRange(from, pieces.Count - from);
        End();
        pieces.AddRange(rest);
        goesOn = IsItem(rest[0].Joint);
        if (OpenWords() + 1 > Limit) Break();
    }

    // The last place for a breath that leaves enough words before it, and not too many after it. A beat is as good as any item.
    private int LastStart(Joint joint, int wordsBefore)
    {
        for (var at = pieces.Count - 1; at > 0; at--)
        {
            if (pieces[at].Joint != joint && !(joint == Joint.Item && pieces[at].Joint == Joint.Beat)) continue;
            if (pieces.Skip(at).Sum(p => Words(p.Text)) < Limit && OpenWords() - pieces.Skip(at).Sum(p => Words(p.Text)) >= wordsBefore) return at;
        }
        return -1;
    }

    private static bool IsItem(Joint joint) => joint is Joint.Item or Joint.Beat or Joint.Within;

    /// <summary>Adds words to the last piece; they are never parted from it.</summary>
    public void Append(string text)
    {
        if (pieces.Count == 0) return;
        pieces[^1] = (pieces[^1].Text + text, pieces[^1].Joint);
        if (OpenWords() + 1 > Limit) Break();
    }

    public void End()
    {
        if (!IsOpen) return;
        var text = new StringBuilder(heading);
        var last = pieces.FindLastIndex(p => IsItem(p.Joint));
        // A lone thing left over hangs on with "then"; a row of them speaks for itself.
        if (goesOn && last == 0) text.Append("then ");
        for (var i = 0; i < pieces.Count; i++)
        {
            if (i == 0) text.Append(heading is null ? "" : headingRunsOn ? " " : ": ");
            else if (pieces[i].Joint == Joint.RunOn) text.Append(' ');
            else text.Append(i != last ? ", " : ", then ");
            text.Append(pieces[i].Text);
        }
        (heading, headingRunsOn, goesOn) = (null, false, false);
        pieces.Clear();
        sentences.Add(Capital(text.ToString()) + ".");
    }

    private int OpenWords() => Words(heading ?? "") + pieces.Sum(p => Words(p.Text));

    private static int Words(string text) => text.Length == 0 ? 0 : text.Count(c => c == ' ') + 1;

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
