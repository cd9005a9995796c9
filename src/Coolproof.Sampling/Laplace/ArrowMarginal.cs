namespace Coolproof.Sampling.Laplace;

/// <summary>
/// A normal density with an arrow-shaped precision, exp(b'θ − ½ θ'Hθ), asked again and again with other priors of some of its coordinates: what it
/// integrates to and the marginal of its globals. Locals whose prior never changes are integrated out once. It is symmetric elimination of
/// [[H, b], [b', 0]], whose corner ends as −b'H⁻¹b; a pivot is the precision of a coordinate given those that come after. Evidence never takes away from
/// a prior's precision, unless it bends upwards: then what it says of that coordinate is left out.
/// </summary>
public sealed class ArrowMarginal
{
    /// <summary>Least pivot of a coordinate whose prior doesn't vary.</summary>
    internal const double LeastPivot = 0.2;

    readonly int _globals;
    readonly int _width;
    readonly double[] _corner;
    readonly double _logPivots;

    // The locals that are left, block by block: each a row of [locals of its block | globals | b].
    readonly List<(int First, int Count, double[] Rows)> _blocks = [];
    readonly int[] _varied;

    /// <summary>Prepares a density.</summary>
    /// <param name="hessian">H, finite.</param>
    /// <param name="linear">b, <see cref="ArrowLayout.Dimension"/> numbers.</param>
    /// <param name="varied">Coordinates whose prior will vary; in H its precision is 1.</param>
    public ArrowMarginal(ArrowHessian hessian, ReadOnlySpan<double> linear, IReadOnlyCollection<int> varied)
    {
        ArrowLayout layout = hessian.Layout;
        (_globals, _width) = (layout.Globals, layout.Globals + 1);
        _corner = new double[_width * _width];
        for (int g = 0; g < _globals; g++)
        {
            hessian.GlobalGlobal.AsSpan(g * _globals, _globals).CopyTo(_corner.AsSpan(g * _width));
            _corner[g * _width + _globals] = linear[g];
        }
        HashSet<int> asked = [.. varied];
        List<int> order = [.. asked.Where(v => v < _globals).Order()];
        int variedGlobals = order.Count;
        for (int b = 0; b < layout.Blocks; b++)
        {
            int from = _globals + layout.Start(b);
            int[] within = [.. Enumerable.Range(0, layout.Size(b)).OrderBy(i => asked.Contains(from + i))];
            int kept = within.Count(i => asked.Contains(from + i));
            double[] rows = Gather(hessian, linear, b, within);
            _logPivots += Eliminate(rows, within.Length, [.. Enumerable.Repeat(LeastPivot, within.Length - kept)], _corner);
            if (kept == 0) continue;
            _blocks.Add((order.Count - variedGlobals, kept, Tail(rows, within.Length, kept)));
            order.AddRange(within[^kept..].Select(i => from + i));
        }
        VariedGlobals = variedGlobals;
        _varied = [.. order];
    }

    /// <summary>The varied coordinates in the order in which their precisions are given.</summary>
    public IReadOnlyList<int> Varied => _varied;

    int VariedGlobals { get; }

    /// <summary>The density with other priors of the varied coordinates.</summary>
    /// <param name="precisions">Prior precision of each of <see cref="Varied"/>.</param>
    public GlobalsMarginal With(ReadOnlySpan<double> precisions)
    {
        double[] corner = [.. _corner], least = new double[_globals];
        double logPivots = _logPivots;
        Array.Fill(least, LeastPivot);
        for (int v = 0; v < VariedGlobals; v++)
        {
            corner[_varied[v] * _width + _varied[v]] += precisions[v] - 1;
            least[_varied[v]] = precisions[v];
        }
        foreach ((int first, int count, double[] rows) in _blocks)
        {
            double[] own = [.. rows];
            ReadOnlySpan<double> priors = precisions.Slice(VariedGlobals + first, count);
            for (int i = 0; i < count; i++) own[i * (count + _width) + i] += priors[i] - 1;
            logPivots += Eliminate(own, count, priors, corner);
        }
        return GlobalsMarginal.Of(corner, least, logPivots);
    }

    double[] Gather(ArrowHessian hessian, ReadOnlySpan<double> linear, int block, int[] within)
    {
        ArrowLayout layout = hessian.Layout;
        int size = within.Length, width = size + _width, start = layout.Start(block), entries = layout.EntryStart(block);
        double[] rows = new double[size * width];
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j < size; j++) rows[i * width + j] = hessian.BlockBlock[entries + within[i] * size + within[j]];
            for (int g = 0; g < _globals; g++) rows[i * width + size + g] = hessian.LocalGlobal[g * layout.Locals + start + within[i]];
            rows[i * width + size + _globals] = linear[_globals + start + within[i]];
        }
        return rows;
    }

    // The last rows of a block without the columns of those before, which are done with.
    double[] Tail(double[] rows, int size, int kept)
    {
        int width = size + _width, tail = kept + _width;
        double[] left = new double[kept * tail];
        for (int i = 0; i < kept; i++) rows.AsSpan((size - kept + i) * width + size - kept, tail).CopyTo(left.AsSpan(i * tail));
        return left;
    }

    // Eliminates the first locals of a block, one for each least pivot, from the rows below and from the corner; returns the sum of the logarithms of the pivots.
    double Eliminate(double[] rows, int size, ReadOnlySpan<double> least, double[] corner)
    {
        int width = size + _width;
        double log = 0;
        for (int i = 0; i < least.Length; i++)
        {
            ReadOnlySpan<double> row = rows.AsSpan(i * width, width);
            double pivot = row[i];
            log += Math.Log(Math.Max(pivot, least[i]));
            if (pivot < least[i]) continue;
            for (int j = i + 1; j < size; j++) Columns.AddScaled(row[j..], -row[j] / pivot, rows.AsSpan(j * width + j, width - j));
            ReadOnlySpan<double> outer = row[size..];
            for (int g = 0; g < _width; g++)
                if (outer[g] != 0) Columns.AddScaled(outer[g..], -outer[g] / pivot, corner.AsSpan(g * _width + g, _width - g));
        }
        return log;
    }
}
