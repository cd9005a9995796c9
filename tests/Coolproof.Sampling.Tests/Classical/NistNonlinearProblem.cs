using Coolproof.Sampling.Classical;

namespace Coolproof.Sampling.Tests.Classical;

/// <summary>A NIST nonlinear set as a residual function with an exact Jacobian.</summary>
sealed record NistNonlinearProblem(string Name, string Level, double[][] X, double[] Y, Model Model, double[][] Starts, double[] Certified,
    double[] CertifiedSds, double CertifiedSumOfSquares)
{
    public static NistNonlinearProblem Read(string name)
    {
        var file = NistFile.Read("nonlinear", name);
        var (rows, data) = (file.ParameterRows, file.Data);
        // Nelson is stated for the logarithm of its response.
        return new(name, file.Level, [.. data.Select(row => row[1..])], [.. data.Select(row => name == "Nelson" ? Math.Log(row[0]) : row[0])],
            NistNonlinearModels.ByName[name], [[.. rows.Select(r => r[0])], [.. rows.Select(r => r[1])]], [.. rows.Select(r => r[2])],
            [.. rows.Select(r => r[3])], file.After("Residual Sum of Squares:")[0]);
    }

    public void Residuals(ReadOnlySpan<double> parameters, Span<double> residuals)
    {
        var b = Constants(parameters);
        for (var i = 0; i < Y.Length; i++) residuals[i] = Y[i] - Model(b, X[i]).Value;
    }

    public void Jacobian(ReadOnlySpan<double> parameters, Span<double> jacobian)
    {
        var b = Constants(parameters);
        for (var j = 0; j < b.Length; j++)
        {
            b[j] = new(parameters[j], 1);
            for (var i = 0; i < Y.Length; i++) jacobian[i * b.Length + j] = -Model(b, X[i]).Slope;
            b[j] = parameters[j];
        }
    }

    public NonlinearFit Fit(int start, bool exactJacobian) =>
        LevenbergMarquardt.Minimise(Residuals, Y.Length, Starts[start - 1], exactJacobian ? Jacobian : null);

    static Dual[] Constants(ReadOnlySpan<double> parameters)
    {
        var b = new Dual[parameters.Length];
        for (var j = 0; j < b.Length; j++) b[j] = parameters[j];
        return b;
    }
}
