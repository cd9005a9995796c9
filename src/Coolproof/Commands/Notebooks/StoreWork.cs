using Coolproof.Screen;
using Coolproof.Store;

namespace Coolproof.Commands.Notebooks;

/// <summary>Work on a notebook, with words and an exit code for what can hinder it.</summary>
internal static class StoreWork
{
    /// <summary>Does it.</summary>
    /// <returns>The exit code.</returns>
    public static async Task<int> RunAsync(Terminal terminal, Func<Task<int>> work)
    {
        try
        {
            return await work();
        }
        catch (StoreException cause)
        {
            terminal.Error.WriteLine($"coolproof: {Cells.Clean(cause.Reason)} {Cells.Clean(cause.Remedy)}");
            return CodeOf(cause.Fault);
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException)
        {
            terminal.Error.WriteLine($"coolproof: {Cells.Clean(cause.Message)} Nothing was changed.");
            return Exit.Failed;
        }
    }

    /// <summary>Exit code of a store's fault: 2 where another word on the command line puts it right.</summary>
    public static int CodeOf(StoreFault fault) =>
        fault is StoreFault.BadPlace or StoreFault.AlreadyThere or StoreFault.NotANotebook or StoreFault.NewerVersion ? Exit.BadInput : Exit.Failed;
}
