using System.Globalization;
using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>The readings table of a notebook, or of part of it, and which run each of its runs is.</summary>
/// <param name="Table">The table, as a file would have given it; its questions say what was left out and why.</param>
/// <param name="Runs">For each run of the table the UUID of the noted run.</param>
public sealed record NotebookTable(ReadingsTable Table, IReadOnlyList<Guid> Runs)
{
    /// <summary>Drive that is assumed where no run, countdown or day tells one, s: six minutes (common practice, no source).</summary>
    public const double UsualDriveS = 360;

    /// <summary>The table of all days, or of one question or one day.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="question">
    /// Only days that work on this question, and days without a question that drove one of its options; of those only runs with its vehicle and motor, where it names any. Null: all.
    /// </param>
    /// <param name="day">Only this day; null: all.</param>
    public static NotebookTable Of(PitNotebook notebook, Guid? question = null, Guid? day = null)
    {
        ArgumentNullException.ThrowIfNull(notebook);
        NotedQuestion? asked = question is { } id ? notebook.Find<NotedQuestion>(id) : null;
        List<TabledRun> tabled = [];
        List<TableProblem> questions = [];
        DayNames days = new();
        foreach (NotedDay noted in notebook.Days)
        {
            if (day is { } only && noted.Id != only) continue;
            NotedRun[] runs = [.. notebook.RunsOf(noted.Id).Where(run => asked is null || Concerns(run, noted, asked, notebook))];
            if (runs.Length == 0 || (question is not null && (asked is null || !WorksOn(noted, runs, asked)))) continue;
            tabled.AddRange(new DayTable(notebook, noted, days.Of(noted), questions).Of(runs));
        }

        NotebookTable whole = Assembled(tabled, questions);
        return whole with { Table = whole.Table with { GunChecks = ChecksOf(notebook, whole.Table) } };
    }

    // Of the guns that took readings; a check without its two temperatures tells nothing, and ice is 0 °C.
    private static IReadOnlyList<GunCheck> ChecksOf(PitNotebook notebook, ReadingsTable table)
    {
        HashSet<string> used = new(table.Runs.SelectMany(run => run.Readings).Select(reading => reading.Instrument), StringComparer.OrdinalIgnoreCase);
        return
        [
            .. from gun in notebook.Instruments
               let name = gun.Name.Length > 0 ? gun.Name : "gun"
               where used.Contains(name)
               from check in gun.Checks
               let against = GunCheck.AgainstOf(check.Way) ?? CheckedAgainst.ProbeInWater
               let known = check.TrueC ?? (against == CheckedAgainst.Ice ? 0 : null)
               where check.ReadC is not null && known is not null
               select new GunCheck(name, against, check.ReadC!.Value, known.Value, check.EmissivitySet),
        ];
    }

    private static bool WorksOn(NotedDay day, NotedRun[] runs, NotedQuestion question) =>
        day.Question is { } worked ? worked == question.Id : runs.Any(run => run.Option is { } option && question.Options.Contains(option));

    private static bool Concerns(NotedRun run, NotedDay day, NotedQuestion question, PitNotebook notebook)
    {
        Guid? vehicle = run.Fields.Id("vehicle") ?? day.Vehicle;
        Guid? motor = run.Fields.Id("motor") ?? day.Motor ?? (vehicle is { } known ? notebook.Find<NotedVehicle>(known)?.Motor : null);
        return (question.Vehicle is null || vehicle is null || vehicle == question.Vehicle) && (question.Motor is null || motor is null || motor == question.Motor);
    }

    private static NotebookTable Assembled(List<TabledRun> tabled, List<TableProblem> questions)
    {
        double? median = Tables.Median.Of([.. tabled.Where(run => !run.Run.DriveAssumed).Select(run => run.Run.DriveS)]);
        tabled = [.. tabled.Select(run => run.Run.DriveAssumed ? run.WithDrive(run.PlannedDriveS ?? median ?? run.DayDriveS ?? UsualDriveS) : run)];
        // The order of the readings table: by the clock where every run has one.
        if (tabled.TrueForAll(run => run.Run.StartedAt is not null))
        {
            Dictionary<string, LocalDateTime> first = tabled.GroupBy(run => run.Run.Day).ToDictionary(one => one.Key, one => one.Min(run => run.Run.StartedAt!.Value));
            tabled = [.. tabled.OrderBy(run => first[run.Run.Day])];
        }

        List<string> options = [.. tabled.Select(run => run.Run.Option).Distinct(StringComparer.OrdinalIgnoreCase)];
        Dictionary<string, string> spelt = options.ToDictionary(option => option, StringComparer.OrdinalIgnoreCase);
        return new NotebookTable(new ReadingsTable([.. tabled.Select(run => run.Run with { Option = spelt[run.Run.Option] })], questions, options), [.. tabled.Select(run => run.Id)]);
    }

    /// <summary>Names of days, each once, as the table needs them.</summary>
    private sealed class DayNames
    {
        private readonly HashSet<string> _taken = new(StringComparer.OrdinalIgnoreCase);

        public string Of(NotedDay day) => Unique(_taken, day.Name.Length > 0 ? day.Name : day.Date?.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture) ?? "day");
    }

    /// <summary>A name that is not taken yet, and takes it.</summary>
    internal static string Unique(HashSet<string> taken, string name)
    {
        string unique = name;
        for (int n = 2; !taken.Add(unique); n++) unique = string.Create(CultureInfo.InvariantCulture, $"{name} ({n})");
        return unique;
    }
}

/// <summary>A run of a table on its way there.</summary>
/// <param name="Id">The noted run.</param>
/// <param name="Run">The run of the table; its drive is still to be filled in where it is assumed.</param>
/// <param name="PlannedDriveS">Drive of its countdown, s.</param>
/// <param name="DayDriveS">Planned drive of its day, s.</param>
internal sealed record TabledRun(Guid Id, Run Run, double? PlannedDriveS, double? DayDriveS)
{
    public TabledRun WithDrive(double seconds) => this with { Run = Run with { DriveS = seconds, StoodS = Math.Min(Run.StoodS, seconds) } };
}
