using Coolproof.Pairing;

namespace Coolproof.Web;

/// <summary>Which static assets a device gets that isn't connected yet: what the page needs that it connects on.</summary>
internal static class ConnectingAssets
{
    static readonly string[] Needed = ["css/coolproof", "icon", "js/connect"];

    /// <summary>Marks them; others need a connected device like everything else.</summary>
    public static void OpenWhatConnectingNeeds(this IEndpointConventionBuilder assets) => assets.Add(endpoint =>
    {
        if (endpoint is RouteEndpointBuilder { RoutePattern.RawText: { } path } && Needed.Any(name => path.TrimStart('/').StartsWith(name + ".", StringComparison.Ordinal)))
            endpoint.Metadata.Add(new OpenToAllAttribute());
    });
}
