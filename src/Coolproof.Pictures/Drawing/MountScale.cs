using Coolproof.Notebook;

namespace Coolproof.Pictures.Drawing;

/// <summary>One scale for all mounts of a picture.</summary>
/// <param name="PxPerM">Pixels for a metre.</param>
/// <param name="EndWidth">Width of the view along the axis, px.</param>
/// <param name="SideWidth">Width of the view from the side, px.</param>
internal sealed record MountScale(double PxPerM, double EndWidth, double SideWidth)
{
    /// <summary>What is drawn of a duct, m.</summary>
    public const double DuctStub = 0.02;

    private const double Air = 0.004, TallestWide = 300, TallestNarrow = 230;

    public double Px(double metres) => metres * PxPerM;

    /// <summary>The largest scale at which every mount fits.</summary>
    public static MountScale Of(MountSheet sheet, Measures m)
    {
        double end = sheet.Mounts.Max(mount => AcrossM(sheet, mount)) + 2 * Air, side = sheet.Mounts.Max(mount => AlongM(sheet, mount)) + 2 * Air, tall = sheet.Mounts.Max(mount => AboveM(mount) + BelowM(sheet, mount)) + 2 * Air;
        double room = m.Right - m.Left;
        double scale = m.Narrow
            ? Math.Min(Math.Min(room * 0.42 / end, room / side), TallestNarrow / tall)
            : Math.Min(room * 0.64 / (end + side), TallestWide / tall);
        return new(scale, end * scale, side * scale);
    }

    /// <summary>Height over the can's axis that is drawn, m.</summary>
    public static double AboveM(Mount mount) => Math.Max(TopM(mount), mount.ShellFromCanM ?? 0) + 0.003;

    /// <summary>Depth under the can's surface that is drawn, m: the can and what stands round it.</summary>
    public static double BelowM(MountSheet sheet, Mount mount) => sheet.Can.DiameterM + Around(mount);

    /// <summary>From the can's surface to the far end of what is drawn of duct and fans, m; a tilted fan's corner too.</summary>
    public static double TopM(Mount mount) => mount.Fans.Count == 0 && mount.Duct is null ? 0.002
        : mount.FanEdgeM + (mount.Duct is null ? 0 : DuctStub) + (mount.Fans.Count == 0 ? 0 : mount.Fans.Max(f => f.SizeM) / 2) * Math.Sin(mount.AngleDeg * Math.PI / 180);

    /// <summary>Room that clamp, fins or shroud take about the can, m.</summary>
    public static double Around(Mount mount) => mount.Shroud is { } shroud ? shroud.ClearanceM + 0.002 : mount.FinsM2 > 0 ? 0.006 : mount.ClampCovers > 0 ? 0.002 : 0;

    private static double AcrossM(MountSheet sheet, Mount mount) =>
        Math.Max(sheet.Can.DiameterM + 2 * Around(mount), 1.1 * Math.Max(mount.Fans.Select(f => f.SizeM + 2 * f.ThicknessM * Math.Sin(mount.AngleDeg * Math.PI / 180)).DefaultIfEmpty().Max(), OutletM(mount)));

    private static double AlongM(MountSheet sheet, Mount mount)
    {
        double stream = Math.Max((mount.InRow ? 1 : mount.Fans.Count) * mount.Fans.Select(f => f.SizeM).DefaultIfEmpty().Max(), OutletM(mount)) / 2;
        return 2 * Math.Max(sheet.Can.LengthM / 2, stream + Math.Abs(mount.AsideM));
    }

    /// <summary>Width of a duct's round outlet, m; 0 without a duct.</summary>
    public static double OutletM(Mount mount) => mount.Duct is { } duct ? Math.Sqrt(4 * duct.OutletM2 / Math.PI) : 0;

    /// <summary>A bar of ten millimetres.</summary>
    /// <returns>The y below.</returns>
    public double Bar(Sheet sheet, double y)
    {
        Measures m = sheet.Measures;
        double left = m.Left, right = left + Px(0.010), at = y + 6;
        sheet.Line(left, at, right, at, sheet.Colours.Ink, 2);
        sheet.Line(left, at - 5, left, at + 5, sheet.Colours.Ink, 2);
        sheet.Line(right, at - 5, right, at + 5, sheet.Colours.Ink, 2);
        sheet.Text("10 mm", right + 8, at + m.SmallSize * 0.35, m.SmallSize);
        return at + m.SmallSize;
    }
}
