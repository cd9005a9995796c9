using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures;

/// <summary>A run of a plan for its picture.</summary>
/// <param name="Option">Option.</param>
/// <param name="GoS">Go, s from the first go.</param>
/// <param name="HaltS">Halt, s from the first go.</param>
/// <param name="Clock">Clock time of the go, as it is written.</param>
public readonly record struct PlannedBar(string Option, double GoS, double HaltS, string Clock);

/// <summary>A day's plan as a timeline: one lane an option, one bar a run, numbered in the order of driving.</summary>
public static class PlanPicture
{
    private const double Lane = 46, Bar = 26, HalfHourS = 1800;

    /// <summary>Draws the plan.</summary>
    /// <param name="options">Options, one lane each.</param>
    /// <param name="runs">Runs in order.</param>
    /// <param name="finding">The plan in a sentence.</param>
    /// <param name="about">What holds for all runs.</param>
    /// <param name="style">Width and theme; null: a page, light.</param>
    /// <exception cref="ArgumentException">No run to draw.</exception>
    public static Picture Of(IReadOnlyList<string> options, IReadOnlyList<PlannedBar> runs, string finding, string about, PictureStyle? style = null)
    {
        if (runs.Count == 0) throw new ArgumentException("There is no run to draw.", nameof(runs));
        style ??= new();
        style.Check();
        var sheet = new Sheet(style, Typesetter.BuiltIn);
        Measures m = sheet.Measures;
        double top = Heading.Draw(sheet, finding, about) + m.Margin * 0.8;
        double names = (m.Right - m.Left) * (m.Narrow ? 0.30 : 0.24), left = m.Left + names, perS = (m.Right - left) / Math.Max(runs[^1].HaltS, 1);
        double bottom = top + Lane * options.Count;
        for (double s = 0; s <= runs[^1].HaltS; s += HalfHourS)
        {
            sheet.Line(left + s * perS, top, left + s * perS, bottom, sheet.Colours.Grid, 1);
            if (!m.Narrow || s % (2 * HalfHourS) == 0)
                sheet.Text($"{s / 60:0} min", left + s * perS, bottom + m.SmallSize * 1.3, m.SmallSize, colour: sheet.Colours.Quiet);
        }

        for (int o = 0; o < options.Count; o++)
        {
            double middle = top + Lane * (o + 0.5);
            OptionLook look = style.Looks?.GetValueOrDefault(options[o]) ?? OptionLook.At(o);
            sheet.Mark(look, m.Left + 8, middle, 7);
            sheet.Paragraph(options[o], m.Left + 24, middle - m.SmallSize * 0.75, names - 34, m.SmallSize, maxLines: 2, leading: 1.15);
            for (int i = 0; i < runs.Count; i++)
            {
                if (runs[i].Option != options[o])
                    continue;
                double x = left + runs[i].GoS * perS, end = Math.Max(left + runs[i].HaltS * perS, x + 3);
                sheet.Box(x, middle - Bar / 2, end, middle + Bar / 2, look.ColourOn(style.Theme), outline: 1.1);
                sheet.Text($"{i + 1}", x, middle - Bar / 2 - 3, m.SmallSize * 0.85);
            }
        }

        string inWords = string.Join(" ", runs.Select((r, i) => $"{i + 1}: {r.Clock} {r.Option}."));
        return new(sheet, Heading.Foot(sheet, bottom + m.SmallSize * 2.4, ["Numbers are the order of driving. Drawn by Coolproof.", style.Note]), finding, inWords);
    }
}
