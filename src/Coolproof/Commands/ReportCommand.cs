using System.CommandLine;
using Coolproof.Commands.Notebooks;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>`coolproof report` as it is typed.</summary>
internal static class ReportCommand
{
    const string Folder = "report";

    /// <summary>The command.</summary>
    public static Command On(Terminal terminal)
    {
        var file = new Argument<string?>("FILE") { Arity = ArgumentArity.ZeroOrOne, Description = "The readings table (CSV); - reads it from standard input. Without one a day of the notebook is reported: --day." };
        var day = new Option<string?>("--day") { HelpName = "NAME|DATE|ID", Description = "A day of the notebook, with its question, photos and gun checks." };
        var store = StoreOption.Make();
        var earlier = EarlierFiles.Option("A readings table of earlier days, judged together with this one; what this one says alone stands beside it. With --day the notebook's own earlier days stand beside.");
        var checks = GunChecksFile.Option();
        var place = new Option<string?>("--out") { HelpName = "FOLDER", Description = $"A new folder for the files, written whole or not at all. Otherwise {Folder}." };
        var question = new Option<string?>("--question") { HelpName = "TEXT", Description = "The question that stands over the page. Otherwise the day's own, or which is the coolest." };
        var ambient = new QuantityOption("--at-ambient", "30C|86F", "Fair air for all options. Otherwise the question's, or the middle of what was noted.", Typed.Air);
        var drive = new QuantityOption("--drive", "360s|6min|6:00", "Fair length of hard driving. Otherwise the question's, or the middle of the runs.", Typed.Drive);
        var same = new QuantityOption("--same-within", "2K|3.6F", "Options this close count as the same. Otherwise the question's, or 2K.", Typed.Difference);
        var seed = QuantityOption.Whole("--random-seed", "The same table, options and seed give the same answer. Otherwise 1.", 0, int.MaxValue);
        var noPdf = new Option<bool>("--no-pdf") { Description = "Makes no PDF, which takes Chromium." };
        var units = WordOption.Units("Degrees for people.");
        var json = new Option<bool>("--json") { Description = "Prints JSON about what was written, version 1 (docs/formats)." };
        var command = new Command("report", "Writes what to show to people who weren't there: a page (HTML and PDF), a picture to post (PNG, SVG), the data to check.")
        {
            file, day, earlier, checks, store, place, question, ambient.Option, drive.Option, same.Option, seed.Option, noPdf, units.Option, json,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(file) is null == result.GetValue(day) is null) result.AddError("expected a readings table, or --day with a day of the notebook");
            if (result.GetValue(day) is not null && result.GetValue(checks) is not null) result.AddError("--gun-checks goes with a readings table; a day of the notebook has its own checks");
            if (result.GetValue(day) is not null && result.GetValue(earlier) is { Length: > 0 }) result.AddError("--earlier goes with a readings table; a day of the notebook has its own earlier days");
        });
        command.SetAction((parsed, cancel) => StoreWork.RunAsync(terminal, () => new Reporting(terminal).RunAsync(
            new ReportRequest(
                parsed.GetValue(file) is { } table ? new(table, parsed.GetValue(checks)) { Earlier = parsed.GetValue(earlier) ?? [] } : null, parsed.GetValue(day), parsed.GetValue(store), parsed.GetValue(place) ?? Folder, parsed.GetValue(question), ambient.In(parsed), drive.In(parsed), same.In(parsed),
                (long?)seed.In(parsed), !parsed.GetValue(noPdf), units.UnitIn(parsed), parsed.GetValue(json)),
            cancel)));
        return command;
    }
}
