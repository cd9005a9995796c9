using System.CommandLine;
using Coolproof.Evidence;
using Coolproof.Evidence.Causes;
using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Pictures;
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
        var checks = GunChecksFile.Option();
        var seed = QuantityOption.Whole("--random-seed", "The same table, question and seed give the same answer. Otherwise 1.", 0, int.MaxValue);
        var units = WordOption.Units("Degrees for people.");
        var picture = PictureFile.Option("Also draws the way from the one reading to the other to a file.");
        var json = new Option<bool>("--json") { Description = "Prints JSON, version 1 (docs/formats). Always in °C and K." };
        var command = new Command("why", "Why one run or day read other than another: air, warmth, length, option and the rest.") { file, a, b, checks, seed.Option, picture, units.Option, json };
        command.SetAction((parsed, cancel) => Task.FromResult(Run(
            terminal, new(parsed.GetValue(file)!, parsed.GetValue(checks)), parsed.GetValue(a)!, parsed.GetValue(b)!, (long)(seed.In(parsed) ?? 1), units.UnitIn(parsed), parsed.GetValue(json), parsed.GetValue(picture), cancel)));
        return command;
    }

    static int Run(Terminal terminal, TableAsked asked, string a, string b, long seed, TemperatureUnitChoice units, bool json, string? picture, CancellationToken cancel)
    {
        DegreeWords degrees = new(units);
        if (asked.Read("why", null, terminal) is not { Table: var table }) return Exit.BadInput;
        var (first, problemA) = RunsNamed.Find(table, a);
        var (second, problemB) = RunsNamed.Find(table, b);
        if (first is null || second is null)
        {
            terminal.Error.WriteLine($"coolproof why: {Cells.Clean(problemA ?? problemB ?? "")}");
            return Exit.BadInput;
        }
        Judgement judgement = TableJudging.Of(table, new JudgeSettings(Seed: seed), terminal, cancel);
        if (judgement is not Judged { Causes: { } causes }) return TableJudging.Unjudged(judgement, degrees.In, terminal);
        RunDifference difference = causes.Between(first.Runs, second.Runs);
        terminal.Out.Write(json ? WhyJson.Text(table, first, second, difference) : string.Join('\n', WhyPage.Lines(first, second, difference, degrees, terminal.Width)) + "\n");
        terminal.Out.Flush();
        return picture is null ? Exit.Done : PictureFile.Drawn(() => WhyPicture.Of(first.Name, second.Name, difference, new PictureStyle(Units: units)).Save(picture), terminal);
    }
}
