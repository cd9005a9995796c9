using System.Globalization;
using Coolproof.Evidence.Forecasts;

namespace Coolproof.Pictures.Drawing;

/// <summary>Odds by air and length of race in squares: the number in each, bold on a ground where it is above the odds accepted; the day asked for is framed.</summary>
internal sealed class RaceMapPanel(Sheet sheet, RaceMap map, RaceScenario scenario, double acceptedOdds, OptionLook look)
{
    private readonly Measures m = sheet.Measures;
    private readonly Degrees unit = sheet.Style.Unit;

    /// <summary>What the squares say, in a sentence.</summary>
    public static string About(RaceMap map, double acceptedOdds) =>
        $"{Typesetter.Clean(map.Option)}: odds in 100 of passing any limit, by air and length of race. Bold on a ground: above the {Whole(100 * acceptedOdds)} that you accept. Framed: the day asked for.";

    /// <summary>Draws from the top down, warmest air first.</summary>
    /// <returns>The y below the lengths.</returns>
    public double Draw(double top)
    {
        double size = m.SmallSize, row = size * 2.1, first = sheet.Paragraph(About(map, acceptedOdds), m.Left, top, m.Right - m.Left, size, colour: sheet.Colours.Quiet) + size * 0.8;
        string[] airs = [.. map.AirsC.Select(air => new Words(unit, 0).Temperature(air))];
        double left = m.Left + airs.Max(air => sheet.Type.Width(air, size, false)) + 10, column = Math.Min((m.Right - left) / map.RacesS.Count, 90);
        for (int a = 0; a < airs.Length; a++)
        {
            double at = first + (airs.Length - 1 - a) * row;
            sheet.Text(airs[a], left - 8, at + row * 0.5 + size * 0.36, size, colour: sheet.Colours.Quiet, hang: Hang.End);
            for (int l = 0; l < map.RacesS.Count; l++)
                Square(map.Odds[a][l], left + l * column, at, column, row);
        }
        int asked = map.AirsC.ToList().IndexOf(scenario.AirC), length = map.RacesS.ToList().IndexOf(scenario.RaceS);
        double x = left + length * column, y = first + (airs.Length - 1 - asked) * row;
        sheet.Box(x, y, x + column, y + row, sheet.Colours.Paper, outline: 2, opacity: 0);
        double bottom = first + airs.Length * row;
        for (int l = 0; l < map.RacesS.Count; l++)
            sheet.Text(Minutes(map.RacesS[l]), left + (l + 0.5) * column, bottom + size * 1.25, size, colour: sheet.Colours.Quiet, hang: Hang.Middle);
        sheet.Text("min", left - 8, bottom + size * 1.25, size, colour: sheet.Colours.Quiet, hang: Hang.End);
        return bottom + size * 2.4;
    }

    private void Square(double odds, double x, double y, double width, double height)
    {
        bool above = odds > acceptedOdds;
        if (above) sheet.Box(x + 1, y + 1, x + width - 1, y + height - 1, odds > 0.5 ? look.ColourOn(sheet.Style.Theme) : sheet.Colours.Band, opacity: odds > 0.5 ? sheet.Colours.BandOpacity : 1);
        sheet.Text(odds < 0.005 ? "<1" : odds > 0.995 ? ">99" : Whole(100 * odds), x + width / 2, y + height / 2 + m.SmallSize * 0.36, m.SmallSize, bold: above, hang: Hang.Middle);
    }

    private static string Minutes(double seconds) => seconds % 60 == 0 ? Whole(seconds / 60) : string.Create(CultureInfo.InvariantCulture, $"{(int)(seconds / 60)}:{seconds % 60:00}");

    private static string Whole(double value) => value.ToString("0", CultureInfo.InvariantCulture);
}
