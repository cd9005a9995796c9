using Coolproof.Evidence.Causes;
using Coolproof.Evidence.Words;

namespace Coolproof.Pictures.Drawing;

/// <summary>Steps from one reading to another, one row a cause: where it begins, its bar, its interval about its end, and its words.</summary>
internal sealed class CauseSteps(Sheet sheet, Words words, string a, string b, RunDifference difference, IReadOnlyList<CausePart> parts)
{
    // Warmer and cooler: vermillion and blue of the options' palette; the direction and the sign say the same.
    private static readonly string Warmer = OptionLook.Palette[6], Cooler = OptionLook.Palette[5];
    private const double BarHalf = 9, LeastBar = 2, WordsShare = 0.34;

    private readonly Measures m = sheet.Measures;
    private readonly Degrees unit = sheet.Style.Unit;

    private double Row => m.Narrow ? m.BodySize * 1.35 + 2 * BarHalf + 14 : 2 * m.BodySize * 1.3 + 12;

    private double BarFrom => m.Narrow ? m.Left + 4 : m.Left + (m.Right - m.Left) * WordsShare + 24;

    /// <returns>The y below.</returns>
    public double Draw(double top)
    {
        double[] ends = Ends();
        Scale scale = Scale.Holding(
            [.. Reached(ends).Select(unit.Temperature), unit.Temperature(difference.ReadA), unit.Temperature(difference.ReadB)], BarFrom, m.Right - 8, unit.Difference(4));
        top += m.SmallSize + 10;
        double bottom = top + Row * (parts.Count + 2);
        Axis.Upright(sheet, scale, top, bottom, alsoBelow: true, unit.Symbol);
        End(scale, top, b, difference.ReadB);
        for (int i = 0; i < parts.Count; i++)
            Step(scale, top + Row * (i + 1), parts[i], ends[i], ends[i + 1]);
        End(scale, top + Row * (parts.Count + 1), a, difference.ReadA);
        return bottom + m.SmallSize + 16;
    }

    // Reading reached after each part, from the second run's on, °C.
    private double[] Ends()
    {
        double[] ends = new double[parts.Count + 1];
        ends[0] = difference.ReadB;
        for (int i = 0; i < parts.Count; i++)
            ends[i + 1] = ends[i] + parts[i].DifferenceK.Mean;
        return ends;
    }

    private IEnumerable<double> Reached(double[] ends) => parts.SelectMany((p, i) => new[] { ends[i], ends[i] + p.DifferenceK.Q05, ends[i] + p.DifferenceK.Q95 });

    private void End(Scale scale, double top, string name, double readC)
    {
        sheet.Line(m.Left, top, m.Right, top, sheet.Colours.Grid, 1);
        double y = Said(top, name, $"read {words.Reading(readC)}"), x = scale.At(unit.Temperature(readC));
        sheet.Polygon([new(x, y - BarHalf), new(x + BarHalf * 0.7, y), new(x, y + BarHalf), new(x - BarHalf * 0.7, y)], sheet.Colours.Ink);
    }

    private void Step(Scale scale, double top, CausePart part, double fromC, double toC)
    {
        sheet.Line(m.Left, top, m.Right, top, sheet.Colours.Grid, 1);
        double y = Said(top, CauseWords.Name(part.Cause), words.Signed(part.DifferenceK)), from = scale.At(unit.Temperature(fromC)), to = scale.At(unit.Temperature(toC));
        double left = Math.Min(from, to), right = Math.Max(Math.Max(from, to), left + LeastBar);
        string fill = part.Cause == Cause.Rest ? sheet.Colours.Band : part.DifferenceK.Mean >= 0 ? Warmer : Cooler;
        sheet.Box(left, y - BarHalf, right, y + BarHalf, fill, 1.1);
        double low = scale.At(unit.Temperature(fromC + part.DifferenceK.Q05)), high = scale.At(unit.Temperature(fromC + part.DifferenceK.Q95));
        // Paper under the line: it is seen on its own bar too.
        sheet.Line(low, y, high, y, sheet.Colours.Paper, 4.5);
        sheet.Line(low, y, high, y, sheet.Colours.Ink, 2);
        sheet.Line(low, y - 4, low, y + 4, sheet.Colours.Ink, 1.5);
        sheet.Line(high, y - 4, high, y + 4, sheet.Colours.Ink, 1.5);
    }

    // Words of a row; returns the y of its bar.
    private double Said(double top, string name, string value)
    {
        double baseline = top + m.BodySize * 1.2;
        if (m.Narrow)
        {
            IReadOnlyList<string> fits = sheet.Type.Wrap(name, m.BodySize, true, m.Right - m.Left - sheet.Type.Width("  " + value, m.BodySize, false), 1);
            sheet.BoldThenQuiet(fits[0], "  " + value, m.Left, baseline, m.BodySize);
            return top + m.BodySize * 1.35 + BarHalf + 6;
        }
        IReadOnlyList<string> line = sheet.Type.Wrap(name, m.BodySize, true, BarFrom - 24 - m.Left, 1);
        sheet.Text(line[0], m.Left, baseline, m.BodySize, bold: true, whole: line[0] == name ? null : name);
        sheet.Text(value, m.Left, baseline + m.BodySize * 1.3, m.BodySize, colour: sheet.Colours.Quiet);
        return top + Row / 2;
    }
}
