using System.CommandLine;
using Coolproof.Commands.Notebooks;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>The command line as a whole: all that can be asked.</summary>
internal static class CoolproofCommands
{
    static readonly (string Name, Func<Terminal, Command> Make)[] All =
    [
        ("compare", CompareCommand.On), ("plan", PlanCommand.On), ("cooldown", CooldownCommand.On), ("forecast", ForecastCommand.On), ("gear", GearCommand.On), ("mount", MountCommand.On), ("spend", SpendCommand.On), ("why", WhyCommand.On), ("gun", GunCommand.On), ("winding", WindingCommand.On), ("report", ReportCommand.On), ("rehearse", RehearseCommand.On), ("serve", ServeCommand.On),
        ("import", NotebookCommands.Import), ("export", NotebookCommands.Export), ("backup", NotebookCommands.Backup), ("restore", NotebookCommands.Restore),
    ];

    /// <summary>Does what the arguments ask; without any the pit table opens.</summary>
    /// <returns>The exit code.</returns>
    public static int Run(string[] arguments, Terminal terminal, CancellationToken cancel) => arguments.Length == 0
        ? new Serving(terminal).RunAsync(ServeRequest.Plain, cancel).GetAwaiter().GetResult()
        : new CommandLine(All).Run(arguments, terminal, cancel);
}
