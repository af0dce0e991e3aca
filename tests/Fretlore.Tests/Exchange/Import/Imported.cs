using System.Text;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.MusicXml;
using Fretlore.Exchange.Reports;
using Fretlore.Exchange.Sheets;
using Fretlore.Score;

namespace Fretlore.Tests.Exchange.Import;

/// <summary>Songs read from files, for tests to look into.</summary>
internal static class Imported
{
    /// <summary>The song of a file that must be taken.</summary>
    public static ImportResult.Made Xml(byte[] file) => MusicXmlReader.Read(file) switch
    {
        ImportResult.Made made => made,
        ImportResult.Refused refused => throw new InvalidDataException(refused.Reason),
        _ => throw new InvalidOperationException(),
    };

    public static ImportResult.Made Xml(string text) => Xml(Encoding.UTF8.GetBytes(text));

    /// <summary>Measures of one part, in 4/4 with four divisions, as a whole score.</summary>
    public static ImportResult.Made Measures(params string[] measures) => Xml(ScoreOf(measures));

    public static string ScoreOf(params string[] measures)
    {
        var text = new StringBuilder("<score-partwise version=\"4.0\"><part-list><score-part id=\"P1\"><part-name>Guitar</part-name></score-part></part-list><part id=\"P1\">");
        for (var i = 0; i < measures.Length; i++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"<measure number=\"{i + 1}\">");
            if (i == 0) text.Append("<attributes><divisions>4</divisions><key><fifths>0</fifths><mode>major</mode></key><time><beats>4</beats><beat-type>4</beat-type></time></attributes><sound tempo=\"100\"/>");
            text.Append(measures[i]).Append("</measure>");
        }
        return text.Append("</part></score-partwise>").ToString();
    }

    /// <summary>A note element.</summary>
    public static string Note(string step, int octave, int duration, string type, int? number = null, int? fret = null, string technical = "", string notations = "", string before = "") =>
        $"<note>{before}<pitch><step>{step}</step><octave>{octave}</octave></pitch><duration>{duration}</duration><voice>1</voice><type>{type}</type><notations>{notations}"
        + $"<technical>{(number is null ? "" : $"<string>{number}</string><fret>{fret}</fret>")}{technical}</technical></notations></note>";

    /// <summary>The song written as a sheet and bound again, which must go without errors.</summary>
    public static Song ThroughSheet(Song song, out string sheet)
    {
        sheet = SheetWriter.Write(song).Text;
        return Fretlore.Tests.Songs.Sheets.Song(sheet);
    }

    public static string Text(IEnumerable<Remark> remarks) => string.Join('\n', remarks.Select(r => $"{r.Kind} {r}"));
}
