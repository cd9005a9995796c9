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
/// <param name="Contradicted">Whether temperatures of several gearings, or timings, and the lap contradict each other on how heat goes with them: then the lap's slope is trusted as if one gearing had been driven.</param>
internal sealed record GearDraws(RaceEvidence Evidence, double[][] Z, LapTrust Trust, bool Contradicted)
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
        (SlopeTold? gearing, SlopeTold? timing) = Told(evidence);
        int draws = evidence.Thinned(most).Draws.Count, pairs = gearing is null && timing is null ? draws : PairsADraw * draws;
        // Draws stand chain after chain: pairs go along all of them.
        int[] motors = [.. Enumerable.Range(0, pairs).Select(pair => (int)((long)pair * evidence.Draws.Count / pairs))];
        double[][] z = Points(pairs, seed);
        (double Gearing, double Timing)[] slopes = [.. z.Select((at, pair) => grid.Slopes(at, evidence.Draws[motors[pair]].CopperShare))];
        bool contradicted = gearing?.Contradicts([.. slopes.Select(s => s.Gearing)], HeatTrust.GearingSd) == true || timing?.Contradicts([.. slopes.Select(s => s.Timing)], HeatTrust.TimingSd) == true;
        if (contradicted)
            (gearing, timing) = (null, null);
        int[] taken = Taken(slopes, draws, gearing, timing);
        RaceEvidence met = evidence.At([.. taken.Select(pair => motors[pair])]);
        return new(met, [.. taken.Select(pair => z[pair])], new(
            HeatTrust.Scales(gearing, met.GearingSlopes, [.. taken.Select(pair => slopes[pair].Gearing)], timing: false, seed),
            HeatTrust.Scales(timing, met.TimingSlopes, [.. taken.Select(pair => slopes[pair].Timing)], timing: true, seed)), contradicted);
    }

    /// <summary>What temperatures of several gearings, and of several timings, say.</summary>
    internal static (SlopeTold? Gearing, SlopeTold? Timing) Told(RaceEvidence evidence) => (SlopeTold.Of(evidence.GearingSlopes, timing: false), SlopeTold.Of(evidence.TimingSlopes, timing: true));

    // Pairs as often as the slopes that were told have them.
    private static int[] Taken((double Gearing, double Timing)[] slopes, int draws, SlopeTold? gearing, SlopeTold? timing) => Resampling.Systematic(
        Resampling.Weights([.. slopes.Select(s => (gearing?.LogWeight(s.Gearing, HeatTrust.GearingSd) ?? 0) + (timing?.LogWeight(s.Timing, HeatTrust.TimingSd) ?? 0))]), draws);

    // Points of what is believed of the lap.
    private static double[][] Points(int draws, long seed) => [.. Enumerable.Range(0, draws).Select(i =>
    {
        double[] z = new double[LapUnknowns.Count];
        new RandomStream(seed ^ 0x1a9, i).FillNormal(z);
        return z;
    })];
}
