using SkiaSharp;

namespace Coolproof.Photos;

/// <summary>A photo that may be kept: known by its content, of bearable size, without what it says of place, time and camera.</summary>
/// <param name="Kind">Its sort.</param>
/// <param name="Bytes">The file.</param>
/// <param name="Width">Pixels across, the right way up.</param>
/// <param name="Height">Pixels down, the right way up.</param>
internal sealed record CleanPhoto(PhotoKind Kind, byte[] Bytes, int Width, int Height)
{
    /// <summary>Largest file, bytes.</summary>
    public const int LargestBytes = 8_000_000;

    // A JPEG is looked at in an eighth of its size; the others have to be unpacked whole, 4 bytes a pixel.
    const long MostPixelsJpeg = 128_000_000;
    const long MostPixelsOther = 25_000_000;

    /// <summary>Cleans a file.</summary>
    /// <param name="file">Its bytes.</param>
    /// <param name="wrong">What is wrong and what to do, where null is returned.</param>
    public static CleanPhoto? Of(ReadOnlySpan<byte> file, out (string Reason, string Remedy) wrong)
    {
        wrong = default;
        var kind = PhotoKinds.Of(file);
        if (kind is PhotoKind.Heif) return Refuse(out wrong, "This is a HEIC or AVIF picture, which many browsers can't show.", "Set the phone's camera to the most compatible format (JPEG), or send a screenshot of it.");
        if (kind is PhotoKind.Other) return Refuse(out wrong, "This is no JPEG, PNG or WebP picture.", "Take the photo with the camera, or choose a picture file.");
        var bytes = kind switch { PhotoKind.Jpeg => JpegParts.Stripped(file), PhotoKind.Png => PngParts.Stripped(file), _ => WebPParts.Stripped(file) };
        if (bytes is null) return Refuse(out wrong, "The picture is cut off or damaged.", "Take it again, or choose another one.");
        using var data = SKData.CreateCopy(bytes);
        using var codec = SKCodec.Create(data);
        if (codec is null) return Refuse(out wrong, "The picture is damaged.", "Take it again, or choose another one.");
        var pixels = (long)codec.Info.Width * codec.Info.Height;
        if (pixels > (kind == PhotoKind.Jpeg ? MostPixelsJpeg : MostPixelsOther))
            return Refuse(out wrong, $"The picture has {pixels / 1_000_000} million pixels, which is more than a phone can show.", "Set the camera to a smaller size, such as 12 million.");
        if (!Draws(codec)) return Refuse(out wrong, "The picture is damaged: it can't be drawn to its end.", "Take it again, or choose another one.");
        var lying = codec.EncodedOrigin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom;
        return new CleanPhoto(kind, bytes, lying ? codec.Info.Height : codec.Info.Width, lying ? codec.Info.Width : codec.Info.Height);
    }

    static bool Draws(SKCodec codec)
    {
        var size = codec.GetScaledDimensions(0.125f);
        using var bitmap = new SKBitmap(new SKImageInfo(size.Width, size.Height));
        return bitmap.GetPixels() != IntPtr.Zero && codec.GetPixels(bitmap.Info, bitmap.GetPixels()) == SKCodecResult.Success;
    }

    static CleanPhoto? Refuse(out (string, string) wrong, string reason, string remedy)
    {
        wrong = (reason, remedy);
        return null;
    }
}
