using System.CommandLine;
using Coolproof.Advice.Mounts;
using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Pictures;
using Coolproof.Screen;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>`coolproof mount FILE`: what mounts that nobody has driven yet would do.</summary>
internal static class MountCommand
{
    /// <summary>The command.</summary>
    public static Command On(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "The mounts (JSON; docs/mount.md has an example); - reads them from standard input." };
        var beside = new BesideOptions("A readings table: its options stand beside, and mounts of the same name put the others right.");
        var seed = QuantityOption.Whole("--random-seed", "The same file, options and seed give the same answer. Otherwise 1.", 0, int.MaxValue);
        var units = WordOption.Units("Degrees for people.");
        var picture = PictureFile.Option("Also draws the mounts to scale to a file.");
        var dark = new WordOption("--theme", "Ground of the picture.", "light", "dark", "sun");
        var json = new Option<bool>("--json") { Description = "Prints JSON, version 1 (docs/formats). Always in °C, K and W/K." };
        var command = new Command("mount", "What a cooling mount that nobody owns yet would do: fan, shell, shroud, duct, gap and angle.") { file, beside.With, beside.GunChecks, beside.Ambient.Option, beside.Drive.Option, seed.Option, picture, dark.Option, units.Option, json };
        command.SetAction((parsed, cancel) => Task.FromResult(new Mounting(terminal).Run(
            new MountRequest(parsed.GetValue(file)!, beside.In(parsed), (long)(seed.In(parsed) ?? 1), units.UnitIn(parsed), parsed.GetValue(json))
            {
                Picture = parsed.GetValue(picture),
                Theme = dark.In(parsed) switch { "dark" => Theme.Dark, "sun" => Theme.Sun, _ => Theme.Light },
            },
            cancel)));
        return command;
    }
}

/// <summary>What `coolproof mount` was asked.</summary>
/// <param name="File">The mounts; "-" for standard input.</param>
/// <param name="Beside">The readings table that they are set beside.</param>
/// <param name="Seed">Seed.</param>
/// <param name="Units">Degrees for people.</param>
/// <param name="Json">Whether to print JSON.</param>
internal sealed record MountRequest(string File, TableBeside Beside, long Seed, TemperatureUnitChoice Units, bool Json)
{
    /// <summary>Where to draw; null: nowhere.</summary>
    public string? Picture { get; init; }

    /// <summary>Ground of the picture.</summary>
    public Theme Theme { get; init; }
}

/// <summary>`coolproof mount` from the file to the exit code.</summary>
internal sealed class Mounting(Terminal terminal)
{
    /// <summary>Reads, predicts, prints, draws.</summary>
    /// <returns>The exit code.</returns>
    public int Run(MountRequest request, CancellationToken cancel)
    {
        if (request.Beside.IsMissing("mount", ", or set airC in the file", terminal)) return Exit.BadInput;
        var sheet = AskedFile.Read("mount", request.File, MountSheetReader.Read, terminal);
        var (good, table) = request.Beside.Read("mount", terminal);
        if (sheet is null || !good) return Exit.BadInput;
        var (evidence, unjudged) = request.Beside.Draws(table, request.Seed, request.Units, terminal, cancel);
        if (unjudged is { } code) return code;
        MountAnswer answer = evidence is null ? MountPredictions.Of(sheet, request.Seed) : MountPredictions.Of(sheet, evidence, request.Seed);
        DegreeWords degrees = new(request.Units);
        terminal.Out.Write(request.Json ? MountJson.Text(answer) : string.Join('\n', MountPage.Lines(answer, new PageSettings(degrees, terminal.Width, terminal.Ink))) + "\n");
        terminal.Out.Flush();
        return request.Picture is { } picture
            ? PictureFile.Drawn(() => MountPicture.Of(sheet, [.. answer.Mounts.Select(m => MountPage.InALine(m, answer, degrees))], new PictureStyle(Theme: request.Theme, Units: request.Units)).Save(picture), terminal)
            : Exit.Done;
    }
}
