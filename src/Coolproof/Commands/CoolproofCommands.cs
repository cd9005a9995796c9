using System.CommandLine;
using Coolproof.Commands.Notebooks;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>The command line as a whole: what can be asked, and what is said when it can't be understood.</summary>
internal static class CoolproofCommands
{
    static readonly (string Name, Func<Terminal, Command> Make)[] All =
    [
        ("compare", CompareCommand.On), ("plan", PlanCommand.On), ("cooldown", CooldownCommand.On), ("forecast", ForecastCommand.On), ("gear", GearCommand.On), ("mount", MountCommand.On), ("spend", SpendCommand.On), ("why", WhyCommand.On), ("report", ReportCommand.On), ("rehearse", RehearseCommand.On), ("serve", ServeCommand.On),
        ("import", NotebookCommands.Import), ("export", NotebookCommands.Export), ("backup", NotebookCommands.Backup), ("restore", NotebookCommands.Restore),
    ];

    /// <summary>Does what the arguments ask.</summary>
    /// <returns>The exit code.</returns>
    public static int Run(string[] arguments, Terminal terminal, CancellationToken cancel)
    {
        if (arguments.Length == 0) return new Serving(terminal).RunAsync(ServeRequest.Plain, cancel).GetAwaiter().GetResult();
        var root = new RootCommand("Tells which way of cooling a small electric race motor really works.");
        foreach (var (name, make) in All)
            if (arguments[0] == name || !All.Any(command => command.Name == arguments[0])) root.Add(make(terminal)); // only what is asked is made
        var parsed = root.Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null });
        // Help asked for beside something wrong is still help.
        if (parsed.Errors.Count > 0 && parsed.Action is not System.CommandLine.Help.HelpAction) return Misunderstood(parsed, terminal);
        return parsed.InvokeAsync(
            new InvocationConfiguration { Output = terminal.Out, Error = terminal.Error, EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null },
            cancel).GetAwaiter().GetResult();
    }

    static int Misunderstood(ParseResult parsed, Terminal terminal)
    {
        var command = parsed.CommandResult.Command is RootCommand ? "coolproof" : $"coolproof {parsed.CommandResult.Command.Name}";
        terminal.Error.WriteLine($"{command}: this can't be done as it is asked, and nothing was done:");
        foreach (var message in Messages(parsed)) terminal.Error.WriteLine($"  {Cells.Clean(message)}");
        terminal.Error.WriteLine($"What can be asked: {command} --help");
        return Exit.BadInput;
    }

    /// <summary>What is wrong, each thing once; a word that isn't a command says more than that a command is missing.</summary>
    static IEnumerable<string> Messages(ParseResult parsed)
    {
        var unknown = parsed.UnmatchedTokens;
        if (parsed.CommandResult.Command is RootCommand && unknown.Count > 0)
        {
            return [$"{unknown[0]}: expected one of {string.Join(", ", All.Select(command => command.Name))}"];
        }
        return parsed.Errors.Select(error => error.Message).Distinct();
    }
}
