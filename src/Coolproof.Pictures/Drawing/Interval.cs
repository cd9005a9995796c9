using Coolproof.Evidence;

namespace Coolproof.Pictures.Drawing;

/// <summary>Five quantiles on a scale: a mark in the middle, a thick bar for half, a thin one for nine tenths.</summary>
internal static class Interval
{
    /// <summary>The loud form, in the option's colour with its mark; so many times its usual size.</summary>
    public static void Loud(Sheet sheet, Scale scale, double y, Summary s, Func<double, double> unit, OptionLook look, double size = 1)
    {
        ThemeColours colours = sheet.Colours;
        double low = scale.At(unit(s.Q25)), high = scale.At(unit(s.Q75));
        sheet.Line(scale.At(unit(s.Q05)), y, scale.At(unit(s.Q95)), y, colours.Ink, 2 * size);
        // Paper below and colour thinned above: the mark in full colour stands out from its own bar, black ones included.
        sheet.Box(low, y - 5.5 * size, high, y + 5.5 * size, colours.Paper);
        sheet.Box(low, y - 5.5 * size, high, y + 5.5 * size, look.ColourOn(sheet.Style.Theme), 1.1 * size, 0.42);
        sheet.Mark(look, scale.At(unit(s.Q50)), y, 6.5 * size);
    }

    /// <summary>The quiet form: thinner, without colour, an upright tick for the middle.</summary>
    public static void Quiet(Sheet sheet, Scale scale, double y, Summary s, Func<double, double> unit, double size = 1)
    {
        string ink = sheet.Colours.Quiet;
        double middle = scale.At(unit(s.Q50));
        sheet.Line(scale.At(unit(s.Q05)), y, scale.At(unit(s.Q95)), y, ink, 1.1 * size);
        sheet.Line(scale.At(unit(s.Q25)), y, scale.At(unit(s.Q75)), y, ink, 3.6 * size);
        sheet.Line(middle, y - 6 * size, middle, y + 6 * size, sheet.Colours.Paper, 4 * size);
        sheet.Line(middle, y - 6 * size, middle, y + 6 * size, ink, 1.8 * size);
    }
}
