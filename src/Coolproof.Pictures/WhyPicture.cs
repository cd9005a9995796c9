using Coolproof.Evidence.Causes;
using Coolproof.Evidence.Words;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures;

/// <summary>Why one run or day read other than another: from the one to the other, cause by cause.</summary>
public static class WhyPicture
{
    private const int Named = 2;

    /// <summary>Draws the way from the second reading to the first, largest causes first, what is not explained last.</summary>
    /// <param name="a">The first by name, like "run 5".</param>
    /// <param name="b">The second.</param>
    /// <param name="difference">First less second.</param>
    /// <param name="style">Width, theme, units; null: a page, light, Celsius.</param>
    public static Picture Of(string a, string b, RunDifference difference, PictureStyle? style = null)
    {
        style ??= new();
        style.Check();
        var sheet = new Sheet(style, Typesetter.BuiltIn);
        Words words = new(style.Unit, 0);
        string finding = style.Title ?? Finding(a, b, difference, words);
        const string About = "Each bar is what one cause makes of it, warmer to the right. Thin line: where it lies nine times in ten. One after another they lead from the one reading to the other.";
        double top = Heading.Draw(sheet, finding, About) + sheet.Measures.Margin;
        CausePart[] parts = InOrder(difference);
        double bottom = new CauseSteps(sheet, words, Typesetter.Clean(a), Typesetter.Clean(b), difference, parts).Draw(top);
        return new(sheet, Heading.Foot(sheet, bottom, ["First readings as the display showed them. Drawn by Coolproof.", style.Note]), finding,
            $"{About} {string.Join(", ", parts.Select(p => $"{CauseWords.Name(p.Cause)} {words.Signed(p.DifferenceK)}"))}.");
    }

    private static string Finding(string a, string b, RunDifference difference, Words words)
    {
        string said = $"{Typesetter.Clean(a)} read {words.Signed(Math.Abs(difference.ReadK)).TrimStart('+')} {(difference.ReadK < 0 ? "less" : "more")} than {Typesetter.Clean(b)}";
        string[] most = [.. InOrder(difference).Where(p => p.Cause != Cause.Rest).Take(Named).Select(p => $"{CauseWords.Name(p.Cause)} {words.Signed(p.DifferenceK.Mean)}")];
        return char.ToUpperInvariant(said[0]) + said[1..] + (most.Length > 0 ? $": {string.Join(", ", most)}" : "");
    }

    private static CausePart[] InOrder(RunDifference difference) =>
        [.. difference.Parts.OrderBy(p => p.Cause == Cause.Rest).ThenByDescending(p => Math.Abs(p.DifferenceK.Mean))];
}
