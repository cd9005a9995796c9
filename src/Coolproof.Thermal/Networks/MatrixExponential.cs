using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Thermal;

/// <summary>exp(A) by scaling and squaring with the (13, 13) Padé approximant (Higham 2005, SIAM J. Matrix Anal. Appl. 26, 1179).</summary>
internal static class MatrixExponential
{
    /// <summary>Largest 1-norm for which the approximant needs no scaling in double precision (Higham 2005, table 2.3).</summary>
    const double Theta13 = 5.371920351148152;

    static readonly double[] coefficients =
    [
        64764752532480000, 32382376266240000, 7771770303897600, 1187353796428800, 129060195264000, 10559470521600, 670442572800,
        33522128640, 1323241920, 40840800, 960960, 16380, 182, 1,
    ];

    internal static Matrix<double> Of(Matrix<double> a)
    {
        double norm = a.L1Norm();
        int squarings = norm > Theta13 ? (int)Math.Ceiling(Math.Log2(norm / Theta13)) : 0;
        Matrix<double> scaled = a * Math.ScaleB(1, -squarings);
        Matrix<double> result = Pade13(scaled);
        for (int i = 0; i < squarings; i++) result *= result;
        return result;
    }

    static Matrix<double> Pade13(Matrix<double> a)
    {
        double[] b = coefficients;
        Matrix<double> one = Matrix<double>.Build.DenseIdentity(a.RowCount);
        Matrix<double> a2 = a * a, a4 = a2 * a2, a6 = a4 * a2;
        Matrix<double> odd = a * (a6 * (b[13] * a6 + b[11] * a4 + b[9] * a2) + b[7] * a6 + b[5] * a4 + b[3] * a2 + b[1] * one);
        Matrix<double> even = a6 * (b[12] * a6 + b[10] * a4 + b[8] * a2) + b[6] * a6 + b[4] * a4 + b[2] * a2 + b[0] * one;
        return (even - odd).LU().Solve(even + odd);
    }
}
