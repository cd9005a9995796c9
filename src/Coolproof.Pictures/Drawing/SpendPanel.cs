using System.Globalization;

namespace Coolproof.Pictures.Drawing;

/// <summary>Stairs over money, numbered, with a list of what each number is.</summary>
internal sealed class SpendPanel(Sheet sheet, IReadOnlyList<SpendStair> stairs, IReadOnlyList<(double Money, double CoolerK)> others, (double Money, string Said)? budget, SpendStair? beyond)
{
    private const double TickSpacing = 40, Radius = 6.5;

    private static readonly OptionLook Step = new(OptionLook.Palette[5], Mark.Circle);

    private readonly Measures m = sheet.Measures;
    private readonly ThemeColours colours = sheet.Colours;
    private readonly Degrees unit = sheet.Style.Unit;

    private IReadOnlyList<SpendStair> All => beyond is null ? stairs : [.. stairs, beyond];

    /// <summary>Draws from the top down.</summary>
    /// <returns>The y below the list.</returns>
    public double Draw(double top, double height)
    {
        double size = m.SmallSize, plotTop = top + size * 2.9, plotBottom = plotTop + height;
        Scale held = Scale.Holding(All.SelectMany(s => new[] { s.CoolerK.Q05, s.CoolerK.Q95 }).Append(0).Select(unit.Difference), 0, 1, unit.Difference(4), 0.05);
        Scale y = held with { From = plotBottom, To = plotTop };
        double left = m.Left + y.Ticks(TickSpacing).Max(t => sheet.Type.Width(Scale.Label(t), size, false)) + 12, right = m.Narrow ? m.Right - 10 : m.Left + (m.Right - m.Left) * 0.58;
        double most = Math.Max(All.Max(s => s.Money), budget?.Money ?? 0);
        Scale x = new(0, Math.Max(most * 1.04, 1), left + 12, right);
        LabelRoom room = new(sheet, left, right);
        Guides(x, y, left, right, top, plotTop, plotBottom);
        if (budget is { } within)
        {
            room.Take(x.At(within.Money) - 1, plotTop, x.At(within.Money) + 1, plotBottom);
            room.Take(left, plotTop - size * 1.5, right, plotTop); // the line of its words
        }

        foreach ((double money, double coolerK) in others) Dot(x.At(money), y.At(unit.Difference(coolerK)), room);
        Stairs(x, y, right);
        for (int i = 0; i < All.Count; i++) Stand(x, y, i, room);
        for (int i = 1; i < All.Count; i++) Label(x, y, i, room);
        double bottom = plotBottom + size * 2.6;
        return m.Narrow ? List(bottom, m.Left, m.Right) : Math.Max(bottom, List(plotTop, right + 36, m.Right));
    }

    private void Guides(Scale x, Scale y, double left, double right, double top, double plotTop, double plotBottom)
    {
        double size = m.SmallSize;
        sheet.Text($"{unit.Symbol} cooler", m.Left, top + size, size, colour: colours.Quiet);
        foreach (double level in y.Ticks(TickSpacing))
        {
            sheet.Line(left, y.At(level), right, y.At(level), level == 0 ? colours.Quiet : colours.Grid, level == 0 ? 1.2 : 1);
            sheet.Text(Scale.Label(level), left - 8, y.At(level) + size * 0.36, size, colour: colours.Quiet, hang: Hang.End);
        }

        foreach (double tick in x.Ticks(56))
        {
            sheet.Line(x.At(tick), plotBottom, x.At(tick), plotBottom + 4, colours.Quiet, 1);
            sheet.Text(Scale.Label(tick), x.At(tick), plotBottom + size * 1.35, size, colour: colours.Quiet, hang: Hang.Middle);
        }

        if (budget is not { } within) return;
        double at = x.At(within.Money);
        sheet.Line(at, plotTop, at, plotBottom, colours.Ink, 1.6, dashed: true);
        bool start = at + sheet.Type.Width(within.Said, size, false) + 4 < right;
        sheet.Text(within.Said, start ? at : at + 4, plotTop - size * 0.5, size, hang: start ? Hang.Start : Hang.End);
    }

    private void Dot(double at, double level, LabelRoom room)
    {
        const double Small = 2.4;
        sheet.Polygon([.. MarkOutline.Corners(Mark.Circle, Small).Select(c => new Spot(at + c.X, level + c.Y))], colours.Quiet);
        room.Take(at - Small, level - Small, at + Small, level + Small);
    }

    private void Stairs(Scale x, Scale y, double right)
    {
        string colour = Step.ColourOn(sheet.Style.Theme);
        double Level(SpendStair s) => y.At(unit.Difference(s.CoolerK.Q50));
        List<Spot> path = [];
        for (int i = 0; i < stairs.Count; i++)
        {
            if (i > 0) path.Add(new(x.At(stairs[i].Money), Level(stairs[i - 1])));
            path.Add(new(x.At(stairs[i].Money), Level(stairs[i])));
        }

        double end = beyond is { } next ? x.At(next.Money) : budget is { } within ? x.At(Math.Max(within.Money, stairs[^1].Money)) : right;
        double solid = budget is { } line ? Math.Min(x.At(Math.Max(line.Money, stairs[^1].Money)), end) : end;
        path.Add(new(solid, Level(stairs[^1])));
        sheet.Polyline(path, colour, 2.4);
        if (beyond is { } past) sheet.Polyline([new(solid, Level(stairs[^1])), new(end, Level(stairs[^1])), new(end, Level(past))], colour, 1.6, dashed: true);
    }

    private void Stand(Scale x, Scale y, int place, LabelRoom room)
    {
        SpendStair step = All[place];
        double at = x.At(step.Money), middle = y.At(unit.Difference(step.CoolerK.Q50));
        (double high, double low) = Reach(y, step);
        if (place > 0) sheet.Line(at, low, at, high, colours.Ink, 1.6);
        sheet.Mark(Step, at, middle, Radius, hollow: !step.Driven);
        room.Take(at - 1, high, at + 1, low);
        room.Take(at - Radius, middle - Radius, at + Radius, middle + Radius);
    }

    // Beside its mark where there is room between lines and dots; else above or below its own line; and where all is full, over what lies there: the list
    // counts on every number.
    private void Label(Scale x, Scale y, int place, LabelRoom room)
    {
        double at = x.At(All[place].Money), middle = y.At(unit.Difference(All[place].CoolerK.Q50)), beside = Radius + 4, size = m.SmallSize;
        (double high, double low) = Reach(y, All[place]);
        if (!room.Put(Number(place), size, true, (at - beside, middle - size * 0.4, Hang.End), (at + beside, middle - size * 0.4, Hang.Start), (at + beside, middle + size * 1.2, Hang.Start), (at - beside, middle + size * 1.2, Hang.End), (at + beside, middle - size * 1.5, Hang.Start), (at, high - size * 0.4, Hang.Middle), (at, low + size * 1.2, Hang.Middle)))
            sheet.Text(Number(place), at + beside, middle - size * 0.4, size, bold: true);
    }

    private (double High, double Low) Reach(Scale y, SpendStair step) => (y.At(unit.Difference(step.CoolerK.Q95)), y.At(unit.Difference(step.CoolerK.Q05)));

    private double List(double top, double left, double right)
    {
        Words words = new(unit, 0);
        double y = top, size = m.SmallSize;
        for (int i = 1; i < All.Count; i++)
        {
            sheet.Text(Number(i), left, y + size * 0.95, size, bold: true);
            y = sheet.Paragraph(Typesetter.Clean(All[i].Parts), left + size * 1.6, y, right - left - size * 1.6, size, bold: true, maxLines: 3, leading: 1.2);
            string cooler = words.Hotter(All[i].CoolerK).Replace("hotter", "cooler", StringComparison.Ordinal);
            y = sheet.Paragraph($"{All[i].Cost}: {cooler}{(i == stairs.Count ? "; past the budget" : "")}", left + size * 1.6, y, right - left - size * 1.6, size, colour: colours.Quiet, leading: 1.2) + size * 0.5;
        }

        if (All.Count == 1) y = sheet.Paragraph("Nothing that fits makes the can cooler.", left, y, right - left, size) + size * 0.5;
        return y + size * 0.5;
    }

    private static string Number(int place) => place.ToString(CultureInfo.InvariantCulture);
}
