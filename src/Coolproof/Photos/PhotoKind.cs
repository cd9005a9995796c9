namespace Coolproof.Photos;

/// <summary>What sort of picture bytes are, by the bytes themselves and by nothing that is said of them.</summary>
internal enum PhotoKind
{
    /// <summary>None that can be kept.</summary>
    Other,
    /// <summary>JPEG.</summary>
    Jpeg,
    /// <summary>PNG.</summary>
    Png,
    /// <summary>WebP.</summary>
    WebP,
    /// <summary>HEIF (HEIC, AVIF): many browsers don't show it.</summary>
    Heif
}

/// <summary>Signatures at the beginning of files.</summary>
internal static class PhotoKinds
{
    /// <summary>The sort of a file.</summary>
    public static PhotoKind Of(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF])) return PhotoKind.Jpeg;
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A])) return PhotoKind.Png;
        if (bytes.Length >= 12 && bytes.StartsWith("RIFF"u8) && bytes[8..].StartsWith("WEBP"u8)) return PhotoKind.WebP;
        return bytes.Length >= 12 && bytes[4..].StartsWith("ftyp"u8) ? PhotoKind.Heif : PhotoKind.Other;
    }

    /// <summary>Its media type.</summary>
    public static string MediaType(this PhotoKind kind) => kind switch
    {
        PhotoKind.Jpeg => "image/jpeg",
        PhotoKind.Png => "image/png",
        PhotoKind.WebP => "image/webp",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "not a sort that is kept"),
    };
}
