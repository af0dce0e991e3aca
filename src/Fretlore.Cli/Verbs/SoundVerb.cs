using System.CommandLine;
using System.Globalization;
using Fretlore.Cli.Files;
using Fretlore.Cli.Output;
using Fretlore.Score;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;
using Fretlore.Workspace.Questions;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore sound</c>: plays a song into a sound file.</summary>
internal static class SoundVerb
{
    private sealed record Asked
    {
        public required string Sheet { get; init; }

        public required string Output { get; init; }

        public string? Part { get; init; }

        public string? Without { get; init; }

        public int? From { get; init; }

        public int? To { get; init; }

        public string? Section { get; init; }

        public string? Riff { get; init; }

        public bool Loop { get; init; }

        public required string Speed { get; init; }

        public bool Exact { get; init; }

        public bool Click { get; init; }

        public bool CountIn { get; init; }

        public required string Bits { get; init; }
    }

    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore; - reads it from the standard input." };
        var output = new Option<string>("--output", "-o") { Description = "The file to write: NAME.wav, or NAME.opus for a tenth of the size.", HelpName = "FILE", Required = true };
        var part = new Option<string?>("--part") { Description = "Only these parts, by their short names with commas between.", HelpName = "NAMES" };
        var without = new Option<string?>("--without") { Description = "All but these parts: to play them yourself.", HelpName = "NAMES" };
        var from = new Option<int?>("--from") { Description = "The first bar, by its printed number; of a section or riff, counted from its own first bar.", HelpName = "BAR" };
        var to = new Option<int?>("--to") { Description = "The last bar.", HelpName = "BAR" };
        var section = new Option<string?>("--section") { Description = "A section by its name.", HelpName = "NAME" };
        var riff = new Option<string?>("--riff")
        {
            Description = "A riff by its name, played alone by its part; with --part or --without, where it first stands in the song.",
            HelpName = "NAME",
        };
        var loop = new Option<bool>("--loop") { Description = "To be played round and round: it ends where it begins, without a gap or a click." };
        var speed = new Option<string>("--speed")
        {
            Description = "Share of the written tempo. It is played at that tempo, not stretched.",
            HelpName = "PERCENT",
            DefaultValueFactory = _ => "100%",
        };
        var exact = new Option<bool>("--exact") { Description = "Exactly as written, without the small differences a player makes in time and touch." };
        var click = new Option<bool>("--click") { Description = "A click on every beat." };
        var countIn = new Option<bool>("--count-in") { Description = "A bar of clicks first." };
        var bits = new Option<string>("--bits") { Description = "Bits a sample of a WAV file.", DefaultValueFactory = _ => "16" };
        bits.AcceptOnlyFromAmong("16", "24");
        var verb = new Verb(
            "sound", "Play a song into a sound file: with all parts, some of them or all but some, at any speed.",
            "fretlore sound my-song.lore -o my-song.wav", "fretlore sound my-song.lore --without lead --from 9 --to 16 --speed 60% --count-in -o slow.wav",
            "fretlore sound my-song.lore --riff main --speed 70% --loop -o main.opus")
        {
            sheet, output, part, without, from, to, section, riff, loop, speed, exact, click, countIn, bits,
        };
        verb.SetAction(parsed => Run(surroundings, new Asked
        {
            Sheet = parsed.GetRequiredValue(sheet),
            Output = parsed.GetRequiredValue(output),
            Part = parsed.GetValue(part),
            Without = parsed.GetValue(without),
            From = parsed.GetValue(from),
            To = parsed.GetValue(to),
            Section = parsed.GetValue(section),
            Riff = parsed.GetValue(riff),
            Loop = parsed.GetValue(loop),
            Speed = parsed.GetRequiredValue(speed),
            Exact = parsed.GetValue(exact),
            Click = parsed.GetValue(click),
            CountIn = parsed.GetValue(countIn),
            Bits = parsed.GetRequiredValue(bits),
        }));
        return verb;
    }

    private static int Run(Surroundings surroundings, Asked asked)
    {
        if (OpenedSheet.Open(surroundings, asked.Sheet, "Nothing was played", out var code) is not { Song: var song }) return code;
        var request = RequestOf(asked, song);
        if (request.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
        if (FormatOf(asked) is not { } format) return WrongUse.Write(surroundings.Error, $"{asked.Output} is no name for a sound file.", "End it in .wav or .opus.");
        if (OutputPlace.RefuseFile(surroundings, asked.Output) is { } unfit) return unfit;
        return SongMixer.Prepare(song, request.Value) switch
        {
            SoundResult.Refused refused => WrongUse.Write(surroundings.Error, refused.Message, refused.Remedy),
            SoundResult.Ready ready => Write(surroundings, asked.Output, ready.Mix, format),
            _ => throw new InvalidOperationException("A result is ready or refused."),
        };
    }

    private static Answer<SoundRequest> RequestOf(Asked asked, Song song)
    {
        var parts = PartChoice.Read(asked.Part, song);
        if (parts.Misread is { } wrongPart) return wrongPart;
        var without = PartChoice.Read(asked.Without, song);
        if (without.Misread is { } wrongWithout) return wrongWithout;
        var speed = SpeedText.Read(asked.Speed);
        if (speed.Misread is { } wrongSpeed) return wrongSpeed;
        return new SoundRequest
        {
            Parts = parts.Value,
            Without = without.Value,
            FromBar = asked.From,
            ToBar = asked.To,
            Section = asked.Section,
            Riff = asked.Riff,
            Loop = asked.Loop,
            Speed = speed.Value,
            Exact = asked.Exact,
            Click = asked.Click,
            CountIn = asked.CountIn,
        };
    }

    private static SoundFormat? FormatOf(Asked asked) => Path.GetExtension(asked.Output).ToLowerInvariant() switch
    {
        _ when asked.Output.Contains('\0') => null,
        ".wav" => asked.Bits == "24" ? SoundFormat.Wave24 : SoundFormat.Wave16,
        ".opus" => SoundFormat.Opus,
        _ => null,
    };

    private static int Write(Surroundings surroundings, string output, SongMix mix, SoundFormat format)
    {
        // The first interrupt stops the work and leaves no half file; the temporary ones are removed on the way out.
        using var stop = new StopSignal();
        try
        {
            WrittenSound written = default;
            SoundProgress.Show(surroundings, progress =>
            {
                SafeFile.Write(
                    surroundings.PathOf(output),
                    (stream, room) => written = SoundFile.Write(mix, room, stream, format, null, progress, stop.Token));
                return true;
            });
            Report(surroundings, output, written);
            return ExitCode.Fine;
        }
        catch (OperationCanceledException)
        {
            surroundings.Error.WriteLine("Stopped: nothing was written.");
            return ExitCode.Stopped;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return WrongUse.Write(surroundings.Error, $"{output} can't be written: {Reason.Of(e)}", "Choose another file with -o.");
        }
    }

    private static void Report(Surroundings surroundings, string output, WrittenSound written)
    {
        var length = TimeSpan.FromSeconds(written.Seconds);
        var loudness = written.Loudness is { } lufs ? string.Create(CultureInfo.InvariantCulture, $"{lufs:0.0} LUFS") : "silence";
        surroundings.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{output}: {(int)length.TotalMinutes}:{length.Seconds:00}, {loudness}."));
        surroundings.Out.WriteLine("Mind your ears: 85 dBA for 8 hours a day at most, and half as long for every 3 dB more (NIOSH).");
        surroundings.Out.WriteLine("If the song is someone else's, get a licence from its publisher before you publish its sound.");
    }
}
