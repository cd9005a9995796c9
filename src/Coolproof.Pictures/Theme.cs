namespace Coolproof.Pictures;

/// <summary>Where a picture is read.</summary>
public enum Theme
{
    /// <summary>Indoors and in print.</summary>
    Light,

    /// <summary>In the evening.</summary>
    Dark,

    /// <summary>In full sunlight: black on near-white, heavier strokes, larger words, no grey that means something.</summary>
    Sun,
}
