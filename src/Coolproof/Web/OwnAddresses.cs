using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace Coolproof.Web;

/// <summary>Where this machine can be reached on the networks that it is in.</summary>
internal static class OwnAddresses
{
    static readonly string[] Inner = ["docker", "veth", "br-", "virbr", "tun", "tap", "wg", "lxc", "cni"];

    /// <summary>IPv4 addresses: those that phones are likely to reach first.</summary>
    public static IReadOnlyList<IPAddress> All() =>
    [
        .. NetworkInterface.GetAllNetworkInterfaces()
            .Where(card => card.OperationalStatus == OperationalStatus.Up && card.NetworkInterfaceType != NetworkInterfaceType.Loopback)
            .OrderBy(card => Inner.Any(prefix => card.Name.StartsWith(prefix, StringComparison.Ordinal)))
            .ThenByDescending(card => card.NetworkInterfaceType == NetworkInterfaceType.Wireless80211)
            .SelectMany(card => card.GetIPProperties().UnicastAddresses)
            .Select(unicast => unicast.Address)
            .Where(address => address.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(address))
            .Distinct(),
    ];

    /// <summary>The name that phones on the same network may find it by (multicast DNS).</summary>
    public static string Name() => $"{Dns.GetHostName().Split('.')[0].ToLowerInvariant()}.local";
}
