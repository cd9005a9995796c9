namespace Coolproof.Sampling.Classical;

/// <summary>
/// Linear least squares by Householder QR carried in double-double arithmetic, so that ill-conditioned designs keep the digits of their
/// data. Work: about n·p² double-double multiplications (a design of 1000 × 20 takes about ten milliseconds).
/// </summary>
public static class LinearLeastSquares
{
    /// <summary>Fits response ≈ design · coefficients.</summary>
    /// <param name="design">n rows, p columns; an intercept, if wanted, is a column of ones.</param>
    /// <param name="response">n readings.</param>
    /// <exception cref="ArgumentException">Lengths disagree, nothing to fit, or a number is not finite.</exception>
    public static LinearFit Fit(double[,] design, ReadOnlySpan<double> response)
    {
        var (rows, width) = (design.GetLength(0), design.GetLength(1));
        var columns = new DoubleDouble[width][];
        for (var j = 0; j < width; j++)
        {
            columns[j] = new DoubleDouble[rows];
            for (var i = 0; i < rows; i++) columns[j][i] = design[i, j];
        }
        return Fit(columns, response);
    }

    /// <summary>Fits a polynomial; the powers are formed in double-double, which an ill-conditioned one (Filip) needs.</summary>
    /// <param name="x">n abscissae.</param>
    /// <param name="response">n readings.</param>
    /// <param name="degree">Highest power, at least 0. Coefficient k belongs to the power k.</param>
    public static LinearFit FitPolynomial(ReadOnlySpan<double> x, ReadOnlySpan<double> response, int degree)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(degree);
        var columns = new DoubleDouble[degree + 1][];
        for (var k = 0; k <= degree; k++)
        {
            columns[k] = new DoubleDouble[x.Length];
            for (var i = 0; i < x.Length; i++) columns[k][i] = k == 0 ? 1 : columns[k - 1][i] * x[i];
        }
        return Fit(columns, response);
    }

    internal static LinearFit Fit(DoubleDouble[][] columns, ReadOnlySpan<double> response)
    {
        Check(columns, response);
        var rows = response.Length;
        var qr = new HouseholderQr(columns, rows);
        var effects = Widen(response);
        qr.ApplyTransposedQ(effects);
        var solved = qr.SolveUpper(effects);
        var coefficients = new double[columns.Length];
        Array.Fill(coefficients, double.NaN);
        for (var k = 0; k < qr.Rank; k++) coefficients[qr.Kept[k]] = (double)solved[k];

        var residuals = (DoubleDouble[])effects.Clone();
        Array.Clear(residuals, 0, qr.Rank);
        var rss = (double)DoubleDouble.Dot(residuals, residuals, 0);
        qr.ApplyQ(residuals);
        return new LinearFit(coefficients, Narrow(qr.InverseR()), NullVectors(qr, columns.Length),
            [.. effects.Take(qr.Rank).Select(e => (double)e)], qr.Kept, [.. residuals.Select(r => (double)r)], rss,
            TotalSumOfSquares(qr, response), IsExact(residuals, response));
    }

    static void Check(DoubleDouble[][] columns, ReadOnlySpan<double> response)
    {
        if (response.IsEmpty || columns.Length == 0) throw new ArgumentException("Nothing to fit: no readings or no columns.", nameof(response));
        for (var j = 0; j < columns.Length; j++)
        {
            if (columns[j].Length != response.Length)
                throw new ArgumentException($"The design has {columns[j].Length} rows, the response {response.Length}.", nameof(response));
            var i = Array.FindIndex(columns[j], value => !double.IsFinite(value.Hi));
            if (i >= 0) throw new ArgumentException($"Design row {i}, column {j} is {columns[j][i].Hi}.", nameof(columns));
        }
        for (var i = 0; i < response.Length; i++)
        {
            if (!double.IsFinite(response[i])) throw new ArgumentException($"Reading {i} is {response[i]}.", nameof(response));
        }
    }

    // The directions in which coefficients can move without changing the fit, one for each aliased column.
    static double[][] NullVectors(HouseholderQr qr, int width) => [.. qr.Aliased.Select(aliased =>
    {
        var right = new DoubleDouble[qr.Rank];
        // An aliased column only has entries in the rows of the columns kept before it.
        for (var k = 0; k < qr.Rank && qr.Kept[k] < aliased; k++) right[k] = qr.R(k, aliased);
        var solved = qr.SolveUpper(right);
        var direction = new double[width];
        direction[aliased] = -1;
        for (var k = 0; k < qr.Rank; k++)
        {
            // What is left of a weight that should be nothing.
            direction[qr.Kept[k]] = Math.Abs(solved[k].Hi) < 1e-11 ? 0 : (double)solved[k];
        }
        return direction;
    })];

    static double TotalSumOfSquares(HouseholderQr qr, ReadOnlySpan<double> response)
    {
        var ones = Enumerable.Repeat((DoubleDouble)1, qr.Rows).ToArray();
        qr.ApplyTransposedQ(ones);
        var outside = qr.Rank < qr.Rows ? (double)DoubleDouble.Dot(ones, ones, qr.Rank) : 0;
        var about = outside < 1e-20 * qr.Rows ? DoubleDouble.Sum(response) / response.Length : DoubleDouble.Zero;
        var total = DoubleDouble.Zero;
        foreach (var value in response) total += (value - about) * (value - about);
        return (double)total;
    }

    static bool IsExact(DoubleDouble[] residuals, ReadOnlySpan<double> response)
    {
        var (largest, size) = (0.0, 0.0);
        for (var i = 0; i < response.Length; i++)
        {
            largest = Math.Max(largest, Math.Abs(residuals[i].Hi));
            size = Math.Max(size, Math.Abs(response[i]));
        }
        return largest <= 4e-16 * size;
    }

    static DoubleDouble[] Widen(ReadOnlySpan<double> values)
    {
        var wide = new DoubleDouble[values.Length];
        for (var i = 0; i < wide.Length; i++) wide[i] = values[i];
        return wide;
    }

    static double[][] Narrow(DoubleDouble[][] columns) => [.. columns.Select(c => c.Select(v => (double)v).ToArray())];
}
