using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures;

/// <summary>One option with one pinion.</summary>
/// <param name="Pinion">Teeth.</param>
/// <param name="LapS">Lap time, middle, s.</param>
/// <param name="PeakC">Highest temperature of the part that is drawn, °C.</param>
/// <param name="Accepted">Whether the odds of passing a limit are within what the person accepts.</param>
public readonly record struct GearSpot(int Pinion, double LapS, Summary PeakC, bool Accepted);

/// <summary>One option over pinions.</summary>
/// <param name="Option">Its name.</param>
/// <param name="Spots">Pinions, fewest teeth first.</param>
/// <param name="Best">Place of the quickest whose odds are accepted; null: none.</param>
public sealed record GearLine(string Option, IReadOnlyList<GearSpot> Spots, int? Best);

/// <summary>How hot each option gets with each pinion, lap times beneath the pinions, the quickest whose odds are accepted marked with its teeth.</summary>
public static class GearPicture
{
    /// <summary>What is seen, for who reads it beside the picture.</summary>
    public const string About = "Left to right: more teeth, other lap times. Lines are the middle; filled: the odds of passing a limit are within what you accept; hollow and dashed: beyond. Large: the quickest within, with the range that holds its temperature 9 times in 10.";

    /// <summary>Draws the options.</summary>
    /// <param name="options">Options, in the order of the table.</param>
    /// <param name="limit">The limit that is drawn, of the part whose temperatures these are.</param>
    /// <param name="finding">The answer in a sentence.</param>
    /// <param name="style">Width, theme, units; null: a page, light, Celsius.</param>
    /// <exception cref="ArgumentException">No option, no pinion, or options with other pinions than the first.</exception>
    public static Picture Of(IReadOnlyList<GearLine> options, RaceLimit limit, string finding, PictureStyle? style = null)
    {
        if (options.Count == 0 || options[0].Spots.Count == 0) throw new ArgumentException("There is no pinion to draw.", nameof(options));
        if (options.Any(o => !o.Spots.Select(s => s.Pinion).SequenceEqual(options[0].Spots.Select(s => s.Pinion)))) throw new ArgumentException("Each option has to have the same pinions.", nameof(options));
        style ??= new();
        style.Check();
        var sheet = new Sheet(style, Typesetter.BuiltIn);
        Words words = new(style.Unit, 0);
        string title = style.Title ?? finding, conditions = $"Highest {limit.PartName} of the race with the soak after the stop. {About}";
        double top = Heading.Draw(sheet, title, conditions) + sheet.Measures.Margin * 0.6;
        double bottom = new GearPanel(sheet, options, limit).Draw(top, sheet.Measures.Narrow ? 300 : 420);
        return new(sheet, Heading.Foot(sheet, bottom, ["A forecast, not a measurement: check the rule book, go up a tooth at a time. Drawn by Coolproof.", style.Note]), title,
            $"{conditions} {string.Join(" ", options.Select(o => Said(o, limit, words)))}");
    }

    private static string Said(GearLine option, RaceLimit limit, Words words) => option.Best is { } best
        ? $"{Typesetter.Clean(option.Option)}: {option.Spots[best].Pinion} teeth, {limit.PartName} up to {words.Temperature(option.Spots[best].PeakC)}."
        : $"{Typesetter.Clean(option.Option)}: no pinion within the odds accepted.";
}
