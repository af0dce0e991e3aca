using Fretlore.Score;

namespace Fretlore.Exchange.Midi;

/// <summary>General MIDI programs for the sounds a sheet can ask for.</summary>
/// <remarks>Numbers as sent, from 0 (General MIDI level 1, instrument group 25 to 32 guitars and 33 to 40 basses, as counted from 1).</remarks>
internal static class GeneralMidi
{
    private const int NylonGuitar = 24;
    private const int SteelGuitar = 25;
    private const int JazzGuitar = 26;
    private const int CleanGuitar = 27;
    private const int OverdrivenGuitar = 29;
    private const int DistortionGuitar = 30;
    private const int FingeredBass = 33;

    /// <summary>The program for a part's sound word; a part without one is a bass when even its highest string is below D3.</summary>
    public static int ProgramOf(Part part) => part.Sound?.ToLowerInvariant() switch
    {
        "nylon" or "classical" => NylonGuitar,
        "acoustic" or "steel" => SteelGuitar,
        "jazz" or "warm" => JazzGuitar,
        "edge" or "crunch" or "singing" => OverdrivenGuitar,
        "driven" or "heavy" => DistortionGuitar,
        "bass" => FingeredBass,
        _ => part.Neck.StringCount > 0 && part.Neck.Tuning.LowToHigh[^1].Midi < 50 ? FingeredBass : CleanGuitar,
    };

    /// <summary>The sound word for a program, or null where no word means it.</summary>
    public static string? SoundOf(int? program) => program switch
    {
        NylonGuitar => "nylon",
        SteelGuitar => "acoustic",
        JazzGuitar => "jazz",
        OverdrivenGuitar => "edge",
        DistortionGuitar => "driven",
        _ => null,
    };

    /// <summary>What to call a part that has no name.</summary>
    public static string FamilyOf(int? program) => program switch
    {
        >= 24 and <= 31 => "Guitar",
        >= 32 and <= 39 => "Bass",
        _ => "Part",
    };
}
