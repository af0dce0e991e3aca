using System.IO.Compression;
using System.Globalization;
using System.Xml.Linq;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Tests.Outside;

/// <summary>A real score from compressed MusicXML, as a song without spellings, beside the spellings it was printed with.</summary>
/// <param name="Song">The notes as heights; strings and frets mean nothing here.</param>
/// <param name="Printed">For each note id its printed pitch.</param>
/// <param name="Signatures">For each bar the printed key signature: sharps, or flats below 0.</param>
internal sealed record ScoreFile(Song Song, IReadOnlyList<Pitch> Printed, IReadOnlyList<int> Signatures)
{
    public static ScoreFile Read(string path)
    {
        using var archive = ZipFile.OpenRead(path);
        var entry = archive.Entries.First(e => e.FullName.EndsWith(".xml", StringComparison.Ordinal) && !e.FullName.StartsWith("META-INF", StringComparison.Ordinal));
        using var stream = entry.Open();
        return new Reader().Read(XDocument.Load(stream));
    }

    /// <summary>The same song with a key for each bar.</summary>
    public Song WithKeys(Func<int, Key?> keyOfBar) => Song with
    {
        Bars = Song.Bars.Items.Select((bar, i) => bar with { Key = keyOfBar(i) }).ToValueList(),
    };

    private sealed class Reader
    {
        private static readonly Neck AnyNeck = new(Tuning.Standard);
        private readonly List<Pitch> printed = [];
        private readonly List<int> signatures = [];
        private readonly List<Bar> bars = [];

        public ScoreFile Read(XDocument document)
        {
            var parts = document.Root!.Elements("part").Select((part, i) => Part(part, i == 0)).ToValueList();
            return new ScoreFile(
                new Song { Info = new SongInfo("A real score"), Bars = bars.ToValueList(), Parts = parts, NoteCount = printed.Count }, printed, signatures);
        }

        private Part Part(XElement part, bool isFirst)
        {
            var content = new List<PartBar>();
            var divisions = 1L;
            var signature = 0;
            var meter = Meter.FourFour;
            foreach (var measure in part.Elements("measure"))
            {
                var voices = new SortedDictionary<string, List<Event>>(StringComparer.Ordinal);
                Beats time = Beats.Zero, length = Beats.Zero, last = Beats.Zero;
                foreach (var element in measure.Elements())
                {
                    Beats Duration() => Beats.Of(Number(element.Element("duration")) ?? 0, divisions);
                    if (element.Name == "attributes")
                    {
                        divisions = Number(element.Element("divisions")) ?? divisions;
                        signature = (int)(Number(element.Element("key")?.Element("fifths")) ?? signature);
                        if (element.Element("time") is { } sign && Number(sign.Element("beats")) is { } count && Number(sign.Element("beat-type")) is { } unit)
                        {
                            meter = new Meter((int)count, (int)unit);
                        }
                    }
                    else if (element.Name == "backup") time -= Duration();
                    else if (element.Name == "forward") time += Duration();
                    else if (element.Name == "note")
                    {
                        var isChord = element.Element("chord") is not null;
                        var start = isChord ? last : time;
                        last = start;
                        if (!isChord) time += Duration();
                        var isHeard = element.Element("pitch") is not null && !Duration().IsZero;
                        if (isHeard) Add(voices, element, start, Duration(), isChord);
                    }
                    length = Beats.Max(length, time);
                }
                content.Add(new PartBar(AnyNeck, [.. voices.Select(v => new Strand(KindOf(v.Key), v.Value.ToValueList()))]));
                if (!isFirst) continue;
                signatures.Add(signature);
                bars.Add(new Bar { Number = bars.Count + 1, Meter = meter, Key = null, Length = length });
            }
            return new Part { Name = "p", Title = "p", Neck = AnyNeck, Bars = content.ToValueList() };
        }

        // A piano's lower staff has the voices from 5 on, as most programs write them.
        private static StrandKind KindOf(string voice) => voice switch
        {
            "1" => StrandKind.Main,
            "5" => StrandKind.Bass,
            "6" or "7" or "8" => StrandKind.Drone,
            _ => StrandKind.Top,
        };

        private void Add(SortedDictionary<string, List<Event>> voices, XElement element, Beats start, Beats duration, bool isChord)
        {
            var voice = element.Element("voice")?.Value ?? "1";
            if (!voices.TryGetValue(voice, out var events)) voices.Add(voice, events = []);
            var written = element.Element("pitch")!;
            var step = Enum.Parse<Step>(written.Element("step")!.Value);
            var pitch = new Pitch(new NoteName(step, (int)(Number(written.Element("alter")) ?? 0)), (int)Number(written.Element("octave"))!);
            var note = new Note
            {
                Id = new NoteId(printed.Count),
                String = new StringNumber(1 + (isChord && events.Count > 0 ? events[^1].Notes.Count : 0)),
                Fret = Fret.Open,
                Sounding = pitch.Height,
                Attack = element.Elements("tie").Any(t => t.Attribute("type")?.Value == "stop") ? Attack.Held : Attack.Picked,
            };
            printed.Add(pitch);
            if (isChord && events.Count > 0 && events[^1].Start == start)
            {
                events[^1] = events[^1] with { Notes = events[^1].Notes.Append(note).OrderBy(n => n.Sounding).ToValueList() };
                return;
            }
            events.Add(new Event
            {
                Start = start,
                Value = new NoteValue(ValueBase.Quarter),
                Tuplet = new Tuplet((int)duration.Denominator, (int)duration.Numerator, ValueBase.Quarter),
                Notes = [note],
            });
        }

        private static long? Number(XElement? element) =>
            element is null ? null : (long)decimal.Parse(element.Value, CultureInfo.InvariantCulture);
    }
}
