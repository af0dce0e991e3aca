using Fretlore.Cli;

namespace Fretlore.Tests.Cli;

/// <summary>What a person sees when we have made a mistake.</summary>
public sealed class BugFacts
{
    [Fact]
    public void ABug_IsOneLineThatSaysWhatToSend_AndAnswers70()
    {
        using var error = new StringWriter { NewLine = "\n" };
        var code = FretloreCommand.Run(["name", "x 3 2 0 1 0"], new Surroundings { Folder = ".", In = Stream.Null, Out = new Broken(), Error = error });
        Assert.Equal(70, code);
        var line = Assert.Single(error.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.StartsWith("fretlore: this is a bug in Fretlore", line, StringComparison.Ordinal);
        Assert.Contains("[name x 3 2 0 1 0] InvalidOperationException: broken on purpose", line, StringComparison.Ordinal);
    }

    [Fact]
    public void AReaderThatHasHadEnough_IsNoError()
    {
        using var error = new StringWriter();
        var code = FretloreCommand.Run(["name", "x 3 2 0 1 0"], new Surroundings { Folder = ".", In = Stream.Null, Out = new Gone(), Error = error });
        Assert.Equal((0, ""), (code, error.ToString()));
    }

    private sealed class Broken : StringWriter
    {
        public override void Write(char[] buffer, int index, int count) => throw new InvalidOperationException("broken on purpose");

        public override void Write(string? value) => throw new InvalidOperationException("broken on purpose");

        public override void WriteLine(string? value) => throw new InvalidOperationException("broken on purpose");
    }

    private sealed class Gone : StringWriter
    {
        public override void WriteLine(string? value) => throw new IOException("Broken pipe");

        public override void Flush() => throw new IOException("Broken pipe");
    }
}
