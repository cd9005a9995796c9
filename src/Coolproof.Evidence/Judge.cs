using Coolproof.Evidence.Earlier;
using Coolproof.Evidence.Forecasts;
using Coolproof.Evidence.Model;
using Coolproof.Evidence.Words;
using Coolproof.Notebook;
using Coolproof.Sampling.Diagnostics;
using Coolproof.Sampling.Hamiltonian;
using MathNet.Numerics.Statistics;

namespace Coolproof.Evidence;

/// <summary>The question of a readings table answered at fair, equal conditions.</summary>
public static class Judge
{
    // Parts of the work on several days, by the readings that each weighs.
    private const double EarlierDone = 0.4, AllDone = 0.95;

    /// <summary>Judges a table.</summary>
    /// <param name="table">A table that was understood.</param>
    /// <param name="settings">How to judge it.</param>
    /// <param name="progress">Told what is being done.</param>
    /// <param name="cancel">Stops the work; <see cref="OperationCanceledException"/> follows.</param>
    public static Judgement Of(ReadingsTable table, JudgeSettings settings, IProgress<JudgeProgress>? progress = null, CancellationToken cancel = default) =>
        With(table, settings, new KnownConstants(), progress, cancel);

    /// <summary>
    /// Judges a table together with those of earlier days, at the conditions of the new one. What the new one says by itself is told beside it, and where it contradicts the
    /// others.
    /// </summary>
    /// <param name="table">A table that was understood.</param>
    /// <param name="before">Tables of earlier days.</param>
    /// <param name="settings">How to judge it.</param>
    /// <param name="progress">Told what is being done.</param>
    /// <param name="cancel">Stops the work; <see cref="OperationCanceledException"/> follows.</param>
    public static Judgement After(
        ReadingsTable table, IReadOnlyList<ReadingsTable> before, JudgeSettings settings, IProgress<JudgeProgress>? progress = null, CancellationToken cancel = default)
    {
        Judgement byItself = Of(table, settings, progress, cancel);
        return byItself is Judged { Verdict: var alone } ? Together(table, before, alone, settings, progress, cancel) : byItself;
    }

    /// <summary>The same where the verdict on the new table by itself is there already.</summary>
    /// <param name="table">A table that was understood.</param>
    /// <param name="before">Tables of earlier days.</param>
    /// <param name="alone">The verdict on the new table, by the same settings.</param>
    /// <param name="settings">How to judge it.</param>
    /// <param name="progress">Told what is being done.</param>
    /// <param name="cancel">Stops the work; <see cref="OperationCanceledException"/> follows.</param>
    public static Judgement Together(
        ReadingsTable table, IReadOnlyList<ReadingsTable> before, Verdict alone, JudgeSettings settings, IProgress<JudgeProgress>? progress = null, CancellationToken cancel = default)
    {
        JudgeSettings same = settings with { AmbientC = alone.Fair.AmbientC, DriveS = alone.Fair.DriveS };
        Judgement earlier = Of(EarlierTables.Joined(before[^1], [.. before.SkipLast(1)]), same, Part(progress, "weighing the earlier days", 0, EarlierDone), cancel);
        Judgement all = Of(EarlierTables.Joined(table, before), same, Part(progress, "weighing all days together", EarlierDone, AllDone), cancel);
        if (all is not Judged together)
            return all;
        progress?.Report(new("setting options beside what they were", AllDone));
        IReadOnlyList<OptionChange> changes = OptionChanges.Of(table, before, same);
        EarlierEvidence added = new(
            before.Sum(b => b.Runs.Select(r => r.Day).Distinct().Count()), before.Sum(b => b.Runs.Count), alone,
            earlier is Judged { Verdict: var then } ? Contradiction.Between(alone, then) : [], changes.Count, OptionChanges.Most(changes, before), GunChanges.Most(GunChanges.Of(table, before)));
        return together with { Verdict = together.Verdict with { Warnings = [.. EarlierWords.Of(added), .. together.Verdict.Warnings] }, Earlier = added };
    }

    /// <summary>The same where some constants of the world are known: for tests against a known generator.</summary>
    internal static Judgement With(
        ReadingsTable table, JudgeSettings settings, KnownConstants known, IProgress<JudgeProgress>? progress = null, CancellationToken cancel = default)
    {
        if (Refusal(table) is { } refused)
            return refused;
        progress?.Report(new("laying out the day", 0));
        DayModel model = DayModelBuilder.Build(table, known);
        int[] options = [.. Enumerable.Range(0, table.Options.Count).Where(o => Counted(table, o).Any())];
        try
        {
            return Sampled(table, model, options, Fair(table, settings), settings, progress, cancel);
        }
        catch (NoStepSizeException)
        {
            return Failure("the day as a whole", "The calculation found no way through the day's physics from where it began, so there is no ranking.");
        }
    }

    private static Judgement Sampled(
        ReadingsTable table, DayModel model, int[] options, FairConditions fair, JudgeSettings settings, IProgress<JudgeProgress>? progress, CancellationToken cancel)
    {
        DayFit fit = DayFit.Of(model, settings.Threads, cancel).Refined(settings.Seed, settings.Threads, cancel);
        IProgress<double>? sampling = progress is null ? null : new Relay<double>(fraction => progress.Report(new("weighing the readings", fraction)));
        (Posterior posterior, GatedResult result) = PosteriorSampling.Run(table, fit, options, fair, settings.Seed, settings.Threads, sampling, cancel);
        if (!result.Gate.Passed)
            return Failure(result.Gate);
        progress?.Report(new("putting it into words", 1));
        return new Judged(VerdictBuilder.Of(posterior, result, settings)) { Races = new(() => RaceEvidences.Of(posterior)), Causes = new(posterior) };
    }

    /// <summary>Test and race runs of an option that have a reading that counts.</summary>
    internal static IEnumerable<Run> Counted(ReadingsTable table, int option) => table.Runs.Where(r =>
        r.Kind is RunKind.Test or RunKind.Race && r.Fan != FanInRun.Failed && string.Equals(r.Option, table.Options[option], StringComparison.OrdinalIgnoreCase)
        && r.Readings.Any(DayModelBuilder.Counts));

    internal static Refused? Refusal(ReadingsTable table)
    {
        if (table.Runs.Count == 0 || table.Runs.All(r => r.Readings.Count == 0))
            return new("The table has no readings.", "Type one row for each reading: the option and what the gun showed.");
        if (Enumerable.Range(0, table.Options.Count).Any(o => Counted(table, o).Any()))
            return null;
        return table.Runs.SelectMany(r => r.Readings).All(r => r.ExcludedBecause is not null)
            ? new("Every reading is excluded.", "Take the reason out of the exclude column of at least one reading.")
            : new("No reading of a test run is on a spot that stands for the motor: fins, vents and the speed controller can't be compared.",
                "Read the band of the can between mount and endbell, on every option.");
    }

    internal static FairConditions Fair(ReadingsTable table, JudgeSettings settings)
    {
        Run[] runs = [.. Enumerable.Range(0, table.Options.Count).SelectMany(o => Counted(table, o))];
        double[] air = [.. runs.Where(r => r.AirC is not null).Select(r => r.AirC!.Value)];
        return new(settings.AmbientC ?? (air.Length > 0 ? air.Median() : Priors.AirUnknownC), settings.DriveS ?? runs.Select(r => r.DriveS).Median());
    }

    private static NotConverged Failure(GateResult gate) => Failure(
        gate.Quantity ?? "the day as a whole",
        gate.DivergentShare > new GateLimits().DivergentShare
            ? "The calculation could not follow the day's physics closely enough everywhere, so it can't be trusted."
            : "The calculation's separate tries did not agree closely enough, so it can't be trusted.");

    private static NotConverged Failure(string quantity, string reason) => new(quantity, reason,
        "Look for a wrong number first (a drive, a delay, a clock time, an option's name). Then try --random-seed 2. If it stays, leave out the run that is odd with a reason in its exclude column.");

    private static Relay<JudgeProgress>? Part(IProgress<JudgeProgress>? progress, string doing, double from, double to) =>
        progress is null ? null : new(value => progress.Report(new(doing, from + value.Fraction * (to - from))));

    private sealed class Relay<T>(Action<T> report) : IProgress<T>
    {
        public void Report(T value) => report(value);
    }
}
