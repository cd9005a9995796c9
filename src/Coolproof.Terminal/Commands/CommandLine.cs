using System.CommandLine;
using System.CommandLine.Help;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>A command line: understood and done, or refused with what is wrong in it.</summary>
/// <param name="known">All commands that there are, by name. Only the one that is asked for is made.</param>
internal sealed class CommandLine(IReadOnlyList<(string Name, Func<Terminal, Command> Make)> known)
{
    /// <summary>Does what the arguments ask; there is at least one.</summary>
    /// <returns>The exit code.</returns>
    public int Run(string[] arguments, Terminal terminal, CancellationToken cancel)
    {
        var root = new RootCommand("Tells which way of cooling a small electric race motor really works.");
        foreach (var (name, make) in known)
            if (arguments[0] == name || !known.Any(command => command.Name == arguments[0])) root.Add(make(terminal));
        var parsed = root.Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null });
        // Help asked for beside something wrong is still help.
        if (parsed.Errors.Count > 0 && parsed.Action is not HelpAction) return Misunderstood(parsed, terminal);
        return parsed.InvokeAsync(
            new InvocationConfiguration { Output = terminal.Out, Error = terminal.Error, EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null },
            cancel).GetAwaiter().GetResult();
    }

    int Misunderstood(ParseResult parsed, Terminal terminal)
    {
        var command = parsed.CommandResult.Command is RootCommand ? "coolproof" : $"coolproof {parsed.CommandResult.Command.Name}";
        terminal.Error.WriteLine($"{command}: this can't be done as it is asked, and nothing was done:");
        foreach (var message in Messages(parsed)) terminal.Error.WriteLine($"  {Cells.Clean(message)}");
        terminal.Error.WriteLine($"What can be asked: {command} --help");
        return Exit.BadInput;
    }

    // What is wrong, each thing once; a word that isn't a command says more than that a command is missing.
    IEnumerable<string> Messages(ParseResult parsed)
    {
        var unknown = parsed.UnmatchedTokens;
        if (parsed.CommandResult.Command is RootCommand && unknown.Count > 0)
        {
            return [$"{unknown[0]}: expected one of {string.Join(", ", known.Select(command => command.Name))}"];
        }
        return parsed.Errors.Select(error => error.Message).Distinct();
    }
}
