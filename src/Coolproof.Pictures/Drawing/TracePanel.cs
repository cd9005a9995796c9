using Coolproof.Traces.Import;

namespace Coolproof.Pictures.Drawing;

/// <summary>One channel of a trace over time.</summary>
internal sealed class TracePanel(Sheet sheet, DrawnChannel channel, IReadOnlyList<DrawnRun> runs, Func<double, string> clock)
{
    // The same on all panels, so that they stand one below the other.
    private const double RoomForTicks = 44;

    private readonly Measures m = sheet.Measures;
    private readonly ThemeColours colours = sheet.Colours;
    private readonly bool warm = channel.Measures == Measured.Temperature;

    /// <summary>Draws from the top down.</summary>
    /// <returns>The y below.</returns>
    public double Draw(double top, double height, bool last)
    {
        double size = m.SmallSize, plotTop = top + size * 2.9, bottom = plotTop + height;
        Scale x = new(channel.Drawn.FromUs / 1e6, channel.Drawn.ToUs / 1e6, m.Left + RoomForTicks, m.Right);
        double[] values = [.. channel.Drawn.Least.Concat(channel.Drawn.Most).Where(double.IsFinite).Select(Shown)];
        sheet.Text($"{Typesetter.Clean(channel.Name)}, {(warm ? sheet.Style.Unit.Symbol : channel.Unit)}".TrimEnd(' ', ','), m.Left, top + size, size, bold: true);
        Runs(x, plotTop, bottom);
        if (values.Length == 0)
        {
            sheet.Text("nothing was logged here", x.From + 8, plotTop + height / 2, size, colour: colours.Quiet);
            return bottom + size;
        }
        Scale y = Scale.Holding(values, 0, 1, warm ? sheet.Style.Unit.Difference(5) : 1e-6, 0.06) with { From = bottom, To = plotTop };
        foreach (double level in y.Ticks(44))
        {
            sheet.Line(x.From, y.At(level), x.To, y.At(level), colours.Grid, 1);
            sheet.Text(Scale.Label(level), x.From - 6, y.At(level) + size * 0.36, size, colour: colours.Quiet, hang: Hang.End);
        }
        Pieces(x, y);
        if (!last) return bottom + size * 0.9;
        int marks = m.Narrow ? 3 : 6;
        for (int i = 0; i <= marks; i++)
        {
            double at = x.Low + ((x.High - x.Low) * i / marks);
            sheet.Line(x.At(at), bottom, x.At(at), bottom + 4, colours.Quiet, 1);
            sheet.Text(clock(at), x.At(at), bottom + size * 1.4, size, colour: colours.Quiet, hang: i == 0 ? Hang.Start : i == marks ? Hang.End : Hang.Middle);
        }
        return bottom + size * 2.4;
    }

    private double Shown(double own) => warm ? sheet.Style.Unit.Temperature(own) : own;

    private void Runs(Scale x, double top, double bottom)
    {
        double free = double.NegativeInfinity;
        foreach (DrawnRun run in runs.OrderBy(run => run.GoS))
        {
            double from = Math.Max(x.From, x.At(run.GoS)), to = Math.Min(x.To, x.At(run.StopS ?? run.GoS));
            if (x.At(run.StopS ?? run.GoS) < x.From || from > x.To) continue;
            if (to > from) sheet.Box(from, top, to, bottom, colours.Band);
            sheet.Line(from, top, from, bottom, colours.Ink, 1);
            if (run.HaltS is { } halt && x.At(halt) >= x.From && x.At(halt) <= x.To) sheet.Line(x.At(halt), top, x.At(halt), bottom, colours.Ink, 1.4, dashed: true);
            // Where runs stand too close for their names, every other one is named.
            if (from < free) continue;
            double width = sheet.Type.Width(run.Label, m.SmallSize, false);
            bool atEnd = from + width > x.To;
            sheet.Text(run.Label, atEnd ? x.To : from, top - m.SmallSize * 0.4, m.SmallSize, hang: atEnd ? Hang.End : Hang.Start);
            free = from + width + 8;
        }
    }

    // A gap in the trace is a gap in the picture.
    private void Pieces(Scale x, Scale y)
    {
        int steps = channel.Drawn.Least.Count;
        double At(int step) => x.From + ((step + 0.5) / steps * (x.To - x.From));
        for (int from = 0; from < steps;)
        {
            if (double.IsNaN(channel.Drawn.Least[from]))
            {
                from++;
                continue;
            }
            int to = from;
            // Steps that are shorter than the logger's are empty in between: joined up to four.
            for (int ahead = from; ahead < steps && ahead - to <= 4; ahead++) if (!double.IsNaN(channel.Drawn.Least[ahead])) to = ahead;
            int[] said = [.. Enumerable.Range(from, to - from + 1).Where(step => !double.IsNaN(channel.Drawn.Least[step]))];
            Spot[] low = [.. said.Select(step => new Spot(At(step), y.At(Shown(channel.Drawn.Least[step]))))], high = [.. said.Select(step => new Spot(At(step), y.At(Shown(channel.Drawn.Most[step]))))];
            if (said.Length > 1)
            {
                sheet.Polygon([.. low, .. high.Reverse()], colours.Quiet, 0, 0.45);
                sheet.Polyline([.. low.Zip(high, (a, b) => new Spot(a.X, (a.Y + b.Y) / 2))], colours.Ink, 1.5);
            }
            else sheet.Line(low[0].X - 1, low[0].Y, low[0].X + 1, high[0].Y, colours.Ink, 1.5);
            from = to + 1;
        }
    }
}
