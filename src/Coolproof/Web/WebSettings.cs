using System.Security.Cryptography.X509Certificates;
using Coolproof.Live.Sources;

namespace Coolproof.Web;

/// <summary>How the pit table is served.</summary>
/// <param name="Port">Port; 0 for any free one.</param>
/// <param name="Lan">Whether other machines on the network may connect.</param>
/// <param name="Folder">Where this machine keeps what isn't the notebook's: keys and certificates.</param>
/// <param name="PairedFile">Where it keeps who may connect: beside the notebook.</param>
internal sealed record WebSettings(int Port, bool Lan, string Folder, string PairedFile)
{
    /// <summary>The port where none is given.</summary>
    public const int UsualPort = 7370;

    /// <summary>Port of HTTPS: the one after <see cref="Port"/> where none is given; 0 for any free one.</summary>
    public int HttpsPort { get; init; }

    /// <summary>What it listens to besides what is posted to it.</summary>
    public SensorSources Sensors { get; init; } = SensorSources.None;

    /// <summary>Where it keeps what sensors tell: beside the notebook.</summary>
    public string TracesFolder { get; init; } = Path.Combine(Folder, "traces");

    /// <summary>Where loggers' traces are kept: beside the notebook.</summary>
    public string LoggersFolder { get; init; } = Path.Combine(Folder, "loggers");

    /// <summary>The certificate of HTTPS; null: only plain HTTP.</summary>
    public X509Certificate2? Certificate { get; init; }

    /// <summary>The certificate that a phone has to trust for it, for download; null where a given certificate is used, or none.</summary>
    public X509Certificate2? Authority { get; init; }
}
