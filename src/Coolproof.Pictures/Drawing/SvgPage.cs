using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;
using SkiaSharp;

namespace Coolproof.Pictures.Drawing;

/// <summary>A sheet as SVG: shapes as ScottPlot draws them, words as text that can be selected, searched and read aloud.</summary>
internal static partial class SvgPage
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static string Of(Sheet sheet, int width, int height, string title, string description, Action<XElement>? colours = null)
    {
        var page = new XElement(Svg + "svg",
            new XAttribute("width", width), new XAttribute("height", height), new XAttribute("viewBox", $"0 0 {width} {height}"),
            new XAttribute("role", "img"), new XAttribute("aria-labelledby", $"{sheet.Style.Id}-title {sheet.Style.Id}-description"),
            new XAttribute("font-family", $"{Typesetter.Family}, 'Helvetica Neue', Arial, 'Liberation Sans', sans-serif"),
            new XElement(Svg + "title", new XAttribute("id", sheet.Style.Id + "-title"), Typesetter.Clean(title)),
            new XElement(Svg + "desc", new XAttribute("id", sheet.Style.Id + "-description"), Typesetter.Clean(description)),
            new XElement(Svg + "rect", new XAttribute("width", width), new XAttribute("height", height), new XAttribute("fill", sheet.Colours.Paper)),
            Drawn(sheet.Shapes.Where(s => s is not Writing), width, height),
            sheet.Shapes.OfType<Writing>().Select(w => Text(w, sheet.Type)));
        colours?.Invoke(page);
        return Serialised(page);
    }

    /// <summary>What the plot draws, freed of the clip paths of whole-sheet size, whose names count on from picture to picture.</summary>
    private static IEnumerable<XElement> Drawn(IEnumerable<Shape> shapes, int width, int height)
    {
        using var stream = new MemoryStream();
        using (SKCanvas canvas = SKSvgCanvas.Create(new SKRect(0, 0, width, height), stream))
        {
            PlotPaper.Draw(canvas, shapes, width, height);
        }

        stream.Position = 0;
        return [.. XElement.Load(stream).Descendants().Where(e => e.Name.LocalName is not ("g" or "clipPath") && e.Parent?.Name.LocalName != "clipPath")
            .Select(e => new XElement(Svg + e.Name.LocalName, e.Attributes().Where(Says).Select(a => new XAttribute(a.Name, Shorter().Replace(a.Value, Short)))))];
    }

    // 4 is what it is anyway (SVG 1.1, 11.4).
    private static bool Says(XAttribute attribute) => attribute is not { Name.LocalName: "stroke-miterlimit", Value: "4" };

    /// <summary>Hundredths of a pixel are all that anyone sees; a page carries several pictures.</summary>
    [GeneratedRegex(@"(?<![\d#.])-?\d*\.\d{3,}(?:e-?\d+)?")]
    private static partial Regex Shorter();

    private static string Short(Match number) => Number(double.Parse(number.Value, CultureInfo.InvariantCulture));

    private static XElement Text(Writing writing, Typesetter type)
    {
        var text = new XElement(Svg + "text",
            new XAttribute("x", Number(writing.At.X)), new XAttribute("y", Number(writing.At.Y)), new XAttribute("font-size", Number(writing.Size)),
            new XAttribute("fill", writing.Colour));
        if (writing.Bold)
        {
            text.Add(new XAttribute("font-weight", "bold"));
        }

        if (writing.Hang != Hang.Start)
        {
            text.Add(new XAttribute("text-anchor", writing.Hang == Hang.End ? "end" : "middle"));
        }

        // A viewer without the typeface takes another one: the length that was laid out keeps its words off their neighbours.
        double length = type.Width(writing.Text, writing.Size, writing.Bold) + (writing.Then is { } t ? type.Width(t.Text, writing.Size, false) : 0);
        text.Add(
            new XAttribute("textLength", Number(length)), new XAttribute("lengthAdjust", "spacingAndGlyphs"),
            writing.Whole is null ? null : new XElement(Svg + "title", writing.Whole), writing.Text);
        if (writing.Then is { } then)
        {
            text.Add(new XElement(Svg + "tspan", new XAttribute("font-weight", "normal"), new XAttribute("fill", then.Colour), then.Text));
        }

        return text;
    }

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Serialised(XElement page)
    {
        var text = new StringBuilder();
        var settings = new XmlWriterSettings { OmitXmlDeclaration = true, Indent = true, IndentChars = " ", NewLineChars = "\n" };
        using (var writer = XmlWriter.Create(text, settings))
        {
            page.Save(writer);
        }

        return text.Append('\n').ToString();
    }
}
