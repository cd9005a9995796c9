using System.CommandLine;
using Coolproof.Evidence;
using Coolproof.Evidence.Causes;
using Coolproof.Screen;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>`coolproof why FILE A B`: the difference between two runs or two days by its causes.</summary>
internal static class WhyCommand
{
    /// <summary>The command.</summary>
    public static Command On(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "The readings table (CSV); - reads it from standard input." };
        var a = new Argument<string>("A") { Description = "A run (\"DAY RUN\", or RUN where only one day has it) or a day." };
        var b = new Argument<string>("B") { Description = "What it is set against, named likewise." };
        var seed = QuantityOption.Whole("--random-seed", "The same table, question and seed give the same answer. Otherwise 1.", 0, int.MaxValue);
        var units = WordOption.Units("Degrees for people.");
        var command = new Command("why", "Why one run or day read other than another: air, warmth, length, option and the rest.") { file, a, b, seed.Option, units.Option };
        command.SetAction((parsed, cancel) => Task.FromResult(
            Run(terminal, parsed.GetValue(file)!, parsed.GetValue(a)!, parsed.GetValue(b)!, (long)(seed.In(parsed) ?? 1), new DegreeWords(units.UnitIn(parsed)), cancel)));
        return command;
    }

    static int Run(Terminal terminal, string file, string a, string b, long seed, DegreeWords degrees, CancellationToken cancel)
    {
        if (TableFile.Read(file, null, terminal) is not { } table) return Exit.BadInput;
        var (first, problemA) = RunsNamed.Find(table, a);
        var (second, problemB) = RunsNamed.Find(table, b);
        if (first is null || second is null)
        {
            terminal.Error.WriteLine($"coolproof why: {Cells.Clean(problemA ?? problemB ?? "")}");
            return Exit.BadInput;
        }
        Judgement judgement = TableJudging.Of(table, new JudgeSettings(Seed: seed), terminal, cancel);
        if (judgement is not Judged { Causes: { } causes }) return TableJudging.Unjudged(judgement, degrees.In, terminal);
        foreach (string line in WhyPage.Lines(first, second, causes.Between(first.Runs, second.Runs), degrees, terminal.Width)) terminal.Out.WriteLine(line);
        terminal.Out.Flush();
        return Exit.Done;
    }
}
