using System.Runtime;

namespace Coolproof;

/// <summary>
/// What a command compiled to machine code when it last ran, kept beside the program: at its next start a second core compiles that ahead while the first one reads.
/// Where the folder can't be written to, or the file is of another build, the start is merely slower.
/// </summary>
internal static class LastStart
{
    /// <summary>Commands whose start is waited for.</summary>
    private static readonly string[] Kept = ["compare", "plan", "serve"];

    /// <summary>Compiles ahead what the command of these arguments will need, and keeps what it needed.</summary>
    public static void Remember(string[] args)
    {
        string command = args is [var first, ..] ? first : "serve";
        if (!Kept.Contains(command))
            return;
        ProfileOptimization.SetProfileRoot(AppContext.BaseDirectory);
        ProfileOptimization.StartProfile($"{command}.start");
    }
}
