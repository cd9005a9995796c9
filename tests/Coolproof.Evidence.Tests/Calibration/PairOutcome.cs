namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>What was said of one pair on one simulated day, beside the truth. Differences are a − b, K.</summary>
/// <param name="A">First option.</param>
/// <param name="B">Second option.</param>
/// <param name="On">Can or winding.</param>
/// <param name="Truth">True difference of the fair peaks.</param>
/// <param name="Said">Posterior of the difference.</param>
/// <param name="Probability">Probability that a is cooler.</param>
/// <param name="Call">The call.</param>
/// <param name="Oracle">Posterior of who knows the generator's hyperparameters; null when not asked.</param>
/// <param name="OracleCall">The call of the same.</param>
/// <param name="Floor">Difference of the options' means with each run driven again at fair conditions with its own true load; the can only, else NaN.</param>
/// <param name="Naive">Difference of the options' means of first reading minus air; the can only, else NaN.</param>
internal sealed record PairOutcome(
    string A, string B, ComparedOn On, double Truth, Summary Said, double Probability, PairCall Call, Summary? Oracle, PairCall OracleCall,
    double Floor, double Naive)
{
    public double OracleMean => Oracle?.Mean ?? double.NaN;

    public bool OracleCovered => Oracle is not null && Truth >= Oracle.Q05 && Truth <= Oracle.Q95;

    public bool OracleWrong => (OracleCall == PairCall.ACooler && Truth > 0) || (OracleCall == PairCall.BCooler && Truth < 0);

    public bool Covered => Truth >= Said.Q05 && Truth <= Said.Q95;

    public bool Firm => IsFirm(Call);

    public bool OracleFirm => IsFirm(OracleCall);

    /// <summary>A firm call that is wrong.</summary>
    public bool Wrong => (Call == PairCall.ACooler && Truth > 0) || (Call == PairCall.BCooler && Truth < 0);

    /// <summary>Probability that the cooler one was called wrongly, as stated.</summary>
    public double StatedError => Math.Min(Probability, 1 - Probability);

    private static bool IsFirm(PairCall call) => call is PairCall.ACooler or PairCall.BCooler;
}
