using Coolproof.Evidence;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures;

/// <summary>What the motor did after the stop, run by run, and what each reading becomes when it is brought back to the end of driving.</summary>
public static class RunPicture
{
    private const string HowToRead =
        "Line and band: the middle and nine tenths of the chances. Hollow: as read. Solid: brought back to the end of driving. Dashed join: its seconds were not noted.";

    private const string SmallMarks = " Small marks: readings of the winding.";

    /// <summary>Draws one run.</summary>
    /// <param name="verdict">Gives the option its colour and mark.</param>
    /// <param name="run">A run of the verdict.</param>
    /// <param name="style">Width, theme, units; null: a page, light, Celsius.</param>
    public static Picture OfRun(Verdict verdict, RunCurve run, PictureStyle? style = null)
    {
        style ??= new();
        string finding = style.Title ?? Finding(run, new Words(style.Unit, verdict.SameWithinK));
        return Draw(verdict, [run], style, finding, style.WidthPx >= 700 ? 420 : 300, 1);
    }

    /// <summary>Draws the runs of a day, or of all days, as small pictures of one scale.</summary>
    /// <param name="verdict">Where the runs are.</param>
    /// <param name="day">The day; null: all.</param>
    /// <param name="style">Width, theme, units; null: a page, light, Celsius.</param>
    public static Picture OfDay(Verdict verdict, string? day = null, PictureStyle? style = null)
    {
        style ??= new();
        RunCurve[] runs = [.. verdict.Runs.Where(r => day is null || r.Day == day)];
        string finding = style.Title ?? Finding(runs, new Words(style.Unit, verdict.SameWithinK));
        int columns = Math.Clamp(style.WidthPx / 400, 1, Math.Max(1, runs.Length));
        return Draw(verdict, runs, style, finding, 210, columns);
    }

    /// <summary>How a panel is read, for a page that says it once for all of them.</summary>
    /// <param name="verdict">Where the runs are.</param>
    public static string Legend(Verdict verdict) => HowToRead + (verdict.Runs.Any(r => r.WindingReadings.Count > 0) ? SmallMarks : "");

    /// <summary>Draws one run as a panel without words of its own, in the scale of all the verdict's runs, so that panels compare by eye.</summary>
    /// <param name="verdict">Where the run is.</param>
    /// <param name="run">The run.</param>
    /// <param name="style">Width, theme, units; null: a page, light, Celsius.</param>
    public static Picture Panel(Verdict verdict, RunCurve run, PictureStyle? style = null)
    {
        style ??= new();
        style.Check();
        var sheet = new Sheet(style, Typesetter.BuiltIn);
        Measures m = sheet.Measures;
        const double plotHeight = 130;
        double width = m.Right - m.Left;
        int remarkLines = RunPanel.RemarkLines(sheet, run, width);
        new RunPanel(sheet, run, Standing.LookOf(verdict, run.Option, style), PanelRange.Of(verdict.Runs, style.Unit)).Draw(m.Left, m.Margin / 2, width, plotHeight, remarkLines);
        string finding = style.Title ?? Finding(run, new Words(style.Unit, verdict.SameWithinK));
        return new(sheet, m.Margin / 2 + RunPanel.HeightFor(sheet, plotHeight, remarkLines), finding, Legend(verdict));
    }

    private static Picture Draw(Verdict verdict, IReadOnlyList<RunCurve> runs, PictureStyle style, string finding, double plotHeight, int columns)
    {
        style.Check();
        var sheet = new Sheet(style, Typesetter.BuiltIn);
        Measures m = sheet.Measures;
        double y = Heading.Draw(sheet, finding, runs.Count == 0 ? "Drive, stop, shoot the motor: the run will stand here." : HowToRead + (runs.Any(r => r.WindingReadings.Count > 0) ? SmallMarks : "")) + m.Margin * 0.8;
        PanelRange range = PanelRange.Of(runs, style.Unit);
        const double gap = 36;
        double width = (m.Right - m.Left - gap * (columns - 1)) / columns;
        foreach (RunCurve[] row in runs.Chunk(columns))
        {
            int remarkLines = row.Max(r => RunPanel.RemarkLines(sheet, r, width));
            for (int i = 0; i < row.Length; i++)
            {
                new RunPanel(sheet, row[i], Standing.LookOf(verdict, row[i].Option, style), range).Draw(m.Left + i * (width + gap), y, width, plotHeight, remarkLines);
            }

            y += RunPanel.HeightFor(sheet, plotHeight, remarkLines) + 16;
        }

        return new(sheet, Heading.Foot(sheet, y, [style.Note]), finding, string.Join(" ", runs.Select(r => Finding(r, new Words(style.Unit, verdict.SameWithinK)) + ".")));
    }

    private static string Finding(RunCurve run, Words words) => run.CanC.Count == 0 || !double.IsFinite(run.CanC[0].Q50)
        ? $"{run.Option}, run {run.Run}: nothing is known of it yet"
        : $"{run.Option}, run {run.Run}: can {words.Temperature(run.CanC[0])} at the end of driving";

    private static string Finding(IReadOnlyList<RunCurve> runs, Words words)
    {
        double[] moves = [.. runs.SelectMany(r => r.Readings.Select(x => x.CorrectedC - x.ReadC).Concat(r.WindingReadings.Select(x => x.CorrectedC - x.ReadC))).Where(double.IsFinite)];
        return runs.Count == 0 ? "No run counts yet" : moves.Length == 0 ? "No reading counts yet"
            : $"Brought back to the end of driving, readings move by {words.Moves(moves.Min(), moves.Max())}";
    }
}
