namespace Coolproof.Evidence.Forecasts;

/// <summary>One option's odds of passing any limit for other airs and lengths of race, all else like one race day.</summary>
/// <param name="Option">Its name.</param>
/// <param name="AirsC">Airs, °C, ascending; the day's own among them.</param>
/// <param name="RacesS">Lengths, s, ascending; the day's own among them.</param>
/// <param name="Odds">Odds by air, then length: 0 to 1.</param>
public sealed record RaceMap(string Option, IReadOnlyList<double> AirsC, IReadOnlyList<double> RacesS, IReadOnlyList<double[]> Odds)
{
    private const double AirStepK = 5;
    private const int AirSteps = 3;

    private static readonly double[] Lengths = [0.5, 0.75, 1, 1.25, 1.5, 1.75, 2];

    /// <summary>Maps 15 K to either side of the day's air, and half to twice the length of its race, as far as these are forecast.</summary>
    /// <param name="evidence">What a judged table says.</param>
    /// <param name="scenario">The race day.</param>
    /// <param name="demand">Limits.</param>
    /// <param name="option">Place of the option.</param>
    /// <param name="seed">Seed of what the readings leave open.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">The scenario is beyond what can be forecast.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static RaceMap Of(RaceEvidence evidence, RaceScenario scenario, RaceDemand demand, int option, long seed, CancellationToken cancel = default)
    {
        if (Forecast.Refusal(scenario) is { } refused)
            throw new ArgumentException(refused, nameof(scenario));
        double[] airs = [.. Enumerable.Range(-AirSteps, 2 * AirSteps + 1).Select(i => scenario.AirC + i * AirStepK).Where(c => Forecast.Refusal(scenario with { AirC = c }) is null)];
        double[] races = [.. Lengths.Select(l => l * scenario.RaceS).Where(s => Forecast.Refusal(scenario with { RaceS = s }) is null)];
        RaceChance[] chances = RaceChance.Of(evidence.Draws.Count, seed);
        double[][] odds = [.. airs.Select(_ => new double[races.Length])];
        Parallel.For(0, airs.Length * races.Length, new ParallelOptions { CancellationToken = cancel }, cell =>
        {
            (int air, int length) = (cell / races.Length, cell % races.Length);
            odds[air][length] = Forecast.Odds(evidence, scenario with { AirC = airs[air], RaceS = races[length] }, demand, chances, option);
        });
        return new(evidence.Options[option], airs, races, odds);
    }
}
