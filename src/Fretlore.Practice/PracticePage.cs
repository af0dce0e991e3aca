using System.Collections.Immutable;
using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Fretting;
using Fretlore.Engraving.Layout;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Practice.Data;
using Fretlore.Practice.Making;
using Fretlore.Practice.Template;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Sound.Output;

namespace Fretlore.Practice;

/// <summary>What a practice page is made of.</summary>
public sealed record PracticeSource
{
    /// <summary>The song as it sounds, at full speed.</summary>
    public required PerformedSong Played { get; init; }

    public required SongReading Reading { get; init; }

    public required SongHands Hands { get; init; }

    public required FontLibrary Fonts { get; init; }

    /// <summary>Staff with tablature, or one of them.</summary>
    public Notation Show { get; init; }

    /// <summary>What of the hands stands on the pages.</summary>
    public HandSignOptions HandSigns { get; init; } = HandSignOptions.Printed;

    /// <summary>The lesson in order; empty when there is none.</summary>
    public ValueList<PracticeStep> Steps { get; init; }

    /// <summary>What is heard of the song.</summary>
    public required PracticeSound Sound { get; init; }

    /// <summary>Free stretches played out, for call and response.</summary>
    public ImmutableArray<PracticeCall> Calls { get; init; } = [];

    /// <summary>Says a road map's rule as a sentence.</summary>
    public required Func<RoadMapRule, string> InWords { get; init; }
}

/// <summary>The sound of a practice page.</summary>
/// <param name="Seconds">From the song's start to where the last note has died away.</param>
/// <param name="Pieces">For each part its pieces of <see cref="StemPieces.PieceSeconds"/>, each a mono Opus file; empty for a page without sound.</param>
/// <param name="WhyNone">Why there is no sound, a whole sentence; null when there is.</param>
public sealed record PracticeSound(double Seconds, ImmutableArray<ImmutableArray<ImmutableArray<byte>>> Pieces, string? WhyNone);

/// <summary>What became of a practice page.</summary>
public abstract record PracticeResult
{
    private PracticeResult()
    {
    }

    /// <summary>The page.</summary>
    /// <param name="Html">One file, in UTF-8.</param>
    public sealed record Made(ImmutableArray<byte> Html) : PracticeResult;

    /// <summary>There is none.</summary>
    /// <param name="Reason">Why, and what to do about it; whole sentences.</param>
    public sealed record LeftOut(string Reason) : PracticeResult;
}

/// <summary>Makes a song's practice page: one HTML file that a student opens and plays along with, without a network.</summary>
/// <remarks>The same source gives the same bytes.</remarks>
public static class PracticePage
{
    /// <param name="source">The song and all that is known of it.</param>
    public static PracticeResult Make(PracticeSource source)
    {
        if (PageTemplate.Read() is not { } template)
        {
            return new PracticeResult.LeftOut(
                "practice.html is left out: this Fretlore was built without npm. Install Node.js 20 or later, build again and make the kit again.");
        }
        var views = new ViewMaker(source).All().ToArray();
        var data = DataOf(source, views);
        var html = template
            .Replace(PageTemplate.TitleMark, WebUtility.HtmlEncode(data.Title), StringComparison.Ordinal)
            .Replace(PageTemplate.SongMark, Blocks(data, views, source), StringComparison.Ordinal);
        return new PracticeResult.Made(ImmutableArray.Create(Encoding.UTF8.GetBytes(html)));
    }

    private static SongData DataOf(PracticeSource source, PackedView[] views)
    {
        var song = source.Played.Song;
        var form = new FormMaker(source.Played);
        var theory = new TheoryMaker(source.Played, source.Reading);
        var parts = new PartMaker(source.Played, source.Reading, source.Hands, theory);
        var lesson = new LessonMaker(source.Played, source.Hands, theory);
        return new SongData
        {
            Id = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{song.Info.Title}\n{song.Info.Artist}")))[..16],
            Title = song.Info.Title,
            Artist = song.Info.Artist,
            Credits = song.Info.Credits,
            Rights = song.Info.Rights,
            Key = source.Reading.Home.ToString(),
            MadeBy = "Fretlore " + typeof(PracticePage).Assembly.GetName().Version!.ToString(3),
            Seconds = Seconds.Rounded(source.Played.Seconds),
            Bars = form.Bars(),
            Played = form.Played(),
            Stretches = form.Stretches(),
            Parts = [.. Enumerable.Range(0, song.Parts.Count).Select(parts.Of)],
            Steps = [.. source.Steps.Select(lesson.Of)],
            RoadMaps = [.. new RoadMapMaker(song, source.InWords).All()],
            Calls = [.. source.Calls.Select((call, i) => new CallMaker(theory).Of(call, call.Sound is null ? null : CallId(i))).OfType<CallData>()],
            Shapes = [.. song.Shapes.Select((named, i) =>
            {
                var best = source.Reading.Shapes[i].Candidates.FirstOrDefault();
                return new ShapeData(named.Name, best?.Symbol, best?.Reason, [.. named.Shape.LowToHigh.Select(fret => fret?.Number)]);
            })],
            Recordings = form.Recordings(),
            Sound = source.Sound.Pieces.IsDefaultOrEmpty
                ? new SoundData(0, StemPieces.PieceSeconds, 0, source.Sound.WhyNone ?? "It was made without sound.")
                : new SoundData(Seconds.Rounded(source.Sound.Seconds), StemPieces.PieceSeconds, source.Sound.Pieces[0].Length, null),
            Views = [.. views.Select(view => view.View)],
            // Last: those before say which of them there are.
            Roles = theory.Roles,
            Chords = theory.Chords,
            Scales = theory.Scales,
        };
    }

    // Base64 and escaped JSON hold no sign that could end a script element.
    private static string Blocks(SongData data, PackedView[] views, PracticeSource source)
    {
        var sound = source.Sound;
        var blocks = new StringBuilder();
        blocks.Append("<script type=\"application/json\" id=\"song\">").Append(SongJson.Write(data)).Append("</script>\n");
        foreach (var view in views) Block(view.View.Id, view.Packed);
        for (var part = 0; part < sound.Pieces.Length; part++)
        {
            for (var piece = 0; piece < sound.Pieces[part].Length; piece++) Block($"sound-{part}-{piece}", Convert.ToBase64String(sound.Pieces[part][piece].AsSpan()));
        }
        for (var call = 0; call < source.Calls.Length; call++)
        {
            if (source.Calls[call].Sound is { } solo) Block(CallId(call), Convert.ToBase64String(solo.AsSpan()));
        }
        return blocks.ToString();

        void Block(string id, string packed) =>
            blocks.Append("<script type=\"text/plain\" id=\"").Append(WebUtility.HtmlEncode(id)).Append("\">").Append(packed).Append("</script>\n");
    }

    private static string CallId(int call) => string.Create(CultureInfo.InvariantCulture, $"call-{call}");
}
