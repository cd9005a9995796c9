using Coolproof.Evidence;

namespace Coolproof.Pictures.Drawing;

/// <summary>Ranges shared by all panels of a picture, so that runs compare by eye.</summary>
/// <param name="FromS">First instant, s after halt.</param>
/// <param name="ToS">Last instant, s after halt.</param>
/// <param name="Low">Lowest temperature, in the picture's unit.</param>
/// <param name="High">Highest temperature, in the picture's unit.</param>
internal sealed record PanelRange(double FromS, double ToS, double Low, double High)
{
    /// <summary>Holds every band and every reading of the runs; a blank range where there are none.</summary>
    public static PanelRange Of(IReadOnlyList<RunCurve> runs, Degrees unit)
    {
        double[] times = [.. runs.SelectMany(r => r.SecondsAfterHalt.Concat(r.Readings.Select(x => x.DelayS)).Concat(r.WindingReadings.Select(x => x.DelayS))).Where(double.IsFinite)];
        double[] temperatures = [.. runs.SelectMany(r => r.CanC.Concat(r.WindingC).SelectMany(s => new[] { s.Q05, s.Q95 })
            .Concat(r.Readings.SelectMany(x => new[] { x.ReadC, x.CorrectedC })).Concat(r.WindingReadings.SelectMany(x => new[] { x.ReadC, x.CorrectedC }))).Where(double.IsFinite).Select(unit.Temperature)];
        if (times.Length == 0 || temperatures.Length == 0)
        {
            return new(0, 60, unit.Temperature(20), unit.Temperature(80));
        }

        Scale held = Scale.Holding(temperatures, 0, 1, unit.Difference(8), 0.06);
        double span = Math.Max(times.Max() - times.Min(), 1);
        return new(times.Min() - span * 0.035, times.Max() + span * 0.02, held.Low, held.High);
    }
}

/// <summary>One run after the stop: bands and middles of can and winding, readings as read and as brought back to the end of driving.</summary>
internal sealed class RunPanel(Sheet sheet, RunCurve run, OptionLook look, PanelRange range)
{
    private const int MostRemarkLines = 3;
    private const double TickSpacing = 44;

    private readonly Measures m = sheet.Measures;
    private readonly ThemeColours colours = sheet.Colours;
    private readonly Degrees unit = sheet.Style.Unit;

    /// <summary>Height of name, condition line, plot and labels, px.</summary>
    public static double HeightFor(Sheet sheet, double plotHeight, int remarkLines) => HeadHeight(sheet, remarkLines) + plotHeight + sheet.Measures.SmallSize * 3.4;

    /// <summary>Lines that the remark on a run takes, at most <see cref="MostRemarkLines"/>.</summary>
    public static int RemarkLines(Sheet sheet, RunCurve run, double width) =>
        Remark(run).Length == 0 ? 0 : sheet.Type.Wrap(Remark(run), sheet.Measures.SmallSize, true, width, MostRemarkLines).Count;

    public void Draw(double left, double top, double width, double plotHeight, int remarkLines)
    {
        Head(left, top, width);
        double plotTop = top + HeadHeight(sheet, remarkLines), plotBottom = plotTop + plotHeight;
        double labels = sheet.Type.Width("winding", m.SmallSize, false) + 8;
        var y = new Scale(range.Low, range.High, plotBottom, plotTop);
        double ticks = y.Ticks(TickSpacing).Max(t => sheet.Type.Width(Scale.Label(t), m.SmallSize, false));
        var x = new Scale(range.FromS, range.ToS, left + ticks + 10, left + width - labels);
        Guides(x, y, left, plotTop, plotBottom);
        Curve(x, y, run.WindingC, colours.Quiet, 0.14, 1.3, dashed: true);
        Curve(x, y, run.CanC, look.ColourOn(sheet.Style.Theme), colours.BandOpacity, 2.4, dashed: false);
        EndLabels(x, y);
        Readings(x, y);
    }

    private static double HeadHeight(Sheet sheet, int remarkLines) => sheet.Measures.BodySize * 1.35 + sheet.Measures.SmallSize * (2.9 + 1.32 * remarkLines);

    private static string Remark(RunCurve run) =>
        run.Outlier is not null ? "Fits badly: " + run.Outlier
        : run.Readings.Count > 0 ? ""
        : run.WindingReadings.Count > 0 ? "Read on the winding alone." : "No reading of this run counts.";

    private void Head(double left, double top, double width)
    {
        string name = Typesetter.Clean(run.Option);
        string cut = sheet.Type.Cut(name, m.BodySize, true, width - 26);
        sheet.Mark(look, left + 9, top + m.BodySize * 0.62, 7.5);
        sheet.Text(cut, left + 26, top + m.BodySize * 0.95, m.BodySize, bold: true, whole: cut == name ? null : name);
        double y = sheet.Paragraph(Where(), left, top + m.BodySize * 1.35, width, m.SmallSize, colour: colours.Quiet, maxLines: 1);
        if (Remark(run).Length > 0)
        {
            sheet.Paragraph(Remark(run), left, y, width, m.SmallSize, bold: true, maxLines: MostRemarkLines);
        }
    }

    private string Where() => string.Join(", ", new[] { run.Day, $"run {run.Run}" }.Where(t => t.Length > 0))
        + (double.IsFinite(run.AirC.Q50) ? $", air {new Words(unit, 0).Temperature(run.AirC.Q50)}" : "");

    private void Guides(Scale x, Scale y, double left, double top, double bottom)
    {
        double size = m.SmallSize;
        IReadOnlyList<double> levels = y.Ticks(TickSpacing);
        sheet.Text(unit.Symbol, left, top - size * 0.45, size, colour: colours.Quiet);
        foreach (double level in levels)
        {
            sheet.Line(x.From, y.At(level), x.To, y.At(level), colours.Grid, 1);
            sheet.Text(Scale.Label(level), x.From - 8, y.At(level) + size * 0.36, size, colour: colours.Quiet, hang: Hang.End);
        }

        double stop = run.SecondsAfterHalt.Count > 0 ? run.SecondsAfterHalt[0] : 0;
        Instant(x, stop, top, bottom, colours.Ink);
        sheet.Text("end of driving", x.At(stop), bottom + size * 2.45, size, colour: colours.Ink);
        foreach (double t in x.Ticks(52).Where(t => t >= 0))
        {
            sheet.Line(x.At(t), bottom, x.At(t), bottom + 4, colours.Quiet, 1);
            sheet.Text(t == 0 ? "halt" : $"{Scale.Label(t)} s", x.At(t), bottom + size * 1.25, size, colour: colours.Quiet, hang: Hang.Middle);
        }

        if (stop < 0)
        {
            Instant(x, 0, top, bottom, colours.Grid);
        }
    }

    private void Instant(Scale x, double seconds, double top, double bottom, string ink) =>
        sheet.Line(x.At(seconds), top, x.At(seconds), bottom + 4, ink, 1.2);

    private void Curve(Scale x, Scale y, IReadOnlyList<Summary> over, string colour, double opacity, double width, bool dashed)
    {
        (double T, Summary S)[] points = [.. run.SecondsAfterHalt.Zip(over).Where(p => double.IsFinite(p.Second.Q05) && double.IsFinite(p.Second.Q50) && double.IsFinite(p.Second.Q95))];
        if (points.Length < 2)
        {
            return;
        }

        Spot At(double t, double celsius) => new(x.At(t), y.At(unit.Temperature(celsius)));
        sheet.Polygon([.. points.Select(p => At(p.T, p.S.Q05)), .. points.Reverse().Select(p => At(p.T, p.S.Q95))], colour, 0, opacity);
        sheet.Polyline([.. points.Select(p => At(p.T, p.S.Q50))], dashed ? colour : colours.Ink, width, dashed);
    }

    private void EndLabels(Scale x, Scale y)
    {
        if (run.CanC.Count == 0 || run.WindingC.Count == 0 || !double.IsFinite(run.CanC[^1].Q50 + run.WindingC[^1].Q50))
        {
            return;
        }

        double can = y.At(unit.Temperature(run.CanC[^1].Q50)), winding = y.At(unit.Temperature(run.WindingC[^1].Q50));
        double apart = m.SmallSize * 1.2;
        if (Math.Abs(can - winding) < apart)
        {
            double middle = (can + winding) / 2, way = can >= winding ? apart / 2 : -apart / 2;
            (can, winding) = (middle + way, middle - way);
        }

        sheet.Text("can", x.To + 6, can + m.SmallSize * 0.36, m.SmallSize, bold: true);
        sheet.Text("winding", x.To + 6, winding + m.SmallSize * 0.36, m.SmallSize, colour: colours.Quiet);
    }

    // The can's in the option's colour; the winding's smaller, and in the colour of its curve.
    private void Readings(Scale x, Scale y)
    {
        Readings(x, y, [.. run.Readings.Select(r => new Shot(r.DelayS, r.DelayNoted, r.ReadC, r.CorrectedC))], look, 1);
        Readings(x, y, [.. run.WindingReadings.Select(r => new Shot(r.DelayS, r.DelayNoted, r.ReadC, r.CorrectedC))], new(colours.Quiet, look.Mark), 0.72);
    }

    private void Readings(Scale x, Scale y, IEnumerable<Shot> shots, OptionLook marks, double size)
    {
        double stop = run.SecondsAfterHalt.Count > 0 ? run.SecondsAfterHalt[0] : 0;
        Shot[] readings = [.. shots.Where(r => double.IsFinite(r.ReadC) && double.IsFinite(r.CorrectedC) && double.IsFinite(r.DelayS))];
        foreach (Shot r in readings)
        {
            sheet.Line(x.At(r.DelayS), y.At(unit.Temperature(r.ReadC)), x.At(stop), y.At(unit.Temperature(r.CorrectedC)), colours.Ink, 0.9, dashed: !r.DelayNoted);
        }

        foreach (Shot r in readings)
        {
            sheet.Mark(marks, x.At(r.DelayS), y.At(unit.Temperature(r.ReadC)), 5 * size, hollow: true);
            sheet.Mark(marks, x.At(stop), y.At(unit.Temperature(r.CorrectedC)), 5.5 * size);
        }
    }

    /// <summary>A reading, of can or winding.</summary>
    private readonly record struct Shot(double DelayS, bool DelayNoted, double ReadC, double CorrectedC);
}
