using System.CommandLine;
using Coolproof.Advice.Spending;
using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Pictures;
using Coolproof.Screen;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>`coolproof spend FILE`: the best parts within money and grams.</summary>
internal static class SpendCommand
{
    /// <summary>The command.</summary>
    public static Command On(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "Parts, budget and class (JSON; docs/spend.md has an example); - reads it from standard input." };
        var beside = new BesideOptions("The readings table in which the file's options were driven. Otherwise only guesses (coolsK) count.");
        var mounts = new Option<string?>("--mounts") { HelpName = "MOUNTS.json", Description = "The mounts (as for coolproof mount) that the file's predicted ones are among." };
        var seed = QuantityOption.Whole("--random-seed", "The same files, options and seed give the same answer. Otherwise 1.", 0, int.MaxValue);
        var units = WordOption.Units("Degrees for people.");
        var mass = new WordOption("--mass", "Masses for people.", "g", "oz");
        var picture = PictureFile.Option("Also draws what money buys to a file.");
        var dark = new WordOption("--theme", "Ground of the picture.", "light", "dark", "sun");
        var json = new Option<bool>("--json") { Description = "Prints JSON, version 1 (docs/formats). Always in K and g." };
        var command = new Command("spend", "The best use of a budget in money and grams, with parts that fit together and the class allows.") { file, beside.With, beside.GunChecks, mounts, beside.Ambient.Option, beside.Drive.Option, seed.Option, mass.Option, units.Option, picture, dark.Option, json };
        command.SetAction((parsed, cancel) => Task.FromResult(new Spending(terminal).Run(
            new SpendRequest(
                parsed.GetValue(file)!, beside.In(parsed), (long)(seed.In(parsed) ?? 1), units.UnitIn(parsed),
                mass.In(parsed) == "oz" ? MassUnitChoice.Ounce : MassUnitChoice.Gram, parsed.GetValue(json))
            {
                Mounts = parsed.GetValue(mounts),
                Picture = parsed.GetValue(picture),
                Theme = dark.In(parsed) switch { "dark" => Theme.Dark, "sun" => Theme.Sun, _ => Theme.Light },
            },
            cancel)));
        return command;
    }
}

/// <summary>What `coolproof spend` was asked.</summary>
/// <param name="File">The parts; "-" for standard input.</param>
/// <param name="Beside">The readings table in which its options were driven.</param>
/// <param name="Seed">Seed.</param>
/// <param name="Units">Degrees for people.</param>
/// <param name="Mass">Masses for people.</param>
/// <param name="Json">Whether to print JSON.</param>
internal sealed record SpendRequest(string File, TableBeside Beside, long Seed, TemperatureUnitChoice Units, MassUnitChoice Mass, bool Json)
{
    /// <summary>A file of mounts; null: none.</summary>
    public string? Mounts { get; init; }

    /// <summary>Where to draw; null: nowhere.</summary>
    public string? Picture { get; init; }

    /// <summary>Ground of the picture.</summary>
    public Theme Theme { get; init; }
}

/// <summary>`coolproof spend` from the file to the exit code.</summary>
internal sealed class Spending(Terminal terminal)
{
    /// <summary>Reads, judges, searches, prints, draws.</summary>
    /// <returns>The exit code.</returns>
    public int Run(SpendRequest request, CancellationToken cancel)
    {
        if (request.Beside.IsMissing("spend", "", terminal)) return Exit.BadInput;
        var sheet = AskedFile.Read("spend", request.File, SpendSheetReader.Read, terminal);
        var (good, table) = request.Beside.Read("spend", terminal);
        var mounts = request.Mounts is { } described ? AskedFile.Read("spend", described, MountSheetReader.Read, terminal) : null;
        if (sheet is null || !good || request.Mounts is not null && mounts is null) return Exit.BadInput;
        var (evidence, unjudged) = request.Beside.Draws(table, request.Seed, request.Units, terminal, cancel);
        if (unjudged is { } code) return code;
        if (BestUse.Problems(sheet, evidence, mounts) is { Count: > 0 } problems)
        {
            AskedFile.Tell("spend", request.File, problems, terminal);
            return Exit.BadInput;
        }
        SpendAnswer answer = BestUse.Of(sheet, evidence, request.Seed, mounts, cancel);
        CostWords costs = new(sheet.Currency, request.Mass);
        PageSettings page = new(new DegreeWords(request.Units), terminal.Width, terminal.Ink);
        terminal.Out.Write(request.Json ? SpendJson.Text(answer) : string.Join('\n', SpendPage.Lines(answer, costs, page)) + "\n");
        terminal.Out.Flush();
        return request.Picture is { } picture
            ? PictureFile.Drawn(() => SpendDrawing.Of(answer, costs, new PictureStyle(Theme: request.Theme, Units: request.Units)).Save(picture), terminal)
            : Exit.Done;
    }
}
