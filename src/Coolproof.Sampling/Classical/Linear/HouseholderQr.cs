namespace Coolproof.Sampling.Classical;

/// <summary>
/// QR factors of a design in double-double arithmetic by Householder reflections, columns taken in the order given. A column that depends
/// linearly on those before it is set aside (aliased), as is the convention of regression programs. No column scaling: without pivoting the
/// reflections do not see it. After G. H. Golub, Numerische Mathematik 7 (1965) 206-216.
/// </summary>
internal sealed class HouseholderQr
{
    // A column counts as dependent when projection leaves less than this share of its norm. Designs come as doubles, so a truly dependent
    // column leaves about 1e-16; the hardest independent column among the NIST linear sets (Filip, x to the tenth) leaves about 1e-10.
    internal const double DependenceTolerance = 1e-13;

    readonly DoubleDouble[][] _columns;
    readonly List<DoubleDouble[]> _reflectors = [];
    readonly List<int> _kept = [];
    readonly List<int> _aliased = [];

    /// <summary>Factors the columns, which are overwritten.</summary>
    public HouseholderQr(DoubleDouble[][] columns, int rows)
    {
        _columns = columns;
        Rows = rows;
        for (var j = 0; j < columns.Length; j++) Take(j);
    }

    public int Rows { get; }

    public int Rank => _kept.Count;

    /// <summary>Columns that are independent, in order: column <c>Kept[k]</c> has its pivot in row k of R.</summary>
    public IReadOnlyList<int> Kept => _kept;

    public IReadOnlyList<int> Aliased => _aliased;

    public DoubleDouble R(int row, int column) => _columns[column][row];

    /// <summary>Overwrites the vector (Rows numbers) with Qᵀ times it.</summary>
    public void ApplyTransposedQ(DoubleDouble[] vector)
    {
        for (var k = 0; k < _reflectors.Count; k++) Reflect(_reflectors[k], vector, k);
    }

    /// <summary>Overwrites the vector with Q times it.</summary>
    public void ApplyQ(DoubleDouble[] vector)
    {
        for (var k = _reflectors.Count - 1; k >= 0; k--) Reflect(_reflectors[k], vector, k);
    }

    /// <summary>Solves R x = rightSide over the kept columns; Rank numbers.</summary>
    public DoubleDouble[] SolveUpper(DoubleDouble[] rightSide)
    {
        var x = new DoubleDouble[Rank];
        for (var k = Rank - 1; k >= 0; k--)
        {
            var rest = rightSide[k];
            for (var l = k + 1; l < Rank; l++) rest -= R(k, _kept[l]) * x[l];
            x[k] = rest / R(k, _kept[k]);
        }
        return x;
    }

    /// <summary>R⁻¹ over the kept columns, Rank × Rank, as columns.</summary>
    public DoubleDouble[][] InverseR()
    {
        var columns = new DoubleDouble[Rank][];
        for (var k = 0; k < Rank; k++)
        {
            var unit = new DoubleDouble[Rank];
            unit[k] = 1;
            columns[k] = SolveUpper(unit);
        }
        return columns;
    }

    void Take(int j)
    {
        var column = _columns[j];
        var norm = DoubleDouble.Sqrt(DoubleDouble.Dot(column, column, 0));
        ApplyTransposedQ(column);
        var k = Rank;
        var tail = k < Rows ? DoubleDouble.Sqrt(DoubleDouble.Dot(column, column, k)) : DoubleDouble.Zero;
        if (!(tail.Hi > DependenceTolerance * norm.Hi))
        {
            _aliased.Add(j);
            return;
        }
        // The reflector carries v with vᵀv = 2, so that reflecting needs no division.
        var pivot = column[k].Hi > 0 ? -tail : tail;
        var v = new DoubleDouble[Rows];
        Array.Copy(column, k, v, k, Rows - k);
        v[k] -= pivot;
        var scale = DoubleDouble.Sqrt(2 / DoubleDouble.Dot(v, v, k));
        for (var i = k; i < Rows; i++) v[i] *= scale;
        column[k] = pivot;
        Array.Clear(column, k + 1, Rows - k - 1);
        _reflectors.Add(v);
        _kept.Add(j);
    }

    static void Reflect(DoubleDouble[] v, DoubleDouble[] vector, int from)
    {
        var along = DoubleDouble.Dot(v, vector, from);
        for (var i = from; i < v.Length; i++) vector[i] -= along * v[i];
    }
}
