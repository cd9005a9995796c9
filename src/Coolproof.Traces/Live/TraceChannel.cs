using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace Coolproof.Traces.Live;

/// <summary>What one sensor tells: a channel is the same as long as its source, name and unit are.</summary>
/// <param name="Source">Where it came from, such as "serial ttyUSB0".</param>
/// <param name="Name">What the sender calls it.</param>
/// <param name="Unit">Unit of its values; empty for none.</param>
public sealed record TraceChannel(string Source, string Name, string Unit)
{
    /// <summary>A short word for addresses and file names: the name's letters and digits, and eight hexadecimal digits that tell it from all others.</summary>
    public string Key { get; } = $"{Plain(Name)}-{Digest(Source, Name, Unit):x8}";

    static string Plain(string name)
    {
        var plain = new string([.. name.ToLowerInvariant().Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '-').Take(24)]).Trim('-');
        return plain.Length > 0 ? plain : "channel";
    }

    static uint Digest(string source, string name, string unit) =>
        BinaryPrimitives.ReadUInt32BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes($"{source}\n{name}\n{unit}")));
}
