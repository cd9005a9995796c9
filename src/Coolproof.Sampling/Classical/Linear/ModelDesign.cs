namespace Coolproof.Sampling.Classical;

/// <summary>A design of an intercept and terms, and where each term stands in it.</summary>
internal sealed class ModelDesign
{
    readonly IReadOnlyList<DesignTerm> _terms;
    readonly int[] _offset;

    public ModelDesign(IReadOnlyList<DesignTerm> terms, int readings)
    {
        (_terms, _offset) = (terms, new int[terms.Count + 1]);
        _offset[0] = 1;
        for (var t = 0; t < terms.Count; t++)
        {
            if (terms[t].Readings != readings)
                throw new ArgumentException($"Term {terms[t].Name} has {terms[t].Readings} values for {readings} readings.", nameof(terms));
            _offset[t + 1] = _offset[t] + terms[t].Width;
        }
        Matrix = new double[readings, _offset[^1]];
        for (var i = 0; i < readings; i++) Matrix[i, 0] = 1;
        for (var t = 0; t < terms.Count; t++) terms[t].Fill(Matrix, _offset[t]);
    }

    public double[,] Matrix { get; }

    /// <summary>Weights of the difference "level minus reference" of a factor.</summary>
    public double[] Difference(string factor, string level, string reference)
    {
        var t = IndexOf(factor);
        var weights = new double[_offset[^1]];
        if (_terms[t].ColumnOf(level) is var plus and >= 0) weights[_offset[t] + plus] += 1;
        if (_terms[t].ColumnOf(reference) is var minus and >= 0) weights[_offset[t] + minus] -= 1;
        return weights;
    }

    /// <summary>Weights that pick the slope of a covariate.</summary>
    public double[] Slope(string covariate)
    {
        var weights = new double[_offset[^1]];
        weights[_offset[IndexOf(covariate)]] = 1;
        return weights;
    }

    /// <summary>Term of a column; −1 for the intercept.</summary>
    public int TermOf(int column)
    {
        for (var t = 0; t < _terms.Count; t++)
        {
            if (column >= _offset[t] && column < _offset[t + 1]) return t;
        }
        return -1;
    }

    int IndexOf(string name)
    {
        for (var t = 0; t < _terms.Count; t++)
        {
            if (_terms[t].Name == name) return t;
        }
        throw new ArgumentException($"No term {name}; there are {string.Join(", ", _terms.Select(term => term.Name))}.", nameof(name));
    }
}
