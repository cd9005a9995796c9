using System.Xml.Linq;

namespace Coolproof.Pictures.Drawing;

/// <summary>Turns the colours of the light theme into variables of the page that a picture stands in.</summary>
internal static class PageColours
{
    private static readonly ThemeColours Light = ThemeColours.Of(Theme.Light);

    private static readonly Dictionary<string, string> Variables = new(StringComparer.OrdinalIgnoreCase)
    {
        [Light.Paper] = Variable("paper", Light.Paper),
        [Light.Ink] = Variable("ink", Light.Ink),
        [Light.Quiet] = Variable("quiet", Light.Quiet),
        [Light.Grid] = Variable("grid", Light.Grid),
        [Light.Band] = Variable("band", Light.Band),
        [OptionLook.Palette[0]] = Variable("black", OptionLook.Palette[0]),
        // Half transparent black, as the plot writes it.
        ["#010101"] = Variable("black", OptionLook.Palette[0]),
    };

    /// <summary>Puts variables in place of colours, throughout.</summary>
    public static void Put(XElement page)
    {
        foreach (XElement element in page.Descendants())
        {
            foreach (XAttribute attribute in element.Attributes().Where(a => a.Name.LocalName is "fill" or "stroke"))
            {
                if (Variables.TryGetValue(attribute.Value, out string? variable)) attribute.Value = variable;
            }

            // A shape without a fill is black: that is how the plot writes it.
            if (element.Name.LocalName is "path" or "rect" or "circle" or "ellipse" or "polygon" && element.Attribute("fill") is null) element.Add(new XAttribute("fill", Variable("black", OptionLook.Palette[0])));
        }
    }

    private static string Variable(string name, string colour) => $"var(--picture-{name},{colour})";
}
