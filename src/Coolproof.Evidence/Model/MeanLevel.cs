namespace Coolproof.Evidence.Model;

/// <summary>
/// What all readings together say of mean heat, for the choice of coordinates only: it changes no density. Readings know how far the can rose, so the mean
/// heat that they ask for follows the motor's constants closely, along a thin and bent ridge. Mean heat is therefore written as the heat that brings the can of
/// one typical run to a fixed rise, plus a deviation.
/// </summary>
/// <param name="DriveS">Drive of the typical run, s.</param>
/// <param name="RollInS">Its roll-in, s.</param>
/// <param name="DelayS">Its delay from halt to the reading, s.</param>
/// <param name="Warm">1 + α(air − 25).</param>
/// <param name="CopperHeat">Copper heat that its feedback is for, K/s.</param>
/// <param name="Options">Share of the runs that each option has.</param>
/// <param name="Ratios">Share of the readings that each stopped ratio has.</param>
/// <param name="LogRisePerHeat">Log of the rise for one K/s of heat at the typical point: there the shift is 0.</param>
internal sealed record MeanLevel(
    double DriveS, double RollInS, double DelayS, double Warm, double CopperHeat, double[] Options, double[] Ratios, double LogRisePerHeat)
{
    /// <summary>The typical run of a model at the last point that a density visited; null when no reading says how far the can rose.</summary>
    public static MeanLevel? Of(DayDensity density)
    {
        DayModel model = density.Model;
        int[] seen = [.. Enumerable.Range(0, model.Readings.Length).Where(i => RunLevel.Counts(model.Readings[i]) && model.Runs[model.Readings[i].Run].OwnHeatSd == 0)];
        if (seen.Length == 0)
            return null;
        ModelRun[] runs = [.. seen.Select(i => model.Runs[model.Readings[i].Run])];
        MeanLevel level = new(
            Median(runs.Select(r => r.DriveS)),
            Median(seen.Select(i => density.RollIn(model.Readings[i].Run))),
            Median(seen.Select(i => density.Seen[i].Delay)),
            1 + Priors.Alpha25 * (Median(seen.Select(i => density.States[model.Readings[i].Run].Air)) - 25),
            Median(seen.Select(i => density.States[model.Readings[i].Run].MeanCopper)),
            Shares(model.Options.Count, runs.Select(r => r.Option)),
            Shares(model.Ratios.Length, runs.Select(r => r.RatioEntry)),
            0);
        return level with { LogRisePerHeat = density.LogRisePerHeat(level) };
    }

    private static double Median(IEnumerable<double> values) => MathNet.Numerics.Statistics.Statistics.Median(values);

    private static double[] Shares(int count, IEnumerable<int> places)
    {
        int[] all = [.. places];
        return [.. Enumerable.Range(0, count).Select(i => (double)all.Count(p => p == i) / all.Length)];
    }
}
