using System.CommandLine;
using Coolproof.Advice.Mounts;
using Coolproof.Evidence;
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
        var with = new Option<string?>("--with") { HelpName = "TABLE.csv", Description = "A readings table: its options stand beside, and mounts of the same name put the others right." };
        var ambient = new QuantityOption("--at-ambient", "30C|86F", "Fair air with --with. Otherwise the middle of what was noted.", Typed.Air);
        var drive = new QuantityOption("--drive", "360s|6min|6:00", "Fair length of hard driving with --with. Otherwise the middle of the runs.", Typed.Drive);
        var seed = QuantityOption.Whole("--random-seed", "The same file, options and seed give the same answer. Otherwise 1.", 0, int.MaxValue);
        var units = WordOption.Units("Degrees for people.");
        var picture = PictureFile.Option("Also draws the mounts to scale to a file.");
        var dark = new WordOption("--theme", "Ground of the picture.", "light", "dark", "sun");
        var json = new Option<bool>("--json") { Description = "Prints JSON, version 1 (docs/formats). Always in °C, K and W/K." };
        var command = new Command("mount", "What a cooling mount that nobody owns yet would do: fan, shell, shroud, duct, gap and angle.") { file, with, ambient.Option, drive.Option, seed.Option, picture, dark.Option, units.Option, json };
        command.SetAction((parsed, cancel) => Task.FromResult(new Mounting(terminal).Run(
            new MountRequest(parsed.GetValue(file)!, parsed.GetValue(with), ambient.In(parsed), drive.In(parsed), (long)(seed.In(parsed) ?? 1), units.UnitIn(parsed), parsed.GetValue(json))
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
/// <param name="With">A readings table; null: none.</param>
/// <param name="AmbientC">Fair air, °C; null: the table's.</param>
/// <param name="DriveS">Fair seconds of driving; null: the table's.</param>
/// <param name="Seed">Seed.</param>
/// <param name="Units">Degrees for people.</param>
/// <param name="Json">Whether to print JSON.</param>
internal sealed record MountRequest(string File, string? With, double? AmbientC, double? DriveS, long Seed, TemperatureUnitChoice Units, bool Json)
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
        if (request.With is null && (request.AmbientC ?? request.DriveS) is not null)
        {
            terminal.Error.WriteLine("coolproof mount: --at-ambient and --drive ask for other conditions of a readings table: give it by --with, or set airC in the file.");
            return Exit.BadInput;
        }
        var sheet = AskedFile.Read("mount", request.File, MountSheetReader.Read, terminal);
        var table = request.With is { } path ? TableFile.Read(path, request.DriveS, terminal) : null;
        if (sheet is null || request.With is not null && table is null) return Exit.BadInput;
        MountAnswer answer;
        if (table is null)
        {
            answer = MountPredictions.Of(sheet, request.Seed);
        }
        else
        {
            var judgement = TableJudging.Of(table, new JudgeSettings(request.AmbientC, request.DriveS, Seed: request.Seed), terminal, cancel);
            if (judgement is not Judged { Races: { } races }) return TableJudging.Unjudged(judgement, request.Units, terminal);
            answer = MountPredictions.Of(sheet, races.Value, request.Seed);
        }
        DegreeWords degrees = new(request.Units);
        terminal.Out.Write(request.Json ? MountJson.Text(answer) : string.Join('\n', MountPage.Lines(answer, new PageSettings(degrees, terminal.Width, terminal.Ink))) + "\n");
        terminal.Out.Flush();
        return request.Picture is { } picture
            ? PictureFile.Drawn(() => MountPicture.Of(sheet, [.. answer.Mounts.Select(m => MountPage.InALine(m, answer, degrees))], new PictureStyle(Theme: request.Theme, Units: request.Units)).Save(picture), terminal)
            : Exit.Done;
    }
}
