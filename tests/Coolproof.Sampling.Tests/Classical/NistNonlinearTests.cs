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
                output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"{name,-10} {problem.Level,-8} {start}      {(exact ? "exact" : "differences"),-12} {ParameterDigits(problem, fit),6:F1}    {SdDigits(problem, fit),6:F1}  {Digits.Right(fit.ResidualSumOfSquares, problem.CertifiedSumOfSquares),6:F1}  {fit.Iterations,6}      {fit.Outcome} {fit.Reason}"));
            }
        }
    }

    static double ParameterDigits(NistNonlinearProblem problem, NonlinearFit fit) => Digits.Least(fit.Parameters, problem.Certified);

    static double SdDigits(NistNonlinearProblem problem, NonlinearFit fit) => Digits.Least(fit.StandardDeviations, problem.CertifiedSds);
}
