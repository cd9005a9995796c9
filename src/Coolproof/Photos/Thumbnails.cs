using SkiaSharp;

namespace Coolproof.Photos;

/// <summary>Photos made small for pages, the right way up; the last ones are held in memory.</summary>
internal sealed class Thumbnails
{
    /// <summary>Widths that are made.</summary>
    public static readonly int[] Widths = [160, 320, 640, 1280];

    const int Quality = 80;
    const int MostHeld = 100;

    readonly Lock turn = new();
    readonly Dictionary<(Guid, int), byte[]> held = [];
    readonly Queue<(Guid, int)> order = new();

    /// <summary>A photo as a JPEG of a width; null when it can't be drawn.</summary>
    public byte[]? Of(Guid id, int width, byte[] photo)
    {
        lock (turn)
        {
            if (held.TryGetValue((id, width), out var there)) return there;
        }
        if (Make(photo, width) is not { } made) return null;
        lock (turn)
        {
            if (held.TryAdd((id, width), made)) order.Enqueue((id, width));
            if (order.Count > MostHeld) held.Remove(order.Dequeue());
        }
        return made;
    }

    static byte[]? Make(byte[] photo, int width)
    {
        using var data = SKData.CreateCopy(photo);
        using var codec = SKCodec.Create(data);
        if (codec is null) return null;
        var lying = codec.EncodedOrigin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom;
        var across = lying ? codec.Info.Height : codec.Info.Width;
        var size = codec.GetScaledDimensions(Math.Min(1, (float)width / across));
        using var read = new SKBitmap(new SKImageInfo(size.Width, size.Height));
        if (codec.GetPixels(read.Info, read.GetPixels()) is not (SKCodecResult.Success or SKCodecResult.IncompleteInput)) return null;
        var scale = Math.Min(1, width / (float)(lying ? size.Height : size.Width));
        var (w, h) = (Math.Max(1, (int)Math.Round(size.Width * scale)), Math.Max(1, (int)Math.Round(size.Height * scale)));
        using var surface = SKSurface.Create(lying ? new SKImageInfo(h, w) : new SKImageInfo(w, h));
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.SetMatrix(Upright(codec.EncodedOrigin, w, h));
        using var image = SKImage.FromBitmap(read);
        surface.Canvas.DrawImage(image, new SKRect(0, 0, w, h), new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        using var drawn = surface.Snapshot();
        using var coded = drawn.Encode(SKEncodedImageFormat.Jpeg, Quality);
        return coded.ToArray();
    }

    // Where the corner of the picture as stored goes, by Exif's eight cases.
    static SKMatrix Upright(SKEncodedOrigin origin, int w, int h) => origin switch
    {
        SKEncodedOrigin.TopRight => new SKMatrix(-1, 0, w, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new SKMatrix(-1, 0, w, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new SKMatrix(1, 0, 0, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new SKMatrix(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new SKMatrix(0, -1, h, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new SKMatrix(0, -1, h, -1, 0, w, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new SKMatrix(0, 1, 0, -1, 0, w, 0, 0, 1),
        _ => SKMatrix.Identity,
    };
}
