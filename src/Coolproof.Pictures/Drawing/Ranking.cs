using Coolproof.Evidence;
using Coolproof.Evidence.Words;

namespace Coolproof.Pictures.Drawing;

/// <summary>Options coolest first: names, can and winding, differences to the coolest.</summary>
internal sealed class Ranking(Sheet sheet, Verdict verdict)
{
    private const int RowsWithoutLowerAxis = 7;
    private const double LabelGap = 10;
    private const string BetweenValues = ", ";

    private readonly Measures m = sheet.Measures;
    private readonly ThemeColours colours = sheet.Colours;
    private readonly Degrees unit = sheet.Style.Unit;
    private readonly Words words = new(sheet.Style.Unit, verdict.SameWithinK);
    private readonly IReadOnlyList<Standing> standings = Standing.All(verdict, sheet.Style);

    /// <returns>The y below.</returns>
    public double Draw(double y) => m.Narrow ? OneColumn(y) : SideBySide(y);

    /// <summary>The rows in words.</summary>
    public IEnumerable<string> InWords() => standings.Select(s =>
        $"{s.Option.Name}: can {words.Temperature(s.Option.PeakCanC)}, winding {words.Temperature(s.Option.PeakWindingC)}; {BesideCoolest(s).First}{BesideCoolest(s).Then}.");

    private double Leading => m.BodySize * 1.3;

    private double BarPitch => m.SmallSize * (m.Narrow ? 1.45 : 1.75);

    private double ValuePitch => m.SmallSize * 1.4;

    private double HottestBar => unit.Temperature(standings.Max(s => Math.Max(s.Option.PeakCanC.Q95, s.Option.PeakWindingC.Q95)));

    private bool HasDifferences => standings.Any(s => s.HotterK is not null);

    private double OneColumn(double y)
    {
        double width = m.Right - m.Left;
        y = Heading.Section(sheet, m.Left, y, width, "At the end of hard driving", HowToRead);
        double[] heights = [.. standings.Select(s => NameLines(s, width).Count * Leading + (BothFit(s, width) ? 1 : 2) * ValuePitch + 2 * BarPitch + 16)];
        y = Rows(y + m.SmallSize + 14, standings, heights, Temperatures(m.Left + 4, m.Right, "can", "winding"), HottestBar, (s, top, scale) =>
        {
            double below = ValuesInWords(s, Name(s, m.Left, top, width), width);
            TwoBars(s, scale, below + BarPitch * 0.5, "can", "winding");
        });
        return HasDifferences ? DifferencesBelow(y + m.Margin * 1.6) : y;
    }

    private double DifferencesBelow(double y)
    {
        double width = m.Right - m.Left;
        Scale scale = Differences(m.Left + 4, m.Right - 14);
        y = Heading.Section(sheet, m.Left, y, width, DifferenceHead, DifferenceRemark);
        Standing[] others = [.. standings.Where(s => s.HotterK is not null)];
        double[] heights = [.. others.Select(s => NameLines(s, width).Count * Leading + BesideLines(s, width) * ValuePitch + BarPitch + 24)];
        double top = y + m.SmallSize * 2.4 + 14;
        SameLabel(scale, top, m.Left, m.Right);
        return Rows(top, others, heights, scale, double.PositiveInfinity, (s, rowTop, _) =>
        {
            double below = Name(s, m.Left, rowTop, width);
            Beside(s, m.Left, below + m.SmallSize, width);
            DifferenceBar(s, scale, below + BesideLines(s, width) * ValuePitch + BarPitch * 0.5 + 4);
        });
    }

    private double SideBySide(double y)
    {
        double content = m.Right - m.Left;
        double nameWidth = content * 0.21;
        double left = m.Left + nameWidth + 24;
        double middle = HasDifferences ? m.Left + content * 0.645 : m.Right;
        double right = middle + 40;
        double besideHead = HasDifferences ? Heading.Section(sheet, right, y, m.Right - right, DifferenceHead, DifferenceRemark) : y;
        y = Math.Max(besideHead, Heading.Section(sheet, left, y, middle - left, "At the end of hard driving", HowToRead));
        double[] heights = [.. standings.Select(s => Math.Max(NameLines(s, nameWidth).Count * Leading + ValuePitch, 2 * BarPitch + 4 + (BesideLines(s, m.Right - right) - 1) * ValuePitch) + 18)];
        double top = y + m.SmallSize * 2.4 + 14;
        Scale differences = Differences(right + 4, m.Right - 14);
        if (HasDifferences)
        {
            SameLabel(differences, top, right, m.Right);
            Axis.Upright(sheet, differences, top, top + heights.Sum(), standings.Count > RowsWithoutLowerAxis, unit.Symbol);
        }

        return Rows(top, standings, heights, Temperatures(left + 4, middle, standings.Select(CanLabel), standings.Select(WindingLabel)), HottestBar, (s, rowTop, scale) =>
        {
            double below = Name(s, m.Left, rowTop, nameWidth);
            sheet.Text($"{Words.Count(s.Option.Runs, "run")}, {Words.Count(s.Option.Readings, "reading")}", m.Left + 26, below + m.SmallSize, m.SmallSize, colour: colours.Quiet);
            TwoBars(s, scale, rowTop + BarPitch * 0.5, CanLabel(s), WindingLabel(s));
            if (s.HotterK is not null)
            {
                DifferenceBar(s, differences, rowTop + BarPitch * 0.5);
            }

            if (HasDifferences)
            {
                Beside(s, right, rowTop + BarPitch * 1.6 + m.SmallSize * 0.36, m.Right - right);
            }
        });
    }

    private const string HowToRead = "Mark: the middle. Thick: half of the chances. Thin: nine tenths.";

    private const string DifferenceHead = "How much hotter than the coolest";

    private string DifferenceRemark => $"The can beside that of {Typesetter.Clean(Standing.Coolest(verdict)?.Name ?? "")}.";

    private double Rows(double top, IReadOnlyList<Standing> rows, double[] heights, Scale scale, double lastTick, Action<Standing, double, Scale> row)
    {
        double bottom = top + heights.Sum();
        bool below = rows.Count > RowsWithoutLowerAxis;
        Axis.Upright(sheet, scale, top, bottom, below, unit.Symbol, lastTick);
        for (int i = 0; i < rows.Count; i++)
        {
            sheet.Line(m.Left, top, m.Right, top, colours.Grid, 1);
            row(rows[i], top + 10, scale);
            top += heights[i];
        }

        return bottom + (below ? m.SmallSize + 10 : 4);
    }

    private IReadOnlyList<string> NameLines(Standing s, double width) => sheet.Type.Wrap(s.Option.Name, m.BodySize, true, width - 26, 2);

    private double Name(Standing s, double x, double top, double width)
    {
        sheet.Mark(s.Look, x + 9, top + m.BodySize * 0.62, 7.5);
        return sheet.Paragraph(s.Option.Name, x + 26, top, width - 26, m.BodySize, bold: true, maxLines: 2, leading: 1.3);
    }

    private void TwoBars(Standing s, Scale scale, double y, string can, string winding)
    {
        Interval.Loud(sheet, scale, y, s.Option.PeakCanC, unit.Temperature, s.Look);
        sheet.Text(can, scale.At(unit.Temperature(s.Option.PeakCanC.Q95)) + LabelGap, y + m.SmallSize * 0.36, m.SmallSize, bold: true);
        Interval.Quiet(sheet, scale, y + BarPitch, s.Option.PeakWindingC, unit.Temperature);
        sheet.Text(winding, scale.At(unit.Temperature(s.Option.PeakWindingC.Q95)) + LabelGap, y + BarPitch + m.SmallSize * 0.36, m.SmallSize, colour: colours.Quiet);
    }

    private string CanLabel(Standing s) => "can " + words.Temperature(s.Option.PeakCanC);

    private string WindingLabel(Standing s) => "winding " + words.Temperature(s.Option.PeakWindingC);

    private bool BothFit(Standing s, double width) =>
        sheet.Type.Width(CanLabel(s), m.SmallSize, true) + sheet.Type.Width(BetweenValues + WindingLabel(s), m.SmallSize, false) <= width;

    /// <returns>The y below.</returns>
    private double ValuesInWords(Standing s, double top, double width)
    {
        if (BothFit(s, width))
        {
            sheet.BoldThenQuiet(CanLabel(s), BetweenValues + WindingLabel(s), m.Left, top + m.SmallSize, m.SmallSize);
            return top + ValuePitch;
        }

        sheet.Text(CanLabel(s), m.Left, top + m.SmallSize, m.SmallSize, bold: true);
        sheet.Text(WindingLabel(s), m.Left, top + ValuePitch + m.SmallSize, m.SmallSize, colour: colours.Quiet);
        return top + 2 * ValuePitch;
    }

    private void Beside(Standing s, double x, double baseline, double width)
    {
        (string first, string then) = BesideCoolest(s);
        if (BesideLines(s, width) == 1)
        {
            sheet.BoldThenQuiet(first, then, x, baseline, m.SmallSize);
            return;
        }

        sheet.Text(first, x, baseline, m.SmallSize, bold: true);
        sheet.Text(then.TrimStart(',', ':', ' '), x, baseline + ValuePitch, m.SmallSize, colour: colours.Quiet);
    }

    private int BesideLines(Standing s, double width)
    {
        (string first, string then) = BesideCoolest(s);
        return sheet.Type.Width(first, m.SmallSize, true) + sheet.Type.Width(then, m.SmallSize, false) <= width ? 1 : 2;
    }

    private (string First, string Then) BesideCoolest(Standing s) => s.HotterK is { } k
        ? words.Call(s.Call, k, s.ProbabilityHotter)
        : standings.Count == 1 ? ("nothing to compare with yet", "")
        : s.Option == Standing.Coolest(verdict) ? ("most likely the coolest", $", {Odds.Say(s.Option.ProbabilityCoolest)}") : ("not compared", "");

    /// <summary>An option's difference on its own piece of the band, with zero through it; the words stay on clear ground.</summary>
    private void DifferenceBar(Standing s, Scale scale, double y)
    {
        double low = scale.At(unit.Difference(-verdict.SameWithinK)), high = scale.At(unit.Difference(verdict.SameWithinK));
        double top = y - BarPitch * 0.5 - 3, bottom = y + BarPitch * 0.5 + 3;
        sheet.Box(low, top, high, bottom, colours.Band);
        sheet.Line(low, top, low, bottom, colours.Quiet, 1);
        sheet.Line(high, top, high, bottom, colours.Quiet, 1);
        sheet.Line(scale.At(0), top, scale.At(0), bottom, colours.Ink, 1.6);
        Interval.Loud(sheet, scale, y, s.HotterK!, unit.Difference, s.Look);
    }

    /// <summary>Names the band above its axis, with a bracket as wide as the band.</summary>
    private void SameLabel(Scale scale, double top, double left, double right)
    {
        double low = scale.At(unit.Difference(-verdict.SameWithinK)), high = scale.At(unit.Difference(verdict.SameWithinK));
        double half = sheet.Type.Width(words.Same, m.SmallSize, false) / 2, y = top - m.SmallSize - 9;
        sheet.Box(low, y - 4, high, y, colours.Band, 0.8);
        sheet.Text(words.Same, Math.Clamp((low + high) / 2, left + half, right - half), y - 9, m.SmallSize, colour: colours.Quiet, hang: Hang.Middle);
    }

    private Scale Temperatures(double from, double to, string can, string winding) =>
        Temperatures(from, to, standings.Select(_ => can), standings.Select(_ => winding));

    /// <summary>The scale leaves room on its right for the words at the end of each bar.</summary>
    private Scale Temperatures(double from, double to, IEnumerable<string> can, IEnumerable<string> winding)
    {
        (double End, double Label)[] ends =
        [
            .. standings.Zip(can, (s, label) => (unit.Temperature(s.Option.PeakCanC.Q95), sheet.Type.Width(label, m.SmallSize, true) + LabelGap)),
            .. standings.Zip(winding, (s, label) => (unit.Temperature(s.Option.PeakWindingC.Q95), sheet.Type.Width(label, m.SmallSize, false) + LabelGap)),
        ];
        IEnumerable<double> lows = standings.SelectMany(s => new[] { s.Option.PeakCanC.Q05, s.Option.PeakWindingC.Q05 }).Select(unit.Temperature);
        Scale held = Scale.Holding([.. lows, .. ends.Select(e => e.End)], from, to, unit.Difference(8), 0.02);
        double pxPerDegree = Math.Min((to - from) / (held.High - held.Low), ends.Min(e => Math.Max(40, to - from - e.Label) / (e.End - held.Low)));
        return held with { High = held.Low + (to - from) / pxPerDegree };
    }

    private Scale Differences(double from, double to) => Scale.Holding(
        standings.Where(s => s.HotterK is not null).SelectMany(s => new[] { s.HotterK!.Q05, s.HotterK!.Q95 })
            .Concat([0, -1.25 * verdict.SameWithinK, 1.25 * verdict.SameWithinK]).Select(unit.Difference).DefaultIfEmpty(0), from, to, unit.Difference(6));
}
