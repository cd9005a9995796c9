using Coolproof.Evidence;

namespace Coolproof.Pictures.Drawing;

/// <summary>Five quantiles on a scale: a mark in the middle, a thick bar for half, a thin one for nine tenths.</summary>
internal static class Interval
{
    /// <summary>The loud form, in the option's colour with its mark.</summary>
    public static void Loud(Sheet sheet, Scale scale, double y, Summary s, Func<double, double> unit, OptionLook look)
    {
        ThemeColours colours = sheet.Colours;
        double low = scale.At(unit(s.Q25)), high = scale.At(unit(s.Q75));
        sheet.Line(scale.At(unit(s.Q05)), y, scale.At(unit(s.Q95)), y, colours.Ink, 2);
        // Paper below and colour thinned above: the mark in full colour stands out from its own bar, black ones included.
        sheet.Box(low, y - 5.5, high, y + 5.5, colours.Paper);
        sheet.Box(low, y - 5.5, high, y + 5.5, look.ColourOn(sheet.Style.Theme), 1.1, 0.42);
        sheet.Mark(look, scale.At(unit(s.Q50)), y, 6.5);
    }

    /// <summary>The quiet form: thinner, without colour, an upright tick for the middle.</summary>
    public static void Quiet(Sheet sheet, Scale scale, double y, Summary s, Func<double, double> unit)
    {
        string ink = sheet.Colours.Quiet;
        double middle = scale.At(unit(s.Q50));
        sheet.Line(scale.At(unit(s.Q05)), y, scale.At(unit(s.Q95)), y, ink, 1.1);
        sheet.Line(scale.At(unit(s.Q25)), y, scale.At(unit(s.Q75)), y, ink, 3.6);
        sheet.Line(middle, y - 6, middle, y + 6, sheet.Colours.Paper, 4);
        sheet.Line(middle, y - 6, middle, y + 6, ink, 1.8);
    }
}
