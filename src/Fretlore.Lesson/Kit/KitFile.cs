using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Kit;

/// <summary>One file of a kit.</summary>
/// <param name="Path">Where in the kit's folder, with <c>/</c> between folders.</param>
/// <param name="Bytes">What is in it.</param>
/// <param name="Purpose">What it is for, in words for the teacher.</param>
public sealed record KitFile(string Path, ImmutableArray<byte> Bytes, string Purpose)
{
    /// <summary>Whom it is for.</summary>
    public Audience Audience { get; init; }

    /// <summary>In lower-case hexadecimal.</summary>
    public string Sha256 => Convert.ToHexStringLower(SHA256.HashData(Bytes.AsSpan()));

    /// <summary>A file of text in UTF-8.</summary>
    public static KitFile Text(string path, string purpose, string text) => new(path, [.. Encoding.UTF8.GetBytes(text)], purpose);

    /// <summary>A file that is written to a stream.</summary>
    public static KitFile Written(string path, string purpose, Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return new KitFile(path, ImmutableArray.Create(stream.ToArray()), purpose);
    }

    /// <summary>A part's name in file names.</summary>
    public static string NameOf(Part part) => NameOf(part.Name);

    /// <summary>A name of the sheet in file names: in lower case, with a hyphen for what a file system might not take.</summary>
    public static string NameOf(string name) => string.Concat(name.Select(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '.' ? char.ToLowerInvariant(c) : '-'));

    /// <summary>Any title in file names: small letters and digits with single hyphens between, at most 40; "untitled" where nothing is left.</summary>
    public static string NameOfTitle(string title)
    {
        var words = string.Concat(title.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : ' ')).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var name = string.Join('-', words);
        return name.Length == 0 ? "untitled" : name[..Math.Min(name.Length, 40)].Trim('-');
    }
}

/// <summary>Everything made for one song, ready to be written to a folder.</summary>
/// <param name="Files">In the order they are listed; the list itself, <see cref="KitList.FileName"/>, comes last.</param>
public sealed record LessonKit(ValueList<KitFile> Files);
