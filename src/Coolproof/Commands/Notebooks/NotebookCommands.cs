using System.CommandLine;
using Coolproof.Board;
using Coolproof.Screen;

namespace Coolproof.Commands.Notebooks;

/// <summary>`import`, `export`, `backup` and `restore` as they are typed.</summary>
internal static class NotebookCommands
{
    const string JsonSays = "Prints JSON, version 1 (docs/formats).";

    /// <summary>`coolproof import`.</summary>
    public static Command Import(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "The readings table (CSV), or a logger's file with --as trace; - reads it from standard input." };
        var sort = new WordOption("--as", "A readings table, or a logger's trace of a day.", "table", "trace");
        var traced = new TraceOptions();
        var drive = new QuantityOption("--drive", "360s|6min|6:00", "Length of hard driving, where no run of the table notes one.", Typed.Drive);
        var there = new WordOption("--there", "What becomes of runs that are in the notebook already, by day, option and reading or clock.", BroughtTable.Leave, BroughtTable.Replace, BroughtTable.Both);
        var dry = new Option<bool>("--dry-run") { Description = "Says what would be kept, and keeps nothing." };
        var (store, json) = (StoreOption.Make(), new Option<bool>("--json") { Description = JsonSays });
        var command = new Command("import", "Takes a readings table or a logger's trace into the notebook. The same again changes nothing.") { file, sort.Option, drive.Option, there.Option, dry, store, json };
        traced.AddTo(command, sort);
        command.SetAction((parsed, cancel) => StoreWork.RunAsync(terminal, () => sort.In(parsed) == "trace"
            ? new ImportingTrace(terminal).RunAsync(traced.Request(parsed, parsed.GetValue(file)!, parsed.GetValue(dry), parsed.GetValue(store), parsed.GetValue(json)), cancel)
            : new Importing(terminal).RunAsync(
            new ImportRequest(parsed.GetValue(file)!, drive.In(parsed), there.In(parsed), parsed.GetValue(dry), parsed.GetValue(store), parsed.GetValue(json)), cancel)));
        return command;
    }

    /// <summary>`coolproof export`.</summary>
    public static Command Export(Terminal terminal)
    {
        var day = new Option<string?>("--day") { HelpName = "NAME|DATE|ID", Description = "Only this day. Otherwise all." };
        var place = new Option<string?>("--out") { HelpName = "FILE.csv", Description = "Writes the table here, whole or not at all. Otherwise to standard output." };
        var units = WordOption.Units("Degrees of the table.");
        var (store, json) = (StoreOption.Make(), new Option<bool>("--json") { Description = JsonSays + " Takes --out." });
        var command = new Command("export", "Writes the notebook, or a day of it, as a readings table.") { day, place, units.Option, store, json };
        command.Validators.Add(result =>
        {
            if (result.GetValue(json) && result.GetValue(place) is null) result.AddError("--json: expected --out with it, since the table itself is no JSON");
        });
        command.SetAction((parsed, cancel) => StoreWork.RunAsync(terminal, () => new Exporting(terminal).RunAsync(
            new ExportRequest(parsed.GetValue(day), parsed.GetValue(place), units.UnitIn(parsed), parsed.GetValue(store), parsed.GetValue(json)), cancel)));
        return command;
    }

    /// <summary>`coolproof backup`.</summary>
    public static Command Backup(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "Where to; a file that is there is never overwritten." };
        var (store, json) = (StoreOption.Make(), new Option<bool>("--json") { Description = JsonSays });
        var command = new Command("backup", "Copies the whole notebook into one file, photos and traces too, while it stays in use.") { file, store, json };
        command.SetAction((parsed, cancel) => StoreWork.RunAsync(terminal, () => new BackingUp(terminal).BackupAsync(
            parsed.GetValue(file)!, parsed.GetValue(store), parsed.GetValue(json), cancel)));
        return command;
    }

    /// <summary>`coolproof restore`.</summary>
    public static Command Restore(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "A backup." };
        var replace = new Option<bool>("--replace") { Description = "Replaces a notebook that is there; a file is put aside under another name." };
        var (store, json) = (StoreOption.Make(), new Option<bool>("--json") { Description = JsonSays });
        var command = new Command("restore", "Brings a backup back, with its photos and traces. Stop the pit table of that notebook first.") { file, replace, store, json };
        command.SetAction((parsed, cancel) => StoreWork.RunAsync(terminal, () => new BackingUp(terminal).RestoreAsync(
            parsed.GetValue(file)!, parsed.GetValue(replace), parsed.GetValue(store), parsed.GetValue(json), cancel)));
        return command;
    }
}
