using System.Globalization;

namespace Coolproof.Live.Sources;

/// <summary>A serial port as it is typed: DEVICE or DEVICE@BAUD.</summary>
/// <param name="Device">Path of the device.</param>
/// <param name="Baud">Speed, bits a second.</param>
public sealed record SerialPlace(string Device, int Baud)
{
    /// <summary>Speed where none is given.</summary>
    public const int UsualBaud = 115_200;

    /// <summary>The source's name.</summary>
    public string Name => $"serial {Path.GetFileName(Device)}";

    /// <summary>Reads it.</summary>
    /// <returns>The place, or a sentence that says what is wrong.</returns>
    public static (SerialPlace? Place, string? Problem) Of(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var at = typed.LastIndexOf('@');
        var (device, speed) = at < 0 ? (typed, UsualBaud.ToString(CultureInfo.InvariantCulture)) : (typed[..at], typed[(at + 1)..]);
        if (!device.StartsWith('/') || Path.GetFileName(device).Length == 0) return (null, $"\"{typed}\" names no device: write its path, such as /dev/ttyUSB0@115200.");
        return int.TryParse(speed, NumberStyles.None, CultureInfo.InvariantCulture, out var baud) && baud is >= 300 and <= 4_000_000
            ? (new(device, baud), null) : (null, $"\"{typed}\" has no speed after the @: 300 to 4000000 baud, such as /dev/ttyUSB0@115200.");
    }
}
