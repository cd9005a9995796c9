using SkiaSharp;

namespace Coolproof.Pictures.Tests;

/// <summary>A PNG read back as pixels.</summary>
internal sealed class Image : IDisposable
{
    private readonly SKBitmap bitmap;

    public Image(byte[] png) => bitmap = SKBitmap.Decode(png) ?? throw new ArgumentException("Not an image.", nameof(png));

    public int Width => bitmap.Width;

    public int Height => bitmap.Height;

    /// <summary>Pixels of a rectangle that are near a colour: within a third of the way from black to white.</summary>
    public int Near(string colour, double left, double top, double right, double bottom)
    {
        SKColor wanted = SKColor.Parse(colour);
        int count = 0;
        for (int y = Math.Max(0, (int)top); y < Math.Min(Height, bottom); y++)
        {
            for (int x = Math.Max(0, (int)left); x < Math.Min(Width, right); x++)
            {
                SKColor c = bitmap.GetPixel(x, y);
                count += Math.Abs(c.Red - wanted.Red) + Math.Abs(c.Green - wanted.Green) + Math.Abs(c.Blue - wanted.Blue) < 210 ? 1 : 0;
            }
        }

        return count;
    }

    public void Dispose() => bitmap.Dispose();
}
