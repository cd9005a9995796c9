using Coolproof.Rehearsal;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>What came of judging one simulated day.</summary>
/// <param name="Seed">Its number.</param>
/// <param name="Stratum">What kind of day it is.</param>
/// <param name="Failure">Why it was not judged; empty when it was.</param>
/// <param name="OracleFailure">Why the oracle did not judge it; empty when it did or was not asked.</param>
/// <param name="Options">Its options.</param>
/// <param name="Pairs">Its pairs, on the can and on the winding.</param>
/// <param name="Draws">Draws of the posterior, all chains.</param>
/// <param name="Seconds">Time that judging took, without the oracle, s.</param>
internal sealed record DayOutcome(
    long Seed, Stratum Stratum, string Failure, string OracleFailure, IReadOnlyList<OptionOutcome> Options, IReadOnlyList<PairOutcome> Pairs, int Draws,
    double Seconds)
{
    public bool Judged => Failure.Length == 0;

    public IEnumerable<PairOutcome> On(ComparedOn on) => Pairs.Where(p => p.On == on);
}
