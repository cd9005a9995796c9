using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures;

/// <summary>The typeface of the pictures for a page that is printed: its words then take the same room on every machine.</summary>
public static class PageTypeface
{
    private static readonly Lazy<string> Both = new(() => Face("Roboto-Regular.ttf", 400) + Face("Roboto-Bold.ttf", 700));

    /// <summary>Rules of CSS that carry the typeface with them, regular and bold: some 800 kB.</summary>
    public static string Css => Both.Value;

    private static string Face(string name, int weight)
    {
        using Stream file = typeof(PageTypeface).Assembly.GetManifestResourceStream(name)!;
        using var bytes = new MemoryStream();
        file.CopyTo(bytes);
        return $"@font-face {{ font-family: {Typesetter.Family}; font-weight: {weight}; src: url(data:font/ttf;base64,{Convert.ToBase64String(bytes.ToArray())}); }}\n";
    }
}
