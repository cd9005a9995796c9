using System.Globalization;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Forms;
using Coolproof.Web;

namespace Coolproof.Pages.Histories;

/// <summary>What an entry said, in plain words.</summary>
internal static class HistoryWords
{
    static readonly Dictionary<string, string> Fields = new()
    {
        ["name"] = "name",
        ["text"] = "question",
        ["sort"] = "it asks",
        ["options"] = "options",
        ["massG"] = "mass",
        ["price"] = "price",
        ["driveS"] = "drive",
        ["airC"] = "air",
        ["airBy"] = "air by",
        ["mount"] = "mount",
        ["fanV"] = "fan supply voltage",
        ["cantBeUndone"] = "can’t be undone",
        ["excludedBecause"] = "left out because",
        ["chargeBackMah"] = "charge put back",
        ["mah"] = "charge",
        ["utcOffsetMin"] = "time zone",
        ["read"] = "reading",
        ["because"] = "because",
        ["seconds"] = "seconds",
        ["secondsAgo"] = "seconds ago",
        ["minutesAfter"] = "minutes after",
        ["fitMin"] = "fitting takes",
        ["fitNotes"] = "to fit it",
        ["touchesShell"] = "touches the shell",
        ["stopToReadS"] = "from halt to the shot",
        ["windingHotMohm"] = "winding resistance",
        ["plan"] = "order of runs",
        ["fromMin"] = "from",
        ["toMin"] = "until",
        ["coolMin"] = "cooling between runs",
        ["swapMin"] = "swap",
        ["chargeMin"] = "to charge a pack",
    };

    /// <summary>A kind of entry as people say it.</summary>
    public static string Kind(string kind) => kind switch
    {
        EntryKind.RunBegin => "run begun",
        EntryKind.RunCountdown => "countdown",
        EntryKind.RunGo => "go",
        EntryKind.RunStop => "end of hard driving",
        EntryKind.RunHalt => "halt",
        EntryKind.RunDown => "down on the track",
        EntryKind.RunUp => "up again",
        EntryKind.RunFanDead => "fan dead",
        EntryKind.RunAbandon => "came to nothing",
        EntryKind.RunLap => "lap",
        EntryKind.RunFan => "fan looked at",
        EntryKind.RunPowerOff => "power off",
        EntryKind.Shot => "shot",
        EntryKind.ShotRead => "number of a shot",
        EntryKind.ShotPhoto => "photo of a shot",
        EntryKind.Weather => "weather",
        EntryKind.CoolDownBegin => "cooling begun",
        EntryKind.CoolDownEnd => "cooling ended",
        EntryKind.Charge => "charge put back",
        EntryKind.RaceReading => "race reading",
        EntryKind.Photo => "photo",
        EntryKind.Nudge => "stamp moved",
        EntryKind.Undo => "taken back",
        EntryKind.RunSame => "two runs are one",
        EntryKind.RunTwo => "two runs are two",
        EntryKind.ClockChoice => "whose clock counts",
        EntryKind.ClockOffset => "clock measured",
        EntryKind.Import => "readings table brought",
        EntryKind.Remove => "taken out of the lists",
        EntryKind.GunCheckSet => "check of a gun",
        EntryKind.SettingSet => "settings",
        _ when kind.EndsWith(".set", StringComparison.Ordinal) => kind[..^4].Replace('-', ' '),
        _ => kind,
    };

    /// <summary>What was said, with what stood there before; empty where the kind says it all.</summary>
    public static IEnumerable<string> Says(Entry entry, EntryBody before, PitNotebook notebook, DeviceLook look)
    {
        foreach (var name in entry.Body.Names)
        {
            if (name is "order" or "of" or "shot" or "run" or "day" or "typed" or "untimed" or "unit" or "entry" or "sha256" or "header" or "layout" or "trace") continue;
            var was = before.Has(name) ? Value(entry.Kind, before, name, notebook, look) : "";
            yield return $"{Field(name)}: {Value(entry.Kind, entry.Body, name, notebook, look)}{(was.Length > 0 ? $", before: {was}" : "")}";
        }
    }

    static string Field(string name) => Fields.TryGetValue(name, out var words) ? words : Spelled(name);

    // canLimitC: can limit.
    static string Spelled(string name)
    {
        var cut = name.Length > 1 && char.IsUpper(name[^1]) && char.IsLower(name[^2]) ? name[..^1] : name;
        return string.Concat(cut.Select(c => char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : c.ToString(CultureInfo.InvariantCulture)));
    }

    static string Value(string kind, EntryBody body, string name, PitNotebook notebook, DeviceLook look)
    {
        if (body.Number(name) is { } number)
        {
            if (name is "fromMin" or "toMin") return Plans.PlanAsked.ClockTime(number);
            var unit = name == "value" ? body.Text("unit") == "f" ? "°F" : "°C" : FieldUnits.Of(kind, name, look);
            return $"{FieldUnits.Text(FieldUnits.Shown(kind, name, number, look))}{(unit.Length > 0 ? " " + unit : "")}";
        }
        if (body.YesNo(name) is { } yes) return yes ? "yes" : "no";
        if (body.List(name) is { Count: > 0 } list) return string.Join(", ", list.Select(one => Named(one, notebook)));
        return body.Text(name) is { } text ? Named(text, notebook) : "nothing";
    }

    static string Named(string text, PitNotebook notebook)
    {
        if (!Guid.TryParseExact(text, "D", out var id)) return text;
        NotedThing?[] things = [notebook.Find<NotedOption>(id), notebook.Find<NotedVehicle>(id), notebook.Find<NotedMotor>(id), notebook.Find<NotedPack>(id), notebook.Find<NotedInstrument>(id), notebook.Find<NotedClass>(id), notebook.Find<NotedDay>(id)];
        return things.OfType<NotedThing>().FirstOrDefault()?.Name is { Length: > 0 } name ? name : notebook.Find<NotedQuestion>(id)?.Text is { Length: > 0 } asked ? asked : "one thing";
    }

    /// <summary>What a thing is called, whatever it is, and where its page is.</summary>
    public static (string Name, string? Address) Thing(PitNotebook notebook, Guid id)
    {
        if (notebook.Find<NotedQuestion>(id) is { } question) return (question.Text.Length > 0 ? question.Text : "a question", $"/question/{id}");
        if (notebook.Find<NotedOption>(id) is { } option) return (Or(option.Name, "an option"), $"/option/{id}");
        if (notebook.Find<NotedDay>(id) is { } day) return (Shown.TimeWords.Day(day), $"/day/{id}");
        if (notebook.Find<NotedRun>(id) is { } run) return (Shown.TimeWords.Run(run), $"/run/{run.Id}");
        if (notebook.Find<NotedShot>(id) is { Run: { } of } && notebook.Find<NotedRun>(of) is { } shotAt) return ($"a shot of {Shown.TimeWords.Run(shotAt)}", $"/run/{shotAt.Id}");
        if (notebook.Find<NotedPart>(id) is { Option: { } takes } part) return (Or(part.Name, "a part"), $"/option/{takes}");
        if (notebook.Find<NotedInstrument>(id) is { } gun) return (Or(gun.Name, "a gun"), "/guns");
        if (notebook.Find<NotedGunCheck>(id) is not null) return ("a check of a gun", "/guns");
        if (notebook.Find<NotedPack>(id) is { } pack) return (Or(pack.Name, "a pack"), "/packs");
        if (notebook.Find<NotedCharger>(id) is { } charger) return (Or(charger.Name, "a charger"), "/packs");
        if (notebook.Find<NotedMotor>(id) is { } motor) return (Or(motor.Name, "a motor"), "/vehicle");
        if (notebook.Find<NotedVehicle>(id) is { } vehicle) return (Or(vehicle.Name, "a vehicle"), "/vehicle");
        if (notebook.Find<NotedClass>(id) is { } card) return (Or(card.Name, "a class card"), "/class");
        if (notebook.Find<NotedRaceReading>(id) is not null) return ("a race reading", "/race");
        if (notebook.Find<NotedTrace>(id) is { } trace) return (Or(trace.Name, "a logger's trace"), $"/trace/{id}");
        if (notebook.Find<NotedImport>(id) is { } import) return (Or(import.Name, "a readings table"), null);
        if (notebook.Find<NotedDevice>(id) is { } device) return (Or(device.Name, "a device"), "/settings");
        return ("something", null);
    }

    static string Or(string name, string else_) => name.Length > 0 ? name : else_;
}
