using System.Collections.Immutable;
using System.Security.Cryptography;
using Fretlore.Music;

namespace Fretlore.Lesson.Kit;

/// <summary>One file of a kit.</summary>
/// <param name="Path">Where in the kit's folder, with <c>/</c> between folders.</param>
/// <param name="Bytes">What is in it.</param>
/// <param name="Purpose">What it is for, in words for the teacher.</param>
public sealed record KitFile(string Path, ImmutableArray<byte> Bytes, string Purpose)
{
    /// <summary>In lower-case hexadecimal.</summary>
    public string Sha256 => Convert.ToHexStringLower(SHA256.HashData(Bytes.AsSpan()));
}

/// <summary>Everything made for one song, ready to be written to a folder.</summary>
/// <param name="Files">In the order they are listed; the list itself, <see cref="KitList.FileName"/>, comes last.</param>
public sealed record LessonKit(ValueList<KitFile> Files);
