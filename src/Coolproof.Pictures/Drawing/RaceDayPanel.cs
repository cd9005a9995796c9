using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;

namespace Coolproof.Pictures.Drawing;

/// <summary>Bands and middles of can, winding and magnet over a race day, its races shaded, its limits as lines with their names.</summary>
internal sealed class RaceDayPanel(Sheet sheet, OptionForecast forecast, RaceScenario scenario, OptionLook look)
{
    private const double TickSpacing = 44;

    private readonly Measures m = sheet.Measures;
    private readonly ThemeColours colours = sheet.Colours;
    private readonly Degrees unit = sheet.Style.Unit;
    private readonly RaceLimit[] limits = [.. forecast.Limits.Select(l => l.Limit).OrderByDescending(l => l.LimitC)];

    /// <summary>Draws from the top down.</summary>
    /// <returns>The y below the labels of the times.</returns>
    public double Draw(double top, double height)
    {
        double plotTop = top + m.SmallSize * 2.6, plotBottom = plotTop + height;
        Scale held = Scale.Holding(forecast.CanC.Concat(forecast.WindingC).Concat(forecast.MagnetC).SelectMany(s => new[] { s.Q05, s.Q95 }).Concat(limits.Select(l => l.LimitC)).Select(unit.Temperature), 0, 1, unit.Difference(20), 0.07);
        Scale y = held with { From = plotBottom, To = plotTop };
        double ticks = y.Ticks(TickSpacing).Max(t => sheet.Type.Width(Scale.Label(t), m.SmallSize, false));
        Scale x = new(0, forecast.Seconds[^1] / 60, m.Left + ticks + 10, m.Right - sheet.Type.Width("winding", m.SmallSize, false) - 8);
        Races(x, plotTop, plotBottom);
        Guides(x, y, top, plotBottom);
        Curve(x, y, forecast.WindingC, colours.Quiet, 0.14, 1.6, dashed: true);
        Curve(x, y, forecast.MagnetC, colours.Quiet, 0.07, 1, dashed: false);
        Curve(x, y, forecast.CanC, look.ColourOn(sheet.Style.Theme), colours.BandOpacity, 2.4, dashed: false);
        Limits(x, y);
        EndLabels(x, y);
        return plotBottom + m.SmallSize * 2.4;
    }

    private void Races(Scale x, double top, double bottom)
    {
        double periodMin = forecast.Seconds[^1] / 60 / scenario.Races;
        bool whole = sheet.Type.Width($"race {scenario.Races}", m.SmallSize, false) + 6 < x.At(periodMin) - x.At(0);
        for (int race = 0; race < scenario.Races; race++)
        {
            double from = x.At(race * periodMin);
            sheet.Box(from, top, x.At(race * periodMin + scenario.RaceS / 60), bottom, colours.Band);
            sheet.Text(whole ? $"race {race + 1}" : $"{race + 1}", from, top - m.SmallSize * 0.45, m.SmallSize);
        }
    }

    private void Guides(Scale x, Scale y, double top, double bottom)
    {
        double size = m.SmallSize;
        sheet.Text(unit.Symbol, m.Left, top + size, size, colour: colours.Quiet);
        foreach (double level in y.Ticks(TickSpacing))
        {
            sheet.Line(x.From, y.At(level), x.To, y.At(level), colours.Grid, 1);
            sheet.Text(Scale.Label(level), x.From - 8, y.At(level) + size * 0.36, size, colour: colours.Quiet, hang: Hang.End);
        }

        foreach (double t in x.Ticks(64))
        {
            sheet.Line(x.At(t), bottom, x.At(t), bottom + 4, colours.Quiet, 1);
            sheet.Text(t == 0 ? "start" : $"{Scale.Label(t)} min", x.At(t), bottom + size * 1.25, size, colour: colours.Quiet, hang: Hang.Middle);
        }
    }

    private void Curve(Scale x, Scale y, IReadOnlyList<Summary> over, string colour, double opacity, double width, bool dashed)
    {
        (double Min, Summary S)[] points = [.. forecast.Seconds.Select(s => s / 60).Zip(over)];
        Spot At(double minutes, double celsius) => new(x.At(minutes), y.At(unit.Temperature(celsius)));
        sheet.Polygon([.. points.Select(p => At(p.Min, p.S.Q05)), .. points.Reverse().Select(p => At(p.Min, p.S.Q95))], colour, 0, opacity);
        sheet.Polyline([.. points.Select(p => At(p.Min, p.S.Q50))], colour == colours.Quiet ? colour : colours.Ink, width, dashed);
    }

    // From the top down each name stands above its line, where it would lie over the one before beneath it, or as far beneath as it takes.
    private void Limits(Scale x, Scale y)
    {
        double before = double.NegativeInfinity, apart = m.SmallSize * 1.3;
        foreach (RaceLimit limit in limits)
        {
            double at = y.At(unit.Temperature(limit.LimitC)), above = at - m.SmallSize * 0.4, beneath = at + m.SmallSize * 1.1;
            before = above >= before + apart ? above : Math.Max(beneath, before + apart);
            sheet.Line(x.From, at, x.To, at, colours.Ink, 1.6);
            sheet.Text($"{limit.PartName} limit {new Words(unit, 0).Temperature(limit.LimitC)}", x.To - 4, before, m.SmallSize, hang: Hang.End);
        }
    }

    private void EndLabels(Scale x, Scale y)
    {
        (string Name, double At)[] ends = [.. new[] { ("can", forecast.CanC), ("winding", forecast.WindingC), ("magnet", forecast.MagnetC) }
            .Select(part => (Name: part.Item1, At: y.At(unit.Temperature(part.Item2[^1].Q50)))).OrderBy(end => end.At)];
        double apart = m.SmallSize * 1.2, middle = ends.Average(end => end.At);
        double[] put = [.. ends.Select(end => end.At)];
        for (int i = 1; i < put.Length; i++) put[i] = Math.Max(put[i], put[i - 1] + apart);
        double back = put.Average() - middle;
        for (int i = 0; i < put.Length; i++)
            sheet.Text(ends[i].Name, x.To + 6, put[i] - back + m.SmallSize * 0.36, m.SmallSize, bold: ends[i].Name == "can", colour: ends[i].Name == "can" ? null : colours.Quiet);
    }
}
