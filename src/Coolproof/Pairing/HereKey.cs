using System.Net;
using System.Security.Cryptography;
using System.Text;

namespace Coolproof.Pairing;

/// <summary>
/// What is in the address that the program prints: it lets the laptop's own browser in, and nobody else on the laptop, for as long as the program runs. It only counts from
/// this machine itself.
/// </summary>
internal sealed class HereKey
{
    /// <summary>The key.</summary>
    public string Text { get; } = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(24));

    /// <summary>The address with the key.</summary>
    public string In(string address) => $"{address.TrimEnd('/')}/connect/here?key={Text}";

    /// <summary>Whether it is right.</summary>
    public bool Opens(string? key, IPAddress? from) => from is not null && IPAddress.IsLoopback(from.IsIPv4MappedToIPv6 ? from.MapToIPv4() : from) && key is not null
        && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(key), Encoding.UTF8.GetBytes(Text));
}
