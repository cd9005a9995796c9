using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace Coolproof.Web;

/// <summary>Addresses at which a server answers.</summary>
/// <param name="Here">From this machine.</param>
/// <param name="Lan">From the networks that it is in; empty where it only answers this machine, or is in none.</param>
/// <param name="Secured">The same encrypted.</param>
internal sealed record ServedAt(string Here, IReadOnlyList<string> Lan, IReadOnlyList<string> Secured)
{
    /// <summary>The addresses of a server that has started.</summary>
    public static ServedAt Of(IServiceProvider services)
    {
        var bound = services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Select(address => new Uri(address.Replace("[::]", "0.0.0.0", StringComparison.Ordinal))).ToArray();
        var (plain, secured) = (bound.First(address => address.Scheme == "http").Port, bound.FirstOrDefault(address => address.Scheme == "https")?.Port);
        var hosts = services.GetRequiredService<WebSettings>().Lan ? OwnAddresses.All() : [];
        return new ServedAt(
            $"http://127.0.0.1:{plain}", [.. hosts.Select(host => $"http://{host}:{plain}")], secured is { } port ? [.. hosts.Select(host => $"https://{host}:{port}")] : []);
    }
}
