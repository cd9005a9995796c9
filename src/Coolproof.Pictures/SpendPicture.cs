using Coolproof.Evidence;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures;

/// <summary>A choice of parts that is worth its money: a step of the stairs.</summary>
/// <param name="Parts">Its parts in words.</param>
/// <param name="Money">What it costs.</param>
/// <param name="Cost">The same with its sign, and the grams that count, in words.</param>
/// <param name="CoolerK">How much cooler the can is, K.</param>
/// <param name="Driven">Whether it was driven as it is; else it was added up, predicted or guessed.</param>
public sealed record SpendStair(string Parts, double Money, string Cost, Summary CoolerK, bool Driven);

/// <summary>What money buys: the coolest choice for each sum as stairs, the budget as a line, and the next step past it.</summary>
public static class SpendPicture
{
    /// <summary>What is seen, for who reads it beside the picture.</summary>
    public const string About = "Left to right: money. Stairs: the coolest choice for each sum; upright lines: the range that holds it 9 times in 10. Filled: driven as it is; hollow: added up, predicted or guessed. Dashed: past the budget.";

    /// <summary>Draws the stairs.</summary>
    /// <param name="stairs">Steps within the budget, cheapest first; the first buys nothing.</param>
    /// <param name="others">Choices within the limits that no other beats in money, grams and coolness at once: money, and K cooler.</param>
    /// <param name="budget">Money, and its words; null: no limit.</param>
    /// <param name="beyond">The next step past the budget; null: none.</param>
    /// <param name="finding">The answer in a sentence.</param>
    /// <param name="style">Width, theme, units; null: a page, light, Celsius.</param>
    /// <exception cref="ArgumentException">No step.</exception>
    public static Picture Of(IReadOnlyList<SpendStair> stairs, IReadOnlyList<(double Money, double CoolerK)> others, (double Money, string Said)? budget, SpendStair? beyond, string finding, PictureStyle? style = null)
    {
        if (stairs.Count == 0) throw new ArgumentException("There is no step to draw.", nameof(stairs));
        style ??= new();
        style.Check();
        var sheet = new Sheet(style, Typesetter.BuiltIn);
        Words words = new(style.Unit, 0);
        string title = style.Title ?? finding;
        double top = Heading.Draw(sheet, title, About) + sheet.Measures.Margin * 0.6;
        double bottom = new SpendPanel(sheet, stairs, others, budget, beyond).Draw(top, sheet.Measures.Narrow ? 240 : 340);
        return new(sheet, Heading.Foot(sheet, bottom, ["Small dots: choices that are lighter than those above them. What was never driven together: drive it before you trust it. Drawn by Coolproof.", style.Note]), title,
            $"{About} {string.Join(" ", stairs.Skip(1).Concat(beyond is null ? [] : [beyond]).Select(s => $"{Typesetter.Clean(s.Parts)}, {s.Cost}: {words.Signed(s.CoolerK).TrimStart('+')} cooler."))}");
    }
}
