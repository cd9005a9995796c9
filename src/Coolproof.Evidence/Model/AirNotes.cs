using Coolproof.Notebook;

namespace Coolproof.Evidence.Model;

/// <summary>The air of each run of a day from what was noted.</summary>
internal static class AirNotes
{
    /// <summary>Air, °C, and its sd, K, for each run in order: as noted, else between its neighbours, widely.</summary>
    public static (double C, double Sd)[] Of(IReadOnlyList<Run> runs)
    {
        int[] noted = [.. Enumerable.Range(0, runs.Count).Where(i => runs[i].AirC is not null)];
        return [.. runs.Select((run, i) => run.AirC is { } c ? (c, SdOf(run.AirBy)) : noted.Length == 0 ? (Priors.AirUnknownC, Priors.AirBlankSd) : (Between(runs, noted, i), Priors.AirBlankSd))];
    }

    private static double SdOf(AirSource by) => by switch
    {
        AirSource.Forecast => Priors.AirForecastSd,
        AirSource.Gun => Priors.AirGunSd,
        _ => Priors.AirThermometerSd,
    };

    private static double Between(IReadOnlyList<Run> runs, int[] noted, int i)
    {
        int after = Array.FindIndex(noted, n => n > i);
        if (after < 0)
            return runs[noted[^1]].AirC!.Value;
        if (after == 0)
            return runs[noted[0]].AirC!.Value;
        int left = noted[after - 1], right = noted[after];
        return runs[left].AirC!.Value + (runs[right].AirC!.Value - runs[left].AirC!.Value) * (i - left) / (right - left);
    }
}
