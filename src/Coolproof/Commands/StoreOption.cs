using System.CommandLine;
using Coolproof.Web;

namespace Coolproof.Commands;

/// <summary>The option that names the notebook.</summary>
internal static class StoreOption
{
    /// <summary>The option.</summary>
    public static Option<string?> Make() => new("--store") { HelpName = "FILE|postgres://…", Description = "The notebook. Otherwise one in your own data folder." };

    /// <summary>The notebook's place.</summary>
    /// <param name="given">What the option says; null: the one in the data folder.</param>
    /// <exception cref="IOException">The data folder can't be made.</exception>
    public static string Place(string? given) => given ?? Path.Combine(DataFolder.Of(Environment.GetEnvironmentVariable), "notebook.coolproof");

    /// <summary>Whether a place is a file, not a database.</summary>
    public static bool IsFile(string place) => !place.Contains("://", StringComparison.Ordinal) && !place.Contains("Host=", StringComparison.OrdinalIgnoreCase);
}
