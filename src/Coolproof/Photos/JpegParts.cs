using System.Buffers.Binary;

namespace Coolproof.Photos;

/// <summary>A JPEG file (ITU-T T.81, annex B) without what it says of place, time, camera and person; the picture itself is not touched.</summary>
internal static class JpegParts
{
    const byte StartOfScan = 0xDA, EndOfImage = 0xD9, App0 = 0xE0, App1 = 0xE1, App2 = 0xE2, App14 = 0xEE, App15 = 0xEF, Comment = 0xFE;

    /// <summary>The file with the picture, its colour profile and which way is up; null when it is cut off or no JPEG.</summary>
    public static byte[]? Stripped(ReadOnlySpan<byte> file)
    {
        var orientation = 1;
        using var kept = new MemoryStream(file.Length);
        var at = 2;
        while (at + 4 <= file.Length || (at + 2 <= file.Length && file[at + 1] == EndOfImage))
        {
            if (file[at] != 0xFF) return null;
            var marker = file[at + 1];
            if (marker == 0xFF) // a fill byte
            {
                at++;
                continue;
            }
            if (marker == EndOfImage)
            {
                kept.Write([0xFF, EndOfImage]);
                return [0xFF, 0xD8, .. UpIs(orientation), .. kept.ToArray()]; // what comes behind it (a film, a second picture) goes
            }
            if (marker is 0x01 or (>= 0xD0 and <= 0xD8)) return null; // stand alone, and none may stand here
            var length = BinaryPrimitives.ReadUInt16BigEndian(file[(at + 2)..]);
            if (length < 2 || at + 2 + length > file.Length) return null;
            var segment = file.Slice(at, 2 + length);
            if (marker == App1 && Orientation(segment[4..]) is { } said) orientation = said;
            if (Keeps(marker, segment[4..])) kept.Write(segment);
            at += segment.Length;
            if (marker != StartOfScan) continue;
            var end = EndOfScan(file, at);
            kept.Write(file[at..end]);
            at = end;
        }
        return null;
    }

    static bool Keeps(byte marker, ReadOnlySpan<byte> content) => marker switch
    {
        App0 => content.StartsWith("JFIF\0"u8),
        App2 => content.StartsWith("ICC_PROFILE\0"u8),
        App14 => content.StartsWith("Adobe"u8), // without it colours come out wrong
        >= App1 and <= App15 or Comment => false,
        _ => true,
    };

    // Data of a scan go on until a marker that is neither a stuffed zero nor a restart.
    static int EndOfScan(ReadOnlySpan<byte> file, int at)
    {
        while (at + 1 < file.Length)
        {
            var next = file[at..].IndexOf((byte)0xFF);
            if (next < 0) return file.Length;
            at += next;
            if (at + 1 >= file.Length) return file.Length;
            if (file[at + 1] is not (0x00 or 0xFF or (>= 0xD0 and <= 0xD7))) return at;
            at += file[at + 1] == 0xFF ? 1 : 2;
        }
        return file.Length;
    }

    /// <summary>Which way is up, by Exif (JEITA CP-3451, tag 0112 of the first directory): 1 to 8; null when it isn't said.</summary>
    static int? Orientation(ReadOnlySpan<byte> content)
    {
        if (!content.StartsWith("Exif\0\0"u8)) return null;
        var tiff = content[6..];
        if (tiff.Length < 8) return null;
        var little = tiff[0] == 'I';
        ushort Short(ReadOnlySpan<byte> from) => little ? BinaryPrimitives.ReadUInt16LittleEndian(from) : BinaryPrimitives.ReadUInt16BigEndian(from);
        var directory = little ? BinaryPrimitives.ReadUInt32LittleEndian(tiff[4..]) : BinaryPrimitives.ReadUInt32BigEndian(tiff[4..]);
        if (directory + 2 > tiff.Length) return null;
        var entries = tiff[(int)directory..];
        int count = Short(entries);
        for (var i = 0; i < count && 2 + (12 * (i + 1)) <= entries.Length; i++)
        {
            var entry = entries[(2 + (12 * i))..];
            if (Short(entry) == 0x0112) return Short(entry[8..]) is >= 1 and <= 8 and var said ? said : null;
        }
        return null;
    }

    /// <summary>An Exif segment that says which way is up and nothing else; none where it stands upright.</summary>
    static byte[] UpIs(int orientation) => orientation == 1 ? [] :
    [
        0xFF, App1, 0, 34, .. "Exif\0\0MM\0*"u8, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte)orientation, 0, 0, 0, 0, 0, 0,
    ];
}
