using System.Numerics;
using Coolproof.Evidence.Causes;
using Coolproof.Rehearsal;
using Coolproof.Sampling;

namespace Coolproof.Evidence.Tests.Causes;

/// <summary>One part of a difference beside what it is in truth.</summary>
/// <param name="Day">Seed of the evenings judged.</param>
/// <param name="Cause">The cause.</param>
/// <param name="Said">The part as told, K.</param>
/// <param name="TrueK">The same by the full model, K.</param>
internal sealed record CausePartFound(long Day, Cause Cause, Summary Said, double TrueK)
{
    public bool Covered => TrueK >= Said.Q05 && TrueK <= Said.Q95;
}

/// <summary>Judges simulated evenings and splits differences between runs, by the evidence and by the full model that drove them.</summary>
internal static class CauseDay
{
    private const int Pairs = 3, Evenings = 2;

    public static IReadOnlyList<CausePartFound> Of(long seed)
    {
        RehearsalSettings settings = DayGenerator.Settings(seed, sameOptionTwice: false) with { Evenings = Evenings };
        RandomStream chance = new(seed, 78);
        if (chance.NextUniform() < 0.5)
            settings = settings with { Drivers = ["driver one", "driver two"] };
        SimulatedDay day = Rehearse.Day(settings);
        if (Judge.Of(day.Table, new(Seed: seed, Threads: 1)) is not Judged { Causes: { } causes })
            return [];
        int[] explained = [.. Enumerable.Range(0, day.Runs.Count).Where(i => CauseEvidence.Explains(day.Runs[i]))];
        List<CausePartFound> found = [];
        for (int p = 0; p < Pairs; p++)
        {
            int a = explained[chance.NextIndex(explained.Length)], b = explained[chance.NextIndex(explained.Length)];
            if (a != b)
                found.AddRange(Parts(seed, day, causes.Between([a], [b]), a, b));
        }
        return found;
    }

    private static IEnumerable<CausePartFound> Parts(long seed, SimulatedDay day, RunDifference difference, int a, int b)
    {
        Cause[] players = [.. difference.Parts.Select(p => p.Cause).Where(c => c != Cause.Rest)];
        TrueInputs ofA = TrueInputs.Of(day.Truth.Runs[a]);
        TrueInputs[] inputs = new TrueInputs[1 << players.Length];
        inputs[0] = TrueInputs.Of(day.Truth.Runs[b]);
        for (int coalition = 1; coalition < inputs.Length; coalition++)
            inputs[coalition] = With(inputs[coalition & (coalition - 1)], players[BitOperations.TrailingZeroCount(coalition)], ofA);
        double[] expected = [.. inputs.Select(day.Truth.FirstReadingC)], values = new double[players.Length];
        Shapley.Fill(expected, values);
        for (int i = 0; i < players.Length; i++)
            yield return new(seed, players[i], difference.Parts.Single(p => p.Cause == players[i]).DifferenceK, values[i]);
        yield return new(seed, Cause.Rest, difference.Parts[^1].DifferenceK, difference.ReadK - (expected[^1] - expected[0]));
    }

    private static TrueInputs With(TrueInputs x, Cause cause, TrueInputs a) => cause switch
    {
        Cause.Air => x with { AirC = a.AirC },
        Cause.Warmth => x with { StartOverAirK = a.StartOverAirK },
        Cause.Length => x with { DriveS = a.DriveS },
        Cause.Driver => x with { LogDriver = a.LogDriver },
        Cause.Day => x with { LogDay = a.LogDay, LogDayConductance = a.LogDayConductance },
        Cause.Option => x with { Option = a.Option },
        Cause.Mounting => x with { LogMounting = a.LogMounting },
        Cause.Reading => x with { RollInS = a.RollInS, PowerOffS = a.PowerOffS, DelayS = a.DelayS },
        Cause.Load => x with { LogLoad = a.LogLoad },
        _ => throw new ArgumentOutOfRangeException(nameof(cause), cause, "No such cause in a simulated evening."),
    };
}
