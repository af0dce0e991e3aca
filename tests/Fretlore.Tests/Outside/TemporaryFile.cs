namespace Fretlore.Tests.Outside;

/// <summary>A file for a program that is not ours to read, gone when done.</summary>
internal sealed class TemporaryFile : IDisposable
{
    public TemporaryFile(string extension, byte[] content)
    {
        Path = System.IO.Path.Combine(System.IO.Path.GetTempPath(), "fretlore-" + Guid.NewGuid().ToString("N") + extension);
        File.WriteAllBytes(Path, content);
    }

    public string Path { get; }

    public void Dispose() => File.Delete(Path);
}
