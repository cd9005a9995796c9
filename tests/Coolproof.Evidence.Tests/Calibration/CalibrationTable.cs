using System.Globalization;
using Figure = Coolproof.Evidence.Tests.Calibration.DayBootstrap.Figure;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>The figures as lines of text.</summary>
internal static class CalibrationTable
{
    private static readonly (string Head, int Width, Func<StratumFigures, string> Cell)[] Columns =
    [
        ("days", 5, f => Text($"{f.Days}")),
        ("failed", 7, f => Text($"{f.NotConverged}")),
        ("pairs can %", 14, f => Percent(f.PairCoverage)),
        ("pairs wdg %", 14, f => Percent(f.WindingPairCoverage)),
        ("oracle can %", 14, f => Percent(f.OracleCoverage)),
        ("can %", 14, f => Percent(f.CanCoverage)),
        ("winding %", 14, f => Percent(f.WindingCoverage)),
        ("wrong/firm", 11, f => Text($"{f.Wrong}/{f.Firm}")),
        ("wrong %", 13, f => Percent(f.ObservedError)),
        ("stated %", 9, f => Text($"{100 * f.StatedError.Value:F2}")),
        ("same wrong %", 14, f => Percent(f.WrongSame)),
        ("firm %", 7, f => Text($"{100 * f.FirmShare.Value:F0}")),
        ("/oracle", 14, f => Plain(f.FirmOverOracle)),
        ("its wrong", 10, f => Text($"{f.OracleWrong}")),
        ("RMSE K", 7, f => Text($"{f.Rmse.Value:F2}")),
        ("/oracle", 14, f => Plain(f.OverOracle)),
        ("/floor", 14, f => Plain(f.OverFloor)),
        ("/naive", 14, f => Plain(f.OverNaive)),
        ("slope", 14, f => Plain(f.Slope)),
        ("can z", 14, f => Plain(f.CanBias)),
        ("winding z", 14, f => Plain(f.WindingBias)),
    ];

    /// <summary>The line above.</summary>
    public static string Head => "kind of day".PadRight(24) + string.Concat(Columns.Select(c => c.Head.PadLeft(c.Width)));

    /// <summary>One kind of day.</summary>
    public static string Line(StratumFigures figures) => figures.Name.PadRight(24) + string.Concat(Columns.Select(c => c.Cell(figures).PadLeft(c.Width)));

    private static string Percent(Figure f) => Text($"{100 * f.Value:F1} ± {100 * f.Error:F1}");

    private static string Plain(Figure f) => Text($"{f.Value:F2} ± {f.Error:F2}");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
