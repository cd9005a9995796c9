using Coolproof.Evidence;

namespace Coolproof.Pictures.Drawing;

/// <summary>The options of a post, coolest first: name, runs, interval and its numbers; on a wide one the winding's too.</summary>
internal sealed class PostRows(Sheet sheet, Verdict verdict, double size, double left, double right)
{
    private const double LeastRow = 1.36, MostRow = 5.5, TwoLines = 2.4, WideFrom = 1600;

    private readonly Degrees unit = sheet.Style.Unit;
    private readonly Words words = new(sheet.Style.Unit, verdict.SameWithinK);
    private readonly IReadOnlyList<Standing> standings = Standing.All(verdict, sheet.Style);

    /// <summary>Least height for the heads and all options, at most twelve: of more the coolest are shown, px.</summary>
    public double LeastHeight => HeadHeight + AxisHeight + Math.Min(standings.Count, 12) * size * LeastRow;

    /// <summary>The rows in words.</summary>
    public IEnumerable<string> InWords() => standings.Select(s =>
        $"{s.Option.Name}, {Runs(s)}: can {words.Temperature(s.Option.PeakCanC)}, winding {words.Temperature(s.Option.PeakWindingC)}.");

    /// <summary>Draws as many options as there is room for, and says how many more there are.</summary>
    public void Draw(double top, double bottom)
    {
        double room = bottom - top - HeadHeight - AxisHeight;
        int fit = Math.Max(1, (int)(room / (size * LeastRow) + 1e-6));
        Standing[] shown = [.. standings.Take(fit >= standings.Count ? standings.Count : Math.Max(1, fit - 1))];
        int more = standings.Count - shown.Length;
        double height = Math.Min(size * MostRow, (room - (more > 0 ? size * LeastRow : 0)) / shown.Length);
        Columns columns = Columns.Of(this, shown);
        double rowsTop = top + HeadHeight, rowsBottom = rowsTop + height * shown.Length;
        Names(shown, columns, rowsTop, height);
        Bars(shown, columns.Can, "Can", rowsTop, height, s => s.Option.PeakCanC, loud: true);
        if (columns.Winding is { } winding)
        {
            Bars(shown, winding, "Winding", rowsTop, height, s => s.Option.PeakWindingC, loud: false);
        }

        if (more > 0)
        {
            sheet.Text($"and {Words.Count(more, "more option")}, hotter than these", left, rowsBottom + AxisHeight + size, size, colour: sheet.Colours.Quiet);
        }
    }

    private double Left => left;

    private double Right => right;

    private double Size => size;

    private Typesetter Type => sheet.Type;

    private double HeadHeight => size * 1.5;

    private double AxisHeight => size * 1.35;

    private static string Runs(Standing s) => Words.Count(s.Option.Runs, "run");

    /// <summary>The words at the right of a bar, without the unit, which the column's head gives.</summary>
    private string Value(Summary s) => words.Temperature(s).Replace($" {unit.Symbol}", "", StringComparison.Ordinal);

    private void Names(Standing[] shown, Columns columns, double top, double height)
    {
        double name = columns.NameRight - left - size * 1.4;
        for (int i = 0; i < shown.Length; i++)
        {
            double middle = top + height * (i + 0.5);
            sheet.Line(left, top + height * i, right, top + height * i, sheet.Colours.Grid, 1.5);
            sheet.Mark(shown[i].Look, left + size * 0.5, middle, size * 0.36);
            string clean = Typesetter.Clean(shown[i].Option.Name);
            IReadOnlyList<string> lines = height >= size * TwoLines ? sheet.Type.Wrap(clean, size, true, name, int.MaxValue) : [clean];
            lines = lines.Count <= 2 ? lines : [lines[0], string.Join(" ", lines.Skip(1))];
            for (int l = 0; l < lines.Count; l++)
            {
                string cut = sheet.Type.CutMiddle(lines[l], size, true, name);
                sheet.Text(cut, left + size * 1.4, middle + size * (0.36 + 1.2 * (l - (lines.Count - 1) / 2.0)), size, bold: true, whole: cut == lines[l] ? null : clean);
            }

            sheet.Text(Runs(shown[i]), columns.RunsRight, middle + size * 0.36, size, colour: sheet.Colours.Quiet, hang: Hang.End);
        }
    }

    private void Bars(Standing[] shown, Column column, string head, double top, double height, Func<Standing, Summary> of, bool loud)
    {
        double bottom = top + height * shown.Length, bar = Math.Min(size / 15, height / 26);
        Scale scale = Scale.Holding(shown.SelectMany(s => new[] { of(s).Q05, of(s).Q95 }).Select(unit.Temperature), column.From, column.To, unit.Difference(8));
        sheet.Text($"{head}, {unit.Symbol}", column.From, top - size * 0.45, size, bold: true);
        foreach (double tick in scale.Ticks(size * 3.2))
        {
            double half = sheet.Type.Width(Scale.Label(tick), size, false) / 2;
            sheet.Line(scale.At(tick), top, scale.At(tick), bottom + 6, sheet.Colours.Grid, 1.5);
            sheet.Text(Scale.Label(tick), Math.Clamp(scale.At(tick), column.From + half, column.To + size - half), bottom + size * 1.15, size, colour: sheet.Colours.Quiet, hang: Hang.Middle);
        }

        for (int i = 0; i < shown.Length; i++)
        {
            double middle = top + height * (i + 0.5);
            if (loud)
            {
                Interval.Loud(sheet, scale, middle, of(shown[i]), unit.Temperature, shown[i].Look, bar);
            }
            else
            {
                Interval.Quiet(sheet, scale, middle, of(shown[i]), unit.Temperature, bar);
            }

            sheet.Text(Value(of(shown[i])), column.ValueRight, middle + size * 0.36, size, bold: loud, colour: loud ? sheet.Colours.Ink : sheet.Colours.Quiet, hang: Hang.End);
        }
    }

    /// <summary>A column of bars with their numbers, px.</summary>
    private readonly record struct Column(double From, double To, double ValueRight);

    /// <summary>Where the columns stand, px: the names take what is left, at least a third.</summary>
    private sealed record Columns(double NameRight, double RunsRight, Column Can, Column? Winding)
    {
        public static Columns Of(PostRows rows, Standing[] shown)
        {
            double size = rows.Size, gap = size * 0.9;
            double Widest(IEnumerable<string> texts, bool bold) => texts.Max(t => rows.Type.Width(t, size, bold));
            double runs = Widest(shown.Select(Runs), false), can = Widest(shown.Select(s => rows.Value(s.Option.PeakCanC)), true);
            bool wide = rows.Right - rows.Left > WideFrom;
            double winding = wide ? Widest(shown.Select(s => rows.Value(s.Option.PeakWindingC)), false) : 0;
            double names = (rows.Right - rows.Left) * (wide ? 0.29 : 0.35);
            double bars = rows.Right - rows.Left - names - runs - can - 2.5 * gap - (wide ? winding + 2 * gap : 0);
            double bar = wide ? bars / 2 : bars, runsRight = rows.Left + names + gap / 2 + runs, from = runsRight + gap;
            var first = new Column(from, from + bar, from + bar + gap + can);
            return new(rows.Left + names, runsRight, first, wide ? new Column(first.ValueRight + gap, first.ValueRight + gap + bar, rows.Right) : null);
        }
    }
}
