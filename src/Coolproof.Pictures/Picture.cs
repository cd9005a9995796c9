using System.Text;
using Coolproof.Pictures.Drawing;
using SkiaSharp;

namespace Coolproof.Pictures;

/// <summary>A finished drawing. The same picture gives the same bytes each time.</summary>
public sealed class Picture
{
    private readonly Sheet sheet;

    internal Picture(Sheet sheet, double height, string title, string description)
    {
        this.sheet = sheet;
        WidthPx = sheet.Style.WidthPx;
        HeightPx = (int)Math.Ceiling(height);
        Title = title;
        Description = description;
    }

    /// <summary>Width of the layout, px.</summary>
    public int WidthPx { get; }

    /// <summary>Height of the layout, px: it grows with what there is to show.</summary>
    public int HeightPx { get; }

    /// <summary>The finding.</summary>
    public string Title { get; }

    /// <summary>What the picture shows, in words, for who can't see it.</summary>
    public string Description { get; }

    internal IReadOnlyList<Shape> Shapes => sheet.Shapes;

    internal IEnumerable<Writing> Words => sheet.Shapes.OfType<Writing>();

    /// <summary>The picture as SVG with real text, a title and a description.</summary>
    public string Svg() => SvgPage.Of(sheet, WidthPx, HeightPx, Title, Description);

    /// <summary>
    /// The picture as SVG for a page whose theme only the browser knows: colours of the light theme, each as a variable that the page may set: --picture-paper, -ink, -quiet,
    /// -grid, -band, and -black for the palette's black.
    /// </summary>
    /// <exception cref="InvalidOperationException">The picture was not drawn in the light theme.</exception>
    public string SvgThatFollowsThePage() => sheet.Style.Theme == Theme.Light
        ? SvgPage.Of(sheet, WidthPx, HeightPx, Title, Description, PageColours.Put)
        : throw new InvalidOperationException($"Drawn in the theme {sheet.Style.Theme}, but only a picture in the light theme can follow the page.");

    /// <summary>The picture as PNG.</summary>
    /// <exception cref="PictureException">The machine could not make an image of this size.</exception>
    public byte[] Png()
    {
        int density = sheet.Style.PixelDensity;
        using SKSurface surface = SKSurface.Create(new SKImageInfo(WidthPx * density, HeightPx * density))
            ?? throw new PictureException($"Nothing was drawn: an image of {WidthPx * density} by {HeightPx * density} pixels is too large here. Your readings are safe. Draw it as .svg instead.");
        SKCanvas canvas = surface.Canvas;
        canvas.Clear(SKColor.Parse(sheet.Colours.Paper));
        canvas.Scale(density);
        PlotPaper.Draw(canvas, sheet.Shapes.Where(s => s is not Writing), WidthPx, HeightPx);
        foreach (Writing writing in Words)
        {
            sheet.Type.Draw(canvas, writing);
        }

        using SKImage image = surface.Snapshot();
        using SKData data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    /// <summary>Writes the picture: SVG or PNG by the path's extension. A file that is there is replaced whole or left as it is.</summary>
    /// <param name="path">Ends in .svg or .png.</param>
    /// <exception cref="PictureException">Another extension, or a place that can't be written.</exception>
    public void Save(string path)
    {
        byte[] content = Path.GetExtension(path).ToLowerInvariant() switch
        {
            ".svg" => new UTF8Encoding(false).GetBytes(Svg()),
            ".png" => Png(),
            _ => throw new PictureException($"The picture was not written: \"{path}\" ends in neither .svg nor .png. Nothing was changed. Give it one of the two."),
        };
        string beside = path + ".part";
        try
        {
            File.WriteAllBytes(beside, content);
            File.Move(beside, path, overwrite: true);
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            Forget(beside);
            throw new PictureException(
                $"The picture was not written to \"{path}\": {cause.Message} Your readings are safe. Choose a folder that exists and that you may write to.", cause);
        }
    }

    private static void Forget(string beside)
    {
        try
        {
            File.Delete(beside);
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            // What could not be written can't be removed either; the message to come says what went wrong.
        }
    }
}
