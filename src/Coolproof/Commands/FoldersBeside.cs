using System.Security.Cryptography;
using System.Text;
using Coolproof.Store;

namespace Coolproof.Commands;

/// <summary>The folders beside a notebook, for what is too large for its journal.</summary>
/// <param name="Loggers">Loggers' traces, each in a file that is named for its SHA-256.</param>
/// <param name="Sensors">What live sensors told, a folder a day.</param>
internal sealed record FoldersBeside(string Loggers, string Sensors)
{
    const string Ending = ".trace";

    /// <summary>Those of a notebook.</summary>
    /// <param name="place">The notebook's place.</param>
    /// <param name="dataFolder">This machine's own folder, for a notebook that is a database elsewhere: they are on this machine only.</param>
    public static FoldersBeside Of(string place, string dataFolder)
    {
        if (StoreOption.IsFile(place)) return new(Path.GetFullPath(place) + ".loggers", Path.GetFullPath(place) + ".traces");
        var known = Known(place);
        return new(Path.Combine(dataFolder, $"loggers-{known}"), Path.Combine(dataFolder, $"traces-{known}"));
    }

    /// <summary>Twelve letters and digits for a place that is no file.</summary>
    public static string Known(string place) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(place)))[..12];

    /// <summary>As they go into backups.</summary>
    public IReadOnlyList<FolderBeside> All => [new("loggers", Loggers, Ending), new("sensors", Sensors, Ending)];
}
