namespace Coolproof.Sampling.Tests.Classical;

static class Digits
{
    /// <summary>
    /// Log relative error −log₁₀(|q−c|/|c|), the usual measure for NIST sets: about the number of right digits. −log₁₀|q| if
    /// c is zero.
    /// </summary>
    public static double Right(double computed, double certified)
    {
        if (computed == certified) return 16;
        if (!double.IsFinite(computed)) return -1;
        var error = certified == 0 ? Math.Abs(computed) : Math.Abs(computed - certified) / Math.Abs(certified);
        return Math.Clamp(-Math.Log10(error), -1, 16);
    }

    public static double Least(IEnumerable<double> computed, IEnumerable<double> certified) => computed.Zip(certified, Right).Min();
}
