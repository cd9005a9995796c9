using System.Runtime.InteropServices;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>A process that does one command: what its signals and its failures become.</summary>
internal static class ThisProcess
{
    /// <summary>Runs a command on this process's terminal; Ctrl+C and a polite kill stop it.</summary>
    /// <returns>The exit code.</returns>
    public static int Run(Func<Terminal, CancellationToken, int> command)
    {
        var terminal = Terminal.OfProcess();
        using var stop = new CancellationTokenSource();
        using var interrupted = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        using var terminated = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
        try
        {
            return command(terminal, stop.Token);
        }
        catch (OperationCanceledException)
        {
            terminal.Error.WriteLine("coolproof: stopped; nothing was written.");
            return Exit.Failed;
        }
        catch (IOException broken) when (broken.HResult == 32 || broken.Message.Contains("Broken pipe", StringComparison.Ordinal))
        {
            return Exit.Failed; // whoever read the answer has gone, as with `| head`
        }
        catch (Exception fault)
        {
            terminal.Error.WriteLine("coolproof: this is a fault of the program, not of your table. Nothing was written. What to pass on to its makers:");
            terminal.Error.WriteLine(fault);
            return Exit.Failed;
        }

        void Stop(PosixSignalContext signal)
        {
            signal.Cancel = true;
            stop.Cancel();
        }
    }
}
