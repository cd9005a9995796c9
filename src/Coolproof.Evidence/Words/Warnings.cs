using Coolproof.Evidence.Model;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Words;

/// <summary>What must be known before the verdict is trusted, gravest first. What the table itself asks (<see cref="ReadingsTable.Questions"/>) is not said again.</summary>
internal static class Warnings
{
    private const int MostNamed = 3;

    /// <summary>The warnings.</summary>
    /// <param name="table">The table.</param>
    /// <param name="options">Options judged.</param>
    public static IReadOnlyList<string> Of(ReadingsTable table, IReadOnlyList<OptionVerdict> options)
    {
        Run[] runs = [.. options.SelectMany(o => RunsOf(table, o.Name))];
        Reading[] readings = [.. runs.SelectMany(r => r.Readings).Where(DayModelBuilder.Counts)];
        return [.. WhatCantBeCompared(table, options), .. WhatWasRead(table, options, readings), .. WhatWasNotNoted(runs), .. LeftOut(table), .. HowFarItReaches(options, readings)];
    }

    private static IEnumerable<Run> RunsOf(ReadingsTable table, string option) =>
        Judge.Counted(table, table.Options.ToList().FindIndex(o => string.Equals(o, option, StringComparison.OrdinalIgnoreCase)));

    private static IEnumerable<string> WhatCantBeCompared(ReadingsTable table, IReadOnlyList<OptionVerdict> options)
    {
        foreach (string name in table.Options.Where(name => !options.Any(o => string.Equals(o.Name, name, StringComparison.OrdinalIgnoreCase))))
            yield return $"{Say.Capital(Say.Option(name))} is not ranked: {WhyNot(table, name)}.";
        (string A, string B)[] apart = [.. Pairs(options).Where(p => !Spots.Common(table, p.A, p.B))];
        if (apart.Length > 0)
            yield return $"{Say.Capital(Both(apart))} can't be compared: they were not read on a common spot.";
        (string A, string B)[] otherDays = [.. Pairs(options).Where(p => !RunsOf(table, p.A).Select(r => r.Day).Intersect(RunsOf(table, p.B).Select(r => r.Day)).Any())];
        if (otherDays.Length > 0)
            yield return $"{Say.Capital(Both(otherDays))} share no day: what differs may be the day, and is allowed for only as far as days usually differ.";
        if (Spots.SurfacesDiffer(table, options))
            yield return "The spot was on tape or paint for one option and on bare metal, or on something not noted, for another: part of the difference may be the surface.";
    }

    private static IEnumerable<(string A, string B)> Pairs(IReadOnlyList<OptionVerdict> options) =>
        options.SelectMany((a, i) => options.Skip(i + 1).Select(b => (a.Name, b.Name)));

    private static string Both((string A, string B)[] pairs) => pairs.Length <= MostNamed
        ? string.Join("; ", pairs.Select(p => $"{Say.Option(p.A)} and {Say.Option(p.B)}"))
        : $"{pairs.Length} pairs of options, {Say.Option(pairs[0].A)} and {Say.Option(pairs[0].B)} among them,";

    private static string WhyNot(ReadingsTable table, string option)
    {
        Run[] all = [.. table.Runs.Where(r => string.Equals(r.Option, option, StringComparison.OrdinalIgnoreCase))], tests = [.. all.Where(r => r.Kind is RunKind.Test or RunKind.Race)];
        if (tests.Length == 0)
            return "all of its runs are warm-ups or void";
        Run[] whole = [.. tests.Where(r => r.Fan != FanInRun.Failed)];
        if (whole.Length == 0)
            return "its fan failed in every run";
        return whole.SelectMany(r => r.Readings).Any(r => r.ExcludedBecause is null)
            ? "it was read only on a fin, through a vent or on the speed controller, which are never taken for the can"
            : "none of its readings counts";
    }

    private static IEnumerable<string> WhatWasRead(ReadingsTable table, IReadOnlyList<OptionVerdict> options, Reading[] readings)
    {
        double[] shown = [.. readings.Where(r => r.ReadC is not null).Select(r => r.ReadC!.Value)];
        if (shown.Length > 1 && shown.Distinct().Count() == 1)
            yield return $"All {shown.Length} readings are the same number: check that they were typed as they were read.";
        string[] once = [.. options.Where(o => o.Runs == 1).Select(o => Say.Option(o.Name))];
        if (once.Length > 0)
            yield return once.Length == options.Count && once.Length > 1
                ? "There is only one run of each option: how runs differ by themselves is a guess."
                : $"There is only one run of {Say.List(once)}.";
        if (shown.Length > 0 && options.All(o => !Spots.Matt(table, o.Name).Contains(true)))
            yield return "No reading is known to be on matt tape or paint: bare metal shows too little, by an unknown amount that is taken to be the same for all options.";
        string[] guns = [.. readings.Where(r => r.ReadC is not null).Select(r => r.Instrument).Distinct(StringComparer.OrdinalIgnoreCase)];
        foreach (string said in GunWords.Of(table, guns))
            yield return said;
    }

    private static IEnumerable<string> WhatWasNotNoted(Run[] runs)
    {
        Reading[] readings = [.. runs.SelectMany(r => r.Readings).Where(DayModelBuilder.Counts)];
        int late = readings.Count(r => r.StopToReadS is null && r.Winding?.AtS is null);
        if (late > 0)
            yield return $"{Begin(late, readings.Length, "reading")} {Have(late)} no seconds from halt: a wide guess stands in{(2 * late > readings.Length ? ", and it widens everything" : "")}.";
        int blank = runs.Count(r => r.AirC is null), forecast = runs.Count(r => r is { AirC: not null, AirBy: AirSource.Forecast }), gun = runs.Count(r => r is { AirC: not null, AirBy: AirSource.Gun });
        if (blank == runs.Length)
            yield return $"No air was noted at all: it is taken to be about {Say.Number(Priors.AirUnknownC)} °C, very widely.";
        else if (blank > 0)
            yield return $"{Begin(blank, runs.Length, "run")} {Have(blank)} no air noted: it is taken from the runs before and after, widely.";
        if (forecast > 0)
            yield return $"The air of {Of(forecast, runs.Length, "run")} is from a forecast, which is good to about {Say.Number(Priors.AirForecastSd)} K.";
        if (gun > 0)
            yield return $"The air of {Of(gun, runs.Length, "run")} is by the gun, which is good to about {Say.Number(Priors.AirGunSd)} K.";
        int cold = runs.Count(r => r.StartedAt is null && r.StartC is null);
        if (cold > 0)
            yield return $"{Begin(cold, runs.Length, "run")} {Have(cold)} neither a clock time nor the can before the run: the warmth brought along is a wide guess.";
        int assumed = runs.Count(r => r.DriveAssumed);
        if (assumed > 0)
            yield return $"{Begin(assumed, runs.Length, "run")} {Have(assumed)} no driving time noted: that of the other runs stands in.";
        int fan = runs.Count(r => r.FanAfterStop == FanAfterStop.Unknown && r.Fan != FanInRun.None);
        if (fan > 0)
            yield return $"For {Of(fan, runs.Length, "run")} it was not noted whether the fan ran on after the stop: both are allowed for.";
    }

    private static string Of(int some, int all, string what) => some == all && all > 1 ? all == 2 ? $"both {what}s" : $"all {all} {what}s" : $"{some} of {Say.Count(all, what)}";

    private static string Begin(int some, int all, string what) => Say.Capital(Of(some, all, what));

    private static string Have(int count) => count == 1 ? "has" : "have";

    private static IEnumerable<string> LeftOut(ReadingsTable table)
    {
        int idle = table.Runs.Count(r => r.Kind is RunKind.Void), warm = table.Runs.Count(r => r.Kind is RunKind.WarmUp), races = table.Runs.Count(r => r.Kind == RunKind.Race);
        int failed = table.Runs.Count(r => r.Kind is RunKind.Test or RunKind.Race && r.Fan == FanInRun.Failed);
        string[] kinds = [.. new[] { (idle, "void run"), (warm, "warm-up"), (failed, "run with a fan that failed") }.Where(k => k.Item1 > 0)
            .Select(k => k.Item2.StartsWith("run", StringComparison.Ordinal) && k.Item1 > 1 ? $"{k.Item1} runs with a fan that failed" : Say.Count(k.Item1, k.Item2))];
        if (kinds.Length > 0)
            yield return $"{Say.List(kinds)} {(idle + warm + failed == 1 ? "stays" : "stay")} out of the ranking; with clock times they still count as warmth.";
        if (races > 0)
            yield return $"{Say.Count(races, "race")} {(races == 1 ? "counts" : "count")} as weak evidence.";
        Reading[] excluded = [.. table.Runs.SelectMany(r => r.Readings).Where(r => r.ExcludedBecause is not null)];
        if (excluded.Length > 0)
        {
            IEnumerable<string> reasons = excluded.GroupBy(r => r.ExcludedBecause!.Trim(), StringComparer.OrdinalIgnoreCase).OrderByDescending(g => g.Count())
                .Select(g => excluded.Length == 1 ? g.Key : $"{g.Count()} for \"{g.Key}\"");
            yield return $"{Say.Count(excluded.Length, "reading")} {(excluded.Length == 1 ? "is" : "are")} left out as the table asks: {string.Join(", ", reasons)}.";
        }
    }

    private static IEnumerable<string> HowFarItReaches(IReadOnlyList<OptionVerdict> options, Reading[] readings)
    {
        if (options.Count == 0)
            yield break;
        if (!readings.Any(r => r.Winding is not null || r.Spot == Spot.Winding))
        {
            double widest = options.Max(o => (o.PeakWindingC.Q95 - o.PeakWindingC.Q05) / 2);
            yield return $"The winding is reckoned from the motor's usual make-up, give or take {Say.Number(widest)} K: a reading of its resistance would tell.";
        }
        yield return "Watts shed per degree take their scale from the motor's mass; what the readings give is how the options compare.";
    }
}
