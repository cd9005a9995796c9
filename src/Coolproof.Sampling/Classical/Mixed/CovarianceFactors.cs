namespace Coolproof.Sampling.Classical;

/// <summary>θ, the entries of the lower triangles of all terms' relative covariance factors, column by column, in the order of the terms.</summary>
internal sealed class CovarianceFactors(IReadOnlyList<RandomTerm> terms)
{
    public int Count { get; } = terms.Sum(term => term.Width * (term.Width + 1) / 2);

    /// <summary>θ with every factor the identity.</summary>
    public double[] Unit => [.. terms.SelectMany(term => Entries(term.Width).Select(e => e.Row == e.Column ? 1.0 : 0.0))];

    /// <summary>For each column of each factor the positions in θ; the first of them is the diagonal.</summary>
    public IEnumerable<int[]> Columns
    {
        get
        {
            var at = 0;
            foreach (var term in terms)
            {
                for (var column = 0; column < term.Width; column++)
                {
                    yield return [.. Enumerable.Range(at, term.Width - column)];
                    at += term.Width - column;
                }
            }
        }
    }

    public double[][,] Matrices(double[] theta)
    {
        var at = 0;
        var matrices = new double[terms.Count][,];
        for (var t = 0; t < terms.Count; t++)
        {
            matrices[t] = new double[terms[t].Width, terms[t].Width];
            foreach (var (row, column) in Entries(terms[t].Width)) matrices[t][row, column] = theta[at++];
        }
        return matrices;
    }

    static IEnumerable<(int Row, int Column)> Entries(int width) =>
        from column in Enumerable.Range(0, width) from row in Enumerable.Range(column, width - column) select (row, column);
}
