namespace Coolproof.Web;

/// <summary>How the pit table is served.</summary>
/// <param name="Port">Port; 0 for any free one.</param>
/// <param name="Lan">Whether other machines on the network may connect.</param>
/// <param name="Folder">Where this machine keeps what isn't the notebook's: keys and certificates.</param>
internal sealed record WebSettings(int Port, bool Lan, string Folder)
{
    /// <summary>The port where none is given.</summary>
    public const int UsualPort = 7370;
}
