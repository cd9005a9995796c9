using System.Globalization;
using Coolproof.Evidence.Forecasts;

namespace Coolproof.Pictures.Drawing;

/// <summary>Temperatures over pinions, one line an option, with the limit and a list of what each option's quickest accepted pinion is.</summary>
internal sealed class GearPanel(Sheet sheet, IReadOnlyList<GearLine> options, RaceLimit limit)
{
    private const double TickSpacing = 44, AboveLimitK = 25, LargeMark = 8, SmallMark = 3.6, Apart = 5;

    private readonly Measures m = sheet.Measures;
    private readonly ThemeColours colours = sheet.Colours;
    private readonly Degrees unit = sheet.Style.Unit;

    /// <summary>Draws from the top down.</summary>
    /// <returns>The y below the list of options.</returns>
    public double Draw(double top, double height)
    {
        double plotTop = top + m.SmallSize * 1.8, plotBottom = plotTop + height;
        double highest = options.Where(o => o.Best is not null).Select(o => o.Spots[o.Best!.Value].PeakC.Q95).Append(limit.LimitC + AboveLimitK).Max();
        IEnumerable<double> held = options.SelectMany(o => o.Spots.Select(s => s.PeakC.Q50).Concat(o.Best is { } b ? [o.Spots[b].PeakC.Q05] : [])).Where(c => c <= highest).Append(limit.LimitC);
        Scale fitted = Scale.Holding(held.Concat(options.Where(o => o.Best is not null).Select(o => o.Spots[o.Best!.Value].PeakC.Q95)).Select(unit.Temperature), 0, 1, unit.Difference(20), 0.06);
        Scale y = fitted with { From = plotBottom, To = plotTop };
        double ticks = y.Ticks(TickSpacing).Max(t => sheet.Type.Width(Scale.Label(t), m.SmallSize, false)), left = m.Left + Math.Max(ticks, sheet.Type.Width("lap s", m.SmallSize, false)) + 12;
        IReadOnlyList<GearSpot> spots = options[0].Spots;
        double air = spots.Count > 1 ? 14 : 0, right = m.Narrow ? m.Right - 14 : m.Right - 260;
        Scale x = spots.Count > 1 ? new(spots[0].Pinion, spots[^1].Pinion, left + air, right) : new(spots[0].Pinion - 1, spots[0].Pinion + 1, left, right);
        LabelRoom room = new(sheet, left, right + (m.Narrow ? 14 : 24));
        Guides(y, left, right, top, room);
        double bottom = Pinions(x, plotBottom);
        for (int o = 0; o < options.Count; o++) Line(options[o], Look(o), x, y);
        for (int o = 0; o < options.Count; o++) Best(options[o], Look(o), x, y, room);
        return m.Narrow ? List(bottom + m.SmallSize * 0.6, m.Left, m.Right) : Math.Max(bottom, List(plotTop, right + 28, m.Right));
    }

    private OptionLook Look(int option) => sheet.Style.Looks?.GetValueOrDefault(options[option].Option) ?? OptionLook.At(option);

    private void Guides(Scale y, double left, double right, double top, LabelRoom room)
    {
        double size = m.SmallSize;
        sheet.Text(unit.Symbol, m.Left, top + size, size, colour: colours.Quiet);
        foreach (double level in y.Ticks(TickSpacing))
        {
            sheet.Line(left, y.At(level), right, y.At(level), colours.Grid, 1);
            sheet.Text(Scale.Label(level), left - 8, y.At(level) + size * 0.36, size, colour: colours.Quiet, hang: Hang.End);
        }

        double at = y.At(unit.Temperature(limit.LimitC));
        sheet.Line(left, at, right, at, colours.Ink, 1.6);
        room.Put($"{limit.PartName} limit {new Words(unit, 0).Temperature(limit.LimitC)}", size, false, (left + 4, at - size * 0.4, Hang.Start), (left + 4, at + size * 1.1, Hang.Start));
    }

    // Teeth, and the lap time that goes with them beneath; as many as there is room for.
    private double Pinions(Scale x, double bottom)
    {
        double size = m.SmallSize, first = bottom + size * 1.35, second = first + size * 1.3;
        IReadOnlyList<GearSpot> spots = options[0].Spots;
        double apart = spots.Count > 1 ? (x.To - x.From) / (spots.Count - 1) : 1e3, wide = spots.Max(s => sheet.Type.Width(Lap(s), size, false)) + 8;
        int every = Math.Max(1, (int)Math.Ceiling(wide / apart));
        sheet.Text("teeth", m.Left, first, size, colour: colours.Quiet);
        sheet.Text("lap s", m.Left, second, size, colour: colours.Quiet);
        for (int i = 0; i < spots.Count; i++)
        {
            double at = x.At(spots[i].Pinion);
            sheet.Line(at, bottom, at, bottom + 4, colours.Quiet, 1);
            if (i % every != 0) continue;
            sheet.Text(spots[i].Pinion.ToString(CultureInfo.InvariantCulture), at, first, size, hang: Hang.Middle);
            sheet.Text(Lap(spots[i]), at, second, size, colour: colours.Quiet, hang: Hang.Middle);
        }

        return second + size * 0.8;
    }

    private void Line(GearLine option, OptionLook look, Scale x, Scale y)
    {
        string colour = look.ColourOn(sheet.Style.Theme);
        Spot At(GearSpot s) => new(x.At(s.Pinion), y.At(unit.Temperature(s.PeakC.Q50)));
        for (int i = 1; i < option.Spots.Count; i++)
        {
            (Spot from, Spot to) = (At(option.Spots[i - 1]), At(option.Spots[i]));
            if (from.Y < y.To) continue;
            bool cut = to.Y < y.To;
            Spot end = cut ? new(from.X + (to.X - from.X) * (from.Y - y.To) / (from.Y - to.Y), y.To) : to;
            bool accepted = option.Spots[i - 1].Accepted && option.Spots[i].Accepted;
            sheet.Line(from.X, from.Y, end.X, end.Y, colour, accepted ? 2.2 : 1.4, dashed: !accepted);
        }

        foreach (GearSpot spot in option.Spots)
            if (At(spot) is var at && at.Y >= y.To) sheet.Mark(look, at.X, at.Y, SmallMark, hollow: !spot.Accepted);
    }

    private void Best(GearLine option, OptionLook look, Scale x, Scale y, LabelRoom room)
    {
        if (option.Best is not { } best) return;
        GearSpot spot = option.Spots[best];
        double at = x.At(spot.Pinion), middle = y.At(unit.Temperature(spot.PeakC.Q50));
        // Ranges of options with the same pinion stand side by side.
        GearLine[] same = [.. options.Where(o => o.Best == best)];
        double range = at + (Array.IndexOf(same, option) - 0.5 * (same.Length - 1)) * Apart;
        sheet.Line(range, y.At(unit.Temperature(spot.PeakC.Q05)), range, Math.Max(y.At(unit.Temperature(spot.PeakC.Q95)), y.To), colours.Ink, 1.6);
        sheet.Mark(look, at, middle, LargeMark);
        double beside = LargeMark + 4, low = middle + m.SmallSize * 0.36;
        // The list beneath has the teeth too, where a label finds no room.
        room.Put($"{spot.Pinion}", m.SmallSize, true, (at + beside, low, Hang.Start), (at - beside, low, Hang.End), (at + beside, low - m.SmallSize, Hang.Start), (at - beside, low - m.SmallSize, Hang.End), (at + beside, low + m.SmallSize, Hang.Start), (at - beside, low + m.SmallSize, Hang.End));
    }

    // What each mark is, and its quickest pinion; quickest first.
    private double List(double top, double left, double right)
    {
        double y = top, size = m.SmallSize;
        foreach (int o in Enumerable.Range(0, options.Count).OrderBy(o => options[o].Best is { } b ? options[o].Spots[b].LapS : double.MaxValue))
        {
            GearLine option = options[o];
            string said = option.Best is { } best ? $"{option.Spots[best].Pinion} teeth, lap {Lap(option.Spots[best])} s" : "none within the odds";
            sheet.Mark(Look(o), left + 7, y + size * 0.7, 6);
            y = sheet.Paragraph(Typesetter.Clean(option.Option), left + 22, y, right - left - 22, size, bold: true, maxLines: 2, leading: 1.2);
            y = sheet.Paragraph(said, left + 22, y, right - left - 22, size, colour: colours.Quiet, leading: 1.2) + size * 0.5;
        }

        return y + size * 0.5;
    }

    private static string Lap(GearSpot spot) => spot.LapS.ToString("0.00", CultureInfo.InvariantCulture);
}
