namespace Fretlore.Engraving.Output;

/// <summary>What is behind the ink of a picture, and the ink that shows on it.</summary>
public enum PictureGround
{
    /// <summary>White paper.</summary>
    White,

    /// <summary>Nothing, to lay the picture over a bright film.</summary>
    Clear,

    /// <summary>Nothing, with white ink, to lay the picture over a dark film.</summary>
    ClearUnderWhiteInk,
}
