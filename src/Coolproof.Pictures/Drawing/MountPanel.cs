using System.Globalization;
using Coolproof.Notebook;

namespace Coolproof.Pictures.Drawing;

/// <summary>One mount: both views, and its measures in a column that thin lines lead to.</summary>
internal sealed class MountPanel
{
    private const double Leader = 26, LabelGap = 1.38;
    private static readonly string Stream = OptionLook.Palette[2];

    private readonly Sheet sheet;
    private readonly MountSheet asked;
    private readonly Mount mount;
    private readonly MountScale scale;
    private readonly Measures m;
    private readonly (double AboveCanM, string Text)[] labels;

    public MountPanel(Sheet sheet, MountSheet asked, Mount mount, MountScale scale)
    {
        (this.sheet, this.asked, this.mount, this.scale, m) = (sheet, asked, mount, scale, sheet.Measures);
        labels = [.. MountLabels.Of(asked, mount).OrderByDescending(l => l.AboveCanM)];
    }

    /// <summary>The measures in words, from the top down.</summary>
    public IEnumerable<string> Labels => labels.Select(l => l.Text);

    /// <returns>The y below.</returns>
    public double Draw(double y, string? said)
    {
        y = Heading.Section(sheet, m.Left, y, m.Right - m.Left, Typesetter.Clean(mount.Name), said) + 10;
        double above = scale.Px(MountScale.AboveM(mount)) + 6, tall = above + scale.Px(MountScale.BelowM(asked, mount)) + 6, labelLeft, bottom;
        if (m.Narrow)
        {
            double end = m.Left + scale.EndWidth / 2;
            End(end, y + above);
            labelLeft = m.Left + scale.EndWidth + Leader;
            bottom = Math.Max(y + tall, Column(labelLeft, y, y + above, end));
            double side = bottom + 12;
            Side(m.Left + scale.SideWidth / 2, side + above);
            return Length(m.Left + scale.SideWidth / 2, side + tall);
        }
        double sideMiddle = m.Left + scale.SideWidth / 2, endMiddle = m.Left + scale.SideWidth + m.Margin * 0.6 + scale.EndWidth / 2;
        Side(sideMiddle, y + above);
        End(endMiddle, y + above);
        labelLeft = endMiddle + scale.EndWidth / 2 + Leader;
        return Math.Max(Length(sideMiddle, y + tall), Column(labelLeft, y, y + above, endMiddle));
    }

    // Labels in a column, as near to the height of what they name as those above let them be.
    private double Column(double left, double top, double canTop, double middle)
    {
        double y = top;
        foreach ((double aboveCan, string text) in labels)
        {
            IReadOnlyList<string> lines = sheet.Type.Wrap(text, m.SmallSize, false, m.Right - left, 4);
            double at = canTop - scale.Px(aboveCan);
            y = Math.Max(y, at - m.SmallSize * 0.7);
            sheet.Polyline([new(middle + scale.Px(ReachM(aboveCan)), at), new(left - 12, at), new(left - 5, y + m.SmallSize * 0.65)], sheet.Colours.Quiet, 0.8);
            foreach (string line in lines)
            {
                sheet.Text(line, left, y + m.SmallSize * 0.95, m.SmallSize, whole: null);
                y += m.SmallSize * LabelGap;
            }
        }
        return y;
    }

    // From the middle to where a thing of that height ends on the right, m: leaders start on it.
    private double ReachM(double aboveCan)
    {
        double r = asked.Can.DiameterM / 2, below = -aboveCan - r;
        if (aboveCan < 0)
        {
            double of = Math.Abs(below) < 1e-9 ? 0.9 * r : r + (mount.Shroud?.ClearanceM ?? 0.001);
            return Math.Sqrt(Math.Max(of * of - below * below, 0));
        }
        return aboveCan < mount.GapM ? MountScale.OutletM(mount) / 2 : mount.Fans.Count == 0 ? MountScale.OutletM(mount) / 2 : mount.Fans[0].SizeM / 2 * 0.98;
    }

    // Along the axis; the point is the can's top.
    private void End(double x, double y)
    {
        double r = scale.Px(asked.Can.DiameterM / 2);
        Spot At(double across, double above)
        {
            // Fans, duct and jet are tilted about the middle of where the air leaves.
            double tilt = mount.AngleDeg * Math.PI / 180, up = above - mount.GapM;
            return new(x + scale.Px(across * Math.Cos(tilt) + up * Math.Sin(tilt)), y - scale.Px(mount.GapM + up * Math.Cos(tilt) - across * Math.Sin(tilt)));
        }
        Jet(At, MountScale.OutletM(mount) > 0 ? MountScale.OutletM(mount) : mount.Fans.Count > 0 ? mount.Fans[0].BladesM : 0, mount.GapM + asked.Can.DiameterM / 2);
        Ring(x, y + r, r);
        Circle(x, y + r, r, sheet.Colours.Band);
        Blower(At, 1);
        Shell(x, y, scale.EndWidth);
    }

    // From the side; the point is the middle of the can's top.
    private void Side(double x, double y)
    {
        double half = scale.Px(asked.Can.LengthM / 2), d = scale.Px(asked.Can.DiameterM);
        int beside = mount.InRow || mount.Duct is { } ? 1 : mount.Fans.Count;
        Spot At(double along, double above) => new(x + scale.Px(along + mount.AsideM), y - scale.Px(above));
        Jet(At, MountScale.OutletM(mount) > 0 ? MountScale.OutletM(mount) : mount.Fans.Count > 0 ? beside * mount.Fans[0].SizeM - 0.002 : 0, mount.GapM + asked.Can.DiameterM / 2);
        sheet.Box(x - half, y, x + half, y + d, sheet.Colours.Band, 1.6);
        if (mount.Shroud is { } shroud)
        {
            double out0 = scale.Px(shroud.ClearanceM), wide = half * shroud.Covers;
            foreach (double edge in new[] { y - out0, y + d + out0 }) sheet.Line(x - wide, edge, x + wide, edge, sheet.Colours.Ink, 2.4, dashed: shroud.LeakM2 > 0);
        }
        Blower(At, beside);
        Shell(x, y, scale.SideWidth);
    }

    private double Length(double x, double y)
    {
        double half = scale.Px(asked.Can.LengthM / 2);
        sheet.Line(x - half, y, x + half, y, sheet.Colours.Quiet, 1);
        foreach (double end in new[] { x - half, x + half }) sheet.Line(end, y - 4, end, y + 4, sheet.Colours.Quiet, 1);
        sheet.Text(MountLabels.Mm(asked.Can.LengthM), x, y + m.SmallSize * 1.15, m.SmallSize, hang: Hang.Middle);
        return y + m.SmallSize * 1.5;
    }

    private void Jet(Func<double, double, Spot> at, double width, double reach)
    {
        if (width <= 0) return;
        if (mount.Shroud is { }) reach = mount.GapM; // within it nothing spreads freely
        double wider = mount.Shroud is { } ? 0 : 2 * reach * Math.Tan(HalfAngle);
        sheet.Polygon([at(-width / 2, mount.GapM), at(width / 2, mount.GapM), at((width + wider) / 2, mount.GapM - reach), at(-(width + wider) / 2, mount.GapM - reach)], Stream, opacity: sheet.Colours.BandOpacity);
    }

    // As the prediction spreads it: 13 degrees to either side.
    private const double HalfAngle = 13 * Math.PI / 180;

    private void Blower(Func<double, double, Spot> at, int beside)
    {
        double from = mount.GapM;
        if (mount.Duct is { })
        {
            double w = MountScale.OutletM(mount) / 2, top = from + MountScale.DuctStub;
            sheet.Polyline([at(-w, from), at(-w, top)], sheet.Colours.Ink, 2.2);
            sheet.Polyline([at(w, from), at(w, top)], sheet.Colours.Ink, 2.2);
            sheet.Polyline([at(-w * 1.3, top - 0.001), at(-w * 0.4, top + 0.001), at(w * 0.4, top - 0.001), at(w * 1.3, top + 0.001)], sheet.Colours.Quiet, 1);
            from = top;
        }
        foreach ((MountFan fan, int i) in mount.Fans.Select((f, i) => (f, i)))
        {
            double middle = beside > 1 ? (i - (beside - 1) / 2.0) * fan.SizeM : 0, low = from, high = low + fan.ThicknessM;
            if (beside == 1 && !mount.InRow && i > 0) break;
            Box(at, middle - fan.SizeM / 2, middle + fan.SizeM / 2, low, high, sheet.Colours.Paper, 1.6);
            Box(at, middle - fan.HubM / 2, middle + fan.HubM / 2, low, high, sheet.Colours.Quiet, 0);
            if (mount.InRow) from = high;
            if (mount.GrilleOpen < 1 && (!mount.InRow || i == mount.Fans.Count - 1)) sheet.Polyline([at(middle - fan.SizeM / 2, high + 0.001), at(middle + fan.SizeM / 2, high + 0.001)], sheet.Colours.Ink, 2.4, dashed: true);
        }
    }

    private void Box(Func<double, double, Spot> at, double left, double right, double low, double high, string fill, double outline) =>
        sheet.Polygon([at(left, low), at(right, low), at(right, high), at(left, high)], fill, outline);

    private void Shell(double x, double canTop, double width)
    {
        if (mount.ShellFromCanM is not { } above) return;
        double y = canTop - scale.Px(above), hole = scale.Px(Math.Sqrt(4 * mount.ShellHoleM2 / Math.PI)) / 2;
        if (hole <= 0) { sheet.Line(x - width / 2, y, x + width / 2, y, sheet.Colours.Ink, 3); return; }
        double off = Math.Min(hole, width / 2 - 4);
        sheet.Line(x - width / 2, y, x - off, y, sheet.Colours.Ink, 3);
        sheet.Line(x + off, y, x + width / 2, y, sheet.Colours.Ink, 3);
    }

    // Clamp, fins and shroud about the can.
    private void Ring(double x, double y, double r)
    {
        if (mount.Shroud is { } shroud)
        {
            double open = mount.Duct is { } ? MountScale.OutletM(mount) : mount.Fans.Count > 0 ? mount.Fans[0].BladesM : 0, radius = r + scale.Px(shroud.ClearanceM), half = Math.Asin(Math.Min(0.98, scale.Px(open / 2) / radius));
            Arc(x, y, radius, half, 2 * Math.PI - half, 2.4, shroud.LeakM2 > 0);
        }
        if (mount.ClampCovers > 0) Arc(x, y, r + scale.Px(0.001), Math.PI * (1 - mount.ClampCovers), Math.PI * (1 + mount.ClampCovers), scale.Px(0.002), dashed: false);
        if (mount.FinsM2 <= 0) return;
        double reach = Math.PI * Math.Max(mount.ClampCovers, 0.4);
        for (int i = 0; i <= 12; i++)
        {
            double angle = Math.PI - reach + 2 * reach * i / 12, from = r + 1, to = r + scale.Px(0.005);
            sheet.Line(x + from * Math.Sin(angle), y - from * Math.Cos(angle), x + to * Math.Sin(angle), y - to * Math.Cos(angle), sheet.Colours.Ink, 1.6);
        }
    }

    // Angles from the top, clockwise.
    private void Arc(double x, double y, double radius, double from, double to, double width, bool dashed) => sheet.Polyline(
        [.. Enumerable.Range(0, 49).Select(i => from + (to - from) * i / 48).Select(a => new Spot(x + radius * Math.Sin(a), y - radius * Math.Cos(a)))], sheet.Colours.Ink, width, dashed);

    private void Circle(double x, double y, double radius, string fill) =>
        sheet.Polygon([.. Enumerable.Range(0, 64).Select(i => 2 * Math.PI * i / 64).Select(a => new Spot(x + radius * Math.Cos(a), y + radius * Math.Sin(a)))], fill, 1.6);
}

/// <summary>The measures of a mount in words, each with its height over the can's top.</summary>
internal static class MountLabels
{
    public static IEnumerable<(double AboveCanM, string Text)> Of(MountSheet asked, Mount mount)
    {
        if (mount.ShellFromCanM is { } shell)
            yield return (shell, $"shell, {Mm(shell)} from the can{(mount.ShellHoleM2 > 0 ? $", hole {Cm2(mount.ShellHoleM2)}" : "")}{(mount.RimOpen < 1 ? $", rim {100 * mount.RimOpen:0} % open" : "")}");
        if (mount.ShellGapM is { } inlet && mount.Fans.Count > 0) yield return (mount.FanEdgeM + inlet / 2, $"inlet gap {Mm(inlet)}");
        double top = mount.Duct is null ? 0 : MountScale.DuctStub;
        foreach (var group in mount.Fans.GroupBy(f => f))
        {
            string count = mount.Fans.Count == 1 ? "fan" : $"{group.Count()} fans{(mount.InRow ? " in a row" : "")}", grille = mount.GrilleOpen < 1 ? $", grille {100 * mount.GrilleOpen:0} % open" : "";
            yield return (mount.GapM + top + group.Key.ThicknessM / 2, $"{count} {Mm(group.Key.SizeM)}, {Mm(group.Key.ThicknessM)} thick, {string.Create(CultureInfo.InvariantCulture, $"{group.Key.FreeM3S * 3600:0.#}")} m³/h free{grille}");
        }
        if (mount.Duct is { } duct)
            yield return (mount.GapM + MountScale.DuctStub / 2, $"duct {Mm(duct.LengthM)}, mouth {Cm2(duct.MouthM2)}{(duct.FacesForward ? " facing forward" : "")}, outlet {Cm2(duct.OutletM2)}");
        if (mount.Fans.Count > 0 || mount.Duct is { })
            yield return (mount.GapM / 2, $"gap {Mm(mount.GapM)}{(mount.AngleDeg > 0 ? string.Create(CultureInfo.InvariantCulture, $", tilted {mount.AngleDeg:0.#}°") : "")}{(mount.AsideM != 0 ? $", {Mm(Math.Abs(mount.AsideM))} off the middle" : "")}");
        if (mount.Shroud is { } shroud)
            yield return (-asked.Can.DiameterM * 0.25, $"shroud {Mm(shroud.ClearanceM)} off the can over {100 * shroud.Covers:0} % of it{(shroud.LeakM2 > 0 ? $", leaks {Cm2(shroud.LeakM2)}" : "")}");
        yield return (-asked.Can.DiameterM * 0.5, $"can {Mm(asked.Can.DiameterM)} across, {Mm(asked.Can.LengthM)} long");
        if (mount.FinsM2 > 0 || mount.ClampCovers > 0)
            yield return (-asked.Can.DiameterM * 0.85, string.Join(", ", new[] { mount.ClampCovers > 0 ? $"clamp over {100 * mount.ClampCovers:0} % of the can" : "", mount.FinsM2 > 0 ? $"fins {Cm2(mount.FinsM2)}" : "" }.Where(t => t.Length > 0)));
    }

    public static string Mm(double metres) => string.Create(CultureInfo.InvariantCulture, $"{metres * 1000:0.#} mm");

    private static string Cm2(double m2) => string.Create(CultureInfo.InvariantCulture, $"{m2 * 1e4:0.#} cm²");
}
