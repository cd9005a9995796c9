namespace Coolproof.Sampling.Uncertainty;

/// <summary>
/// The law of propagation of uncertainty, first order (JCGM 100:2008, 5.1.2 and 5.2.2; JCGM 102:2011, 6.2 for several outputs): U_y = C U_x Cᵀ.
/// </summary>
/// <param name="Values">Outputs at the estimates.</param>
/// <param name="Covariance">Covariance of the outputs.</param>
/// <param name="Sensitivities">∂output/∂input: output × input.</param>
/// <param name="DegreesOfFreedom">Effective degrees of freedom of each output (Welch-Satterthwaite, JCGM 100 G.4.1); NaN where inputs of finite ones are correlated.</param>
public sealed record LawOfPropagation(double[] Values, double[,] Covariance, double[,] Sensitivities, double[] DegreesOfFreedom)
{
    // Five points a tenth of a standard uncertainty apart: the error goes with the fifth derivative.
    const double StepShare = 0.1;

    /// <summary>Propagates.</summary>
    /// <param name="inputs">Inputs.</param>
    /// <param name="outputs">Number of outputs.</param>
    /// <param name="model">The model.</param>
    /// <param name="correlation">Correlations of the inputs, square; null: none.</param>
    public static LawOfPropagation Of(IReadOnlyList<Input> inputs, int outputs, MeasurementModel model, double[,]? correlation = null)
    {
        InputChecks.Refuse(inputs, correlation);
        int n = inputs.Count;
        double[] x = [.. inputs.Select(i => i.Estimate)], values = new double[outputs], dof = new double[outputs];
        double[,] slopes = new double[outputs, n], covariance = new double[outputs, outputs];
        model(x, values);
        double[][] at = [.. Enumerable.Range(0, 4).Select(_ => new double[outputs])];
        for (int i = 0; i < n; i++)
        {
            double step = StepShare * inputs[i].StandardUncertainty;
            if (step == 0)
                continue;
            double[] moves = [-2, -1, 1, 2];
            for (int m = 0; m < 4; m++)
            {
                x[i] = inputs[i].Estimate + moves[m] * step;
                model(x, at[m]);
            }
            x[i] = inputs[i].Estimate;
            for (int o = 0; o < outputs; o++)
                slopes[o, i] = (8 * (at[2][o] - at[1][o]) - (at[3][o] - at[0][o])) / (12 * step);
        }
        for (int a = 0; a < outputs; a++)
            for (int b = 0; b < outputs; b++)
                covariance[a, b] = Sum(a, b);
        for (int o = 0; o < outputs; o++)
            dof[o] = EffectiveDegrees(o);
        return new(values, covariance, slopes, dof);

        double Sum(int a, int b)
        {
            double sum = 0;
            for (int i = 0; i < n; i++)
                for (int j = 0; j < n; j++)
                    if (i == j || correlation is not null)
                        sum += Part(a, i) * Part(b, j) * (i == j ? 1 : correlation![i, j]);
            return sum;
        }

        double Part(int o, int i) => slopes[o, i] * inputs[i].StandardUncertainty;

        double EffectiveDegrees(int o)
        {
            double sum = 0;
            for (int i = 0; i < n; i++)
            {
                if (double.IsPositiveInfinity(inputs[i].DegreesOfFreedom))
                    continue;
                if (correlation is not null && Enumerable.Range(0, n).Any(j => j != i && correlation[i, j] != 0))
                    return double.NaN;
                sum += Math.Pow(Part(o, i), 4) / inputs[i].DegreesOfFreedom;
            }
            return covariance[o, o] * covariance[o, o] / sum;
        }
    }

    /// <summary>Combined standard uncertainty of an output.</summary>
    public double StandardUncertainty(int output = 0) => Math.Sqrt(Covariance[output, output]);

    /// <summary>Correlation of two outputs.</summary>
    public double Correlation(int a, int b) => Covariance[a, b] / StandardUncertainty(a) / StandardUncertainty(b);

    /// <summary>An input's part of an output's standard uncertainty: |c| u.</summary>
    public double Component(int output, int input, IReadOnlyList<Input> inputs) => Math.Abs(Sensitivities[output, input]) * inputs[input].StandardUncertainty;
}
