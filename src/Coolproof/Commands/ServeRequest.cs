using Coolproof.Web;

namespace Coolproof.Commands;

/// <summary>What `coolproof serve` was asked.</summary>
/// <param name="Port">Port; 0 for any free one.</param>
/// <param name="Lan">Whether other machines may connect.</param>
/// <param name="Store">The notebook's place; null: in the person's data folder.</param>
/// <param name="OpenBrowser">Whether to open the pit table in the browser, where there is a display.</param>
internal sealed record ServeRequest(int Port, bool Lan, string? Store, bool OpenBrowser)
{
    /// <summary>Plain `coolproof`.</summary>
    public static ServeRequest Plain { get; } = new(WebSettings.UsualPort, Lan: false, Store: null, OpenBrowser: true);
}
