using System.Globalization;
using Coolproof.Sampling.Classical;

namespace Coolproof.Sampling.Tests.Classical;

/// <summary>Against the certified values of the NIST Statistical Reference Datasets (public domain).</summary>
public class NistNonlinearTests(ITestOutputHelper output)
{
    public static TheoryData<string> Sets => [.. NistNonlinearModels.ByName.Keys];

    [Fact]
    public void The_table_of_digits_for_every_set_and_start_can_be_quoted()
    {
        output.WriteLine("set        level    start  Jacobian     parameters  sds   sum sq  iterations  outcome");
        foreach (var name in NistNonlinearModels.ByName.Keys)
        {
            var problem = NistNonlinearProblem.Read(name);
            foreach (var (start, exact) in new[] { (1, true), (1, false), (2, true), (2, false) })
            {
                var fit = problem.Fit(start, exact);
                var (parameters, sds) = (ParameterDigits(problem, fit), SdDigits(problem, fit));
                var squares = Digits.Right(fit.ResidualSumOfSquares, problem.CertifiedSumOfSquares);
                output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"{name,-10} {problem.Level,-8} {start}      {(exact ? "exact" : "differences"),-12} {parameters,6:F1}    {sds,6:F1}  {squares,6:F1}  {fit.Iterations,6}      {fit.Outcome}"));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Sets))]
    public void Every_set_is_solved_to_eight_digits_from_both_starts_with_exact_or_difference_derivatives(string name)
    {
        var problem = NistNonlinearProblem.Read(name);
        foreach (var (start, exact) in new[] { (1, true), (1, false), (2, true), (2, false) })
        {
            var fit = problem.Fit(start, exact);
            Assert.True(fit.Succeeded, $"{name} from start {start}: {fit.Reason}");
            Assert.True(ParameterDigits(problem, fit) >= 8, $"{name} from start {start}: {ParameterDigits(problem, fit):F1} digits");
            // Lanczos1 fits its 14-digit data to 1e-13, so that its residuals are a few hundred roundings of a double: 2 to 3 digits of
            // scatter are all that double parameters can hold.
            var sds = SdDigits(problem, fit);
            Assert.True(sds >= (name == "Lanczos1" ? 2.5 : 8), $"{name} from start {start}: {sds:F1} digits of the sds");
            Assert.True(Digits.Right(fit.ResidualSumOfSquares, problem.CertifiedSumOfSquares) >= (name == "Lanczos1" ? 2 : 9), name);
        }
    }

    [Theory]
    [MemberData(nameof(Sets))]
    public void Derivatives_by_differences_agree_with_exact_ones_at_the_certified_values(string name)
    {
        var problem = NistNonlinearProblem.Read(name);
        var (n, p) = (problem.Y.Length, problem.Certified.Length);
        var (exact, differences) = (new double[n * p], new double[n * p]);
        problem.Jacobian(problem.Certified, exact);
        DifferenceJacobian.Of(problem.Residuals, n)(problem.Certified, differences);
        for (var j = 0; j < p; j++)
        {
            var size = Enumerable.Range(0, n).Max(i => Math.Abs(exact[i * p + j]));
            var error = Enumerable.Range(0, n).Max(i => Math.Abs(exact[i * p + j] - differences[i * p + j]));
            Assert.True(error <= 1e-8 * size, $"{name}, parameter {j}: relative error {error / size:E1}");
        }
    }

    static double ParameterDigits(NistNonlinearProblem problem, NonlinearFit fit) => Digits.Least(fit.Parameters, problem.Certified);

    static double SdDigits(NistNonlinearProblem problem, NonlinearFit fit) => Digits.Least(fit.StandardDeviations, problem.CertifiedSds);
}
