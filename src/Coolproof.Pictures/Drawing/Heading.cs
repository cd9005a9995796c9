namespace Coolproof.Pictures.Drawing;

/// <summary>The finding on top, the conditions beneath.</summary>
internal static class Heading
{
    /// <returns>The y below.</returns>
    public static double Draw(Sheet sheet, string finding, string conditions)
    {
        Measures m = sheet.Measures;
        double width = m.Right - m.Left;
        double y = sheet.Paragraph(finding, m.Left, m.Margin, width, m.TitleSize, bold: true, leading: 1.22);
        return sheet.Paragraph(conditions, m.Left, y + 6, width, m.BodySize, colour: sheet.Colours.Quiet);
    }

    /// <summary>Head of a section with an optional remark.</summary>
    /// <returns>The y below.</returns>
    public static double Section(Sheet sheet, double x, double y, double width, string head, string? remark)
    {
        Measures m = sheet.Measures;
        y = sheet.Paragraph(head, x, y, width, m.HeadSize, bold: true, maxLines: 4, leading: 1.24);
        return remark is null ? y : sheet.Paragraph(remark, x, y + 2, width, m.SmallSize, colour: sheet.Colours.Quiet);
    }

    /// <summary>Lines at the foot.</summary>
    /// <returns>The height of the picture.</returns>
    public static double Foot(Sheet sheet, double y, IEnumerable<string?> lines)
    {
        Measures m = sheet.Measures;
        string[] said = [.. lines.OfType<string>().Where(l => l.Length > 0)];
        if (said.Length > 0)
        {
            sheet.Line(m.Left, y, m.Right, y, sheet.Colours.Grid, 1);
            y += 10;
        }

        foreach (string line in said)
        {
            y = sheet.Paragraph(line, m.Left, y, m.Right - m.Left, m.SmallSize, colour: sheet.Colours.Quiet) + 3;
        }

        return y + m.Margin * 0.7;
    }
}
