using Coolproof.Evidence.Forecasts;
using Coolproof.Sampling;

namespace Coolproof.Advice.Gearing;

/// <summary>
/// Draws of what is left open of motor and lap together. Where the notebook was driven with several gearings, motor and lap are not independent any more: a lap says how much its copper heat grows and its iron heat falls
/// with a tooth, the motor's copper share weighs the two, and the temperatures say what came of it. Draws that would have it otherwise are taken less often.
/// </summary>
/// <param name="Evidence">A draw of the motor each.</param>
/// <param name="Z">A point of what is believed of the lap each.</param>
/// <param name="Trust">Trust in the lap's heat ratios each.</param>
internal sealed record GearDraws(RaceEvidence Evidence, double[][] Z, LapTrust Trust)
{
    // Pairs of motor and lap to choose from, for each draw asked for, so that few are taken twice.
    private const int PairsADraw = 8;

    /// <summary>Draws for a question.</summary>
    /// <param name="evidence">What the judged notebook says.</param>
    /// <param name="grid">The laps.</param>
    /// <param name="most">About how many.</param>
    /// <param name="seed">Seed.</param>
    public static GearDraws Of(RaceEvidence evidence, LapGrid grid, int most, long seed)
    {
        RaceEvidence thinned = evidence.Thinned(most);
        SlopeTold? gearing = SlopeTold.Of(evidence.GearingSlopes, timing: false), timing = SlopeTold.Of(evidence.TimingSlopes, timing: true);
        (RaceEvidence taken, double[][] z) = gearing is null && timing is null
            ? (thinned, Points(thinned.Draws.Count, seed))
            : Met(evidence, grid, thinned.Draws.Count, seed, gearing, timing);
        (double Gearing, double Timing)[] slopes = [.. z.Select((at, d) => grid.Slopes(at, taken.Draws[d].CopperShare))];
        return new(taken, z, new(
            HeatTrust.Scales(gearing, taken.GearingSlopes, [.. slopes.Select(s => s.Gearing)], timing: false, seed),
            HeatTrust.Scales(timing, taken.TimingSlopes, [.. slopes.Select(s => s.Timing)], timing: true, seed)));
    }

    private static (RaceEvidence, double[][]) Met(RaceEvidence evidence, LapGrid grid, int draws, long seed, SlopeTold? gearing, SlopeTold? timing)
    {
        int pairs = PairsADraw * draws;
        double[][] z = Points(pairs, seed);
        double[] logWeights = [.. z.Select((at, pair) =>
        {
            (double geared, double timed) = grid.Slopes(at, evidence.Draws[pair % evidence.Draws.Count].CopperShare);
            return (gearing?.LogWeight(geared, HeatTrust.GearingSd) ?? 0) + (timing?.LogWeight(timed, HeatTrust.TimingSd) ?? 0);
        })];
        double highest = logWeights.Max();
        int[] taken = Resampling.Systematic([.. logWeights.Select(w => Math.Exp(w - highest))], draws);
        return (evidence.At([.. taken.Select(pair => pair % evidence.Draws.Count)]), [.. taken.Select(pair => z[pair])]);
    }

    // Points of what is believed of the lap.
    private static double[][] Points(int draws, long seed) => [.. Enumerable.Range(0, draws).Select(i =>
    {
        double[] z = new double[LapUnknowns.Count];
        new RandomStream(seed ^ 0x1a9, i).FillNormal(z);
        return z;
    })];
}
