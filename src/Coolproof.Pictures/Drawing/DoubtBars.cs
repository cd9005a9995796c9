using Coolproof.Evidence;
using Coolproof.Evidence.Words;

namespace Coolproof.Pictures.Drawing;

/// <summary>Where the doubt comes from: bars from zero, largest first, each with its words and its share.</summary>
internal static class DoubtBars
{
    /// <returns>The y below.</returns>
    public static double Draw(Sheet sheet, Verdict verdict, double y)
    {
        Measures m = sheet.Measures;
        DoubtShare[] shares = Sorted(verdict);
        double largest = Math.Max(shares.Max(s => s.Share), 1e-9);
        double words = shares.Max(s => sheet.Type.Width(Plain(s.Source), m.BodySize, false));
        bool above = m.Narrow || words > (m.Right - m.Left) * 0.4;
        double from = above ? m.Left : m.Left + words + 20;
        double full = m.Right - from - sheet.Type.Width("under 1 %", m.BodySize, true) - 14;
        foreach (DoubtShare share in shares)
        {
            if (above)
            {
                y = sheet.Paragraph(Plain(share.Source), m.Left, y, m.Right - m.Left, m.BodySize);
            }
            else
            {
                sheet.Text(Plain(share.Source), from - 20, y + 13 + m.BodySize * 0.1, m.BodySize, hang: Hang.End);
            }

            double end = from + Math.Max(2, full * share.Share / largest);
            sheet.Box(from, y + 1, end, y + 15, sheet.Colours.Quiet);
            sheet.Text(Words.Percent(share.Share), end + 9, y + 8 + m.BodySize * 0.36, m.BodySize, bold: true);
            y += above ? 26 : 29;
        }

        return y;
    }

    /// <summary>The finding, as a sentence.</summary>
    public static string Finding(Verdict verdict)
    {
        DoubtShare[] shares = Sorted(verdict);
        return shares.Length == 0 ? "There is no doubt to share out yet: it takes two options"
            : $"{(shares[0].Share >= 0.5 ? "Most of the doubt" : "The largest part of the doubt")} comes from {Plain(shares[0].Source)}: {Words.Percent(shares[0].Share)}";
    }

    /// <summary>What the doubt is about.</summary>
    public static string About(Verdict verdict) => verdict.MainPair is { } pair
        ? $"Shares of the doubt in the difference between {pair.A} and {pair.B}." : "";

    public static IEnumerable<string> InWords(Verdict verdict) => Sorted(verdict).Select(s => $"{Plain(s.Source)} {Words.Percent(s.Share)}");

    private static DoubtShare[] Sorted(Verdict verdict) => [.. verdict.Doubt.OrderByDescending(s => s.Share)];

    private static string Plain(string source) => SourceOfDoubt.Of(source).Plain;
}
