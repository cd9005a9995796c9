using Coolproof.Notebook;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures;

/// <summary>Mounts as they were entered, all to one scale: along the can's axis and from its side, with their measures.</summary>
public static class MountPicture
{
    /// <summary>Draws mounts one below the other.</summary>
    /// <param name="sheet">What was entered.</param>
    /// <param name="said">A line for each mount, such as its prediction; null: none.</param>
    /// <param name="style">Width, theme; null: a page, light.</param>
    /// <exception cref="ArgumentException">No mount, or not one line for each.</exception>
    public static Picture Of(MountSheet sheet, IReadOnlyList<string>? said = null, PictureStyle? style = null)
    {
        if (sheet.Mounts.Count == 0) throw new ArgumentException("There is no mount to draw.", nameof(sheet));
        if (said is not null && said.Count != sheet.Mounts.Count) throw new ArgumentException($"{said.Count} lines for {sheet.Mounts.Count} mounts.", nameof(said));
        style ??= new();
        style.Check();
        var sheetOf = new Sheet(style, Typesetter.BuiltIn);
        Measures m = sheetOf.Measures;
        MountScale scale = MountScale.Of(sheet, m);
        string finding = style.Title ?? (sheet.Mounts.Count == 1 ? $"{Typesetter.Clean(sheet.Mounts[0].Name)}, as entered" : $"{sheet.Mounts.Count} mounts, as entered");
        const string About = "To scale: along the can’s axis, and from its side. Pale: the stream, as it is reckoned to spread. Clamp, fins, grille and leaks are drawn by sign only, a long duct cut short.";
        double y = Heading.Draw(sheetOf, finding, About) + m.Margin * 0.6;
        y = scale.Bar(sheetOf, y);
        List<string> words = [];
        for (int i = 0; i < sheet.Mounts.Count; i++)
        {
            MountPanel panel = new(sheetOf, sheet, sheet.Mounts[i], scale);
            y = panel.Draw(y + m.Margin * 0.4, said?[i]) + m.Margin * 0.4;
            words.Add($"{Typesetter.Clean(sheet.Mounts[i].Name)}: {string.Join(", ", panel.Labels)}.");
        }
        return new(sheetOf, Heading.Foot(sheetOf, y, ["As entered, not as measured by us. Drawn by Coolproof.", style.Note]), finding, $"{About} {string.Join(" ", words)}");
    }
}
