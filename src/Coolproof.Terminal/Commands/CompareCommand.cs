using System.CommandLine;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>`coolproof compare FILE` as it is typed.</summary>
internal static class CompareCommand
{
    const double SameWithinK = 2;

    /// <summary>The command.</summary>
    public static Command On(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "The readings table (CSV); - reads it from standard input." };
        var ambient = new QuantityOption("--at-ambient", "30C|86F", "Fair air for all options. Otherwise the middle of what was noted.", Typed.Air);
        var drive = new QuantityOption("--drive", "360s|6min|6:00", "Fair length of hard driving. Otherwise the middle of the runs.", Typed.Drive);
        var same = new QuantityOption("--same-within", "2K|3.6F", "Options this close count as the same. Otherwise 2K.", Typed.Difference);
        var seed = QuantityOption.Whole("--random-seed", "The same table, options and seed give the same answer. Otherwise 1.", 0, int.MaxValue);
        var earlier = EarlierFiles.Option("A readings table of earlier days, judged together with this one at this one's conditions.");
        var checks = GunChecksFile.Option();
        var picture = PictureFile.Option("Also draws the verdict to a file.");
        var units = WordOption.Units("Degrees for people.");
        var json = new Option<bool>("--json") { Description = "Prints JSON, version 1 (docs/formats). Always in °C and K, whatever --units says." };
        var details = new Option<bool>("--details") { Description = "Prints every option, pair, doubt and reading, however long." };
        var command = new Command("compare", "Judges the cooling options of a readings table: which keeps the motor cooler at fair, equal conditions.")
        {
            file, ambient.Option, drive.Option, same.Option, seed.Option, earlier, checks, picture, units.Option, details, json,
        };
        command.SetAction((parsed, cancel) => Task.FromResult(new Comparison(terminal).Run(
            new CompareRequest(
                new(parsed.GetValue(file)!, parsed.GetValue(checks)) { Earlier = parsed.GetValue(earlier) ?? [] }, ambient.In(parsed), drive.In(parsed), same.In(parsed) ?? SameWithinK, (long)(seed.In(parsed) ?? 1),
                parsed.GetValue(picture), units.UnitIn(parsed), parsed.GetValue(json), parsed.GetValue(details)),
            cancel)));
        return command;
    }
}
