using System.Globalization;
using Coolproof.Notebook.Journal;
using Coolproof.Rehearsal;
using NodaTime;

namespace Coolproof.Pages;

/// <summary>What is made up in a notebook: the demo and rehearsals. It is marked by its authors, stands apart from the person's own things, and can be taken out again.</summary>
internal static class Demo
{
    /// <summary>Author of all entries of the demo.</summary>
    public static readonly Guid DemoAuthor = Guid.Parse("c001d0e5-0000-8000-8000-000000000001");

    /// <summary>Author of all entries of rehearsals.</summary>
    public static readonly Guid RehearsalAuthor = Guid.Parse("c001d0e5-0000-8000-8000-000000000002");

    /// <summary>How the imports are called.</summary>
    public const string ImportName = "made up";

    /// <summary>Whether a thing is made up.</summary>
    public static bool Made(PitNotebook notebook, Guid thing) => notebook.History(thing) is [var first, ..] && Author(first.Stored.Device);

    /// <summary>What stands behind the name of a thing that is made up; nothing for others.</summary>
    public static string Mark(PitNotebook notebook, Guid thing) => Made(notebook, thing) ? " (made up)" : "";

    /// <summary>Whether anything made up is in the lists.</summary>
    public static bool Anything(PitNotebook notebook) => Imports(notebook).Any();

    /// <summary>Whether the demo is in the lists.</summary>
    public static bool DemoThere(PitNotebook notebook) => Imports(notebook).Any(import => import.Name == $"{ImportName}: the demo");

    /// <summary>What takes all that is made up out of the lists.</summary>
    public static IEnumerable<(Guid About, string Kind, EntryBody Body)> Remove(PitNotebook notebook) =>
        Things(notebook).Where(thing => Made(notebook, thing.Id)).Select(thing => (thing.Id, EntryKind.Remove, EntryBody.Empty));

    /// <summary>What brings the demo's own things back after they were taken out.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="entries">Entries of the demo.</param>
    public static IEnumerable<(Guid About, string Kind, EntryBody Body)> BringBack(PitNotebook notebook, IEnumerable<Entry> entries) =>
        entries.Select(entry => entry.About).Distinct().SelectMany(notebook.History).Where(line => line.Stands && line.Stored.Entry.Kind == EntryKind.Remove)
            .Select(line => (line.Stored.Entry.About, EntryKind.Undo, EntryBody.Of(("of", line.Stored.Id))));

    /// <summary>
    /// A rehearsed evening as entries: a day of its own; options, packs, motor and vehicle shared with what is made up already, never with the person's own.
    /// </summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="seed">Random seed.</param>
    /// <param name="today">Its date.</param>
    /// <param name="day">UUID of its day.</param>
    public static IReadOnlyList<Entry> Rehearsal(PitNotebook notebook, long seed, LocalDate today, out Guid day)
    {
        var simulated = Rehearsed(seed, today);
        var name = string.Create(CultureInfo.InvariantCulture, $"{Named}of {today:d MMM}, {simulated.Table.Options.Count} options, no. {seed}");
        var table = simulated.Table with { Runs = [.. simulated.Runs.Select(run => run with { Day = name })] };
        var entries = TableImport.Of(table, null, string.Create(CultureInfo.InvariantCulture, $"{ImportName}: rehearsal {seed}"));
        day = entries.First(entry => entry.Kind == EntryKind.DaySet).About;
        return Sharing(notebook, entries);
    }

    const string Named = "Rehearsal ";

    /// <summary>The seed of a rehearsed day, the number at the end of its name; null where it is none.</summary>
    public static long? SeedOf(PitNotebook notebook, NotedDay day) => SeedOf(notebook, day, Named);

    /// <summary>The number at the end of the name of a made-up day whose name begins so; null for others.</summary>
    public static long? SeedOf(PitNotebook notebook, NotedDay day, string named) =>
        day.Name.StartsWith(named, StringComparison.Ordinal) && long.TryParse(day.Name[(day.Name.LastIndexOf(' ') + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out var seed) && Made(notebook, day.Id) ? seed : null;

    /// <summary>The evening of a seed.</summary>
    public static SimulatedDay Rehearsed(long seed, LocalDate date) => Coolproof.Rehearsal.Rehearse.Day(new RehearsalSettings(seed,
    [
        new("bare can", HasFan: false), new("clip-on finned clamp", HasFan: false), new("clamp with a 25 mm fan"), new("nose-scoop duct", HasFan: false),
        new("twin 30 mm fans in a printed duct"), new("rear blower"),
    ])
    {
        FirstGo = date.At(new LocalTime(16, 5)),
        ReadingsPerRun = 3,
        DelaysNoted = 0.8,
        ChargeNoted = true,
        Packs = ["pack 1", "pack 2", "pack 3"],
    });

    // What is made up already under the same name is the same thing.
    static List<Entry> Sharing(PitNotebook notebook, IReadOnlyList<Entry> entries)
    {
        (string Kind, IReadOnlyList<NotedThing> There)[] shelves =
            [(EntryKind.OptionSet, notebook.Options), (EntryKind.PackSet, notebook.Packs), (EntryKind.MotorSet, notebook.Motors), (EntryKind.VehicleSet, notebook.Vehicles), (EntryKind.InstrumentSet, notebook.Instruments)];
        Dictionary<string, string> same = [];
        List<Entry> kept = [];
        foreach (var entry in entries)
        {
            var there = shelves.FirstOrDefault(shelf => shelf.Kind == entry.Kind).There?.FirstOrDefault(thing => thing.Name == entry.Body.Text("name") && Made(notebook, thing.Id));
            if (there is not null) same[entry.About.ToString("D")] = there.Id.ToString("D");
            else kept.Add(entry);
        }
        return [.. kept.Select(entry => entry with { Body = EntryBody.Of(entry.Body.Names.Select(name => (name, Value(entry.Body, name, same)))) })];
    }

    static object? Value(EntryBody body, string name, Dictionary<string, string> same) =>
        body.Number(name) is { } number ? number : body.YesNo(name) is { } yes ? yes : body.Text(name) is { } text ? same.GetValueOrDefault(text, text) : body.List(name) is { Count: > 0 } list ? list.Select(one => same.GetValueOrDefault(one, one)).ToArray() : null;

    static bool Author(Guid device) => device == DemoAuthor || device == RehearsalAuthor;

    static IEnumerable<NotedImport> Imports(PitNotebook notebook) => notebook.Imports.Where(import => import.Name.StartsWith(ImportName, StringComparison.Ordinal));

    static IEnumerable<NotedThing> Things(PitNotebook notebook) =>
        [.. notebook.Imports, .. notebook.Days, .. notebook.Questions, .. notebook.Options, .. notebook.Packs, .. notebook.Chargers, .. notebook.Motors, .. notebook.Vehicles, .. notebook.Instruments, .. notebook.ClassCards];
}
