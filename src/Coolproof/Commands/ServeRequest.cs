using Coolproof.Live.Sources;

namespace Coolproof.Commands;

/// <summary>What `coolproof serve` was asked.</summary>
/// <param name="Port">Port; 0 for any free one; null: the usual one, or any free one where that is taken.</param>
/// <param name="HttpsPort">Port of HTTPS; null: the one after the port.</param>
/// <param name="Lan">Whether other machines may connect.</param>
/// <param name="Store">The notebook's place; null: in the person's data folder.</param>
/// <param name="Certificate">File of a certificate for HTTPS; null: one that the machine makes.</param>
/// <param name="CertificatePassword">Its password; null for none.</param>
/// <param name="OpenBrowser">Whether to open the pit table in the browser, where there is a display.</param>
internal sealed record ServeRequest(int? Port, int? HttpsPort, bool Lan, string? Store, string? Certificate, string? CertificatePassword, bool OpenBrowser)
{
    /// <summary>What it listens to.</summary>
    public SensorSources Sensors { get; init; } = SensorSources.None;

    /// <summary>Plain `coolproof`.</summary>
    public static ServeRequest Plain { get; } = new(null, null, Lan: false, null, null, null, OpenBrowser: true);
}
