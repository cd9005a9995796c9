namespace Coolproof.Commands;

/// <summary>Exit codes of every command.</summary>
internal static class Exit
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>The work failed: no convergence, a place that can't be written, stopped by hand.</summary>
    public const int Failed = 1;

    /// <summary>The table or the command line can't be used as it stands; nothing was written.</summary>
    public const int BadInput = 2;
}
