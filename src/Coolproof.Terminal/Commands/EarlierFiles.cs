using System.CommandLine;

namespace Coolproof.Commands;

/// <summary>The option --earlier of commands that judge a readings table together with those of earlier days.</summary>
internal static class EarlierFiles
{
    /// <summary>The option.</summary>
    /// <param name="description">What becomes of them.</param>
    public static Option<string[]> Option(string description) => new("--earlier") { HelpName = "FILE", Description = $"{description} May come several times.", AllowMultipleArgumentsPerToken = false };
}
