namespace Coolproof.Pictures;

/// <summary>The one colour and the one mark that an option has everywhere: list, clock, pictures, report.</summary>
/// <param name="ColourHex">As <c>#RRGGBB</c>, on light grounds.</param>
/// <param name="Mark">Shape.</param>
public sealed record OptionLook(string ColourHex, Mark Mark)
{
    /// <summary>
    /// The eight colours of M. Okabe and K. Ito, "Color Universal Design" (2008 edition), in their order: black, orange, sky blue, bluish
    /// green, yellow, blue, vermillion, reddish purple.
    /// </summary>
    public static IReadOnlyList<string> Palette { get; } = ["#000000", "#E69F00", "#56B4E9", "#009E73", "#F0E442", "#0072B2", "#D55E00", "#CC79A7"];

    /// <summary>What an option gets by its place in the table. The first 64 options differ in colour, in mark or in both.</summary>
    /// <param name="place">0 for the first option of the table.</param>
    public static OptionLook At(int place)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(place);
        // Each further round of the colours shifts the marks by one, so no pair repeats before all have been used.
        return new(Palette[place % 8], (Mark)((place + place / 8) % 8));
    }

    /// <summary>The colour on a ground: black is the colour of ink, so on a dark ground it turns pale; the other seven stay.</summary>
    /// <param name="theme">Ground.</param>
    public string ColourOn(Theme theme) => theme == Theme.Dark && ColourHex == Palette[0] ? "#F4F2EC" : ColourHex;
}
