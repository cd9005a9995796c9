using System.Numerics;
using System.Numerics.Tensors;
using System.Runtime.InteropServices;

namespace Coolproof.Sampling.Laplace;

/// <summary>
/// The upper triangular matrices L_b⁻ᵀ of all blocks. Small blocks are one banded matrix, kept diagonal by diagonal over all locals: a product is then a few
/// long entry-by-entry sums instead of many tiny triangles. Entries that would reach past a block are 0. Where blocks are large the band would be read from all over
/// the memory, half of it zeros: there each triangle lies row after row.
/// </summary>
sealed class BlockTriangles
{
    const int LargestInBand = 40;

    readonly ArrowLayout _layout;
    readonly double[] _diagonals, _rows;
    readonly int[] _start;

    public BlockTriangles(ArrowLayout layout)
    {
        _layout = layout;
        bool banded = layout.LargestBlock <= LargestInBand;
        _diagonals = banded ? new double[layout.LargestBlock * layout.Locals] : [];
        _start = new int[banded ? 0 : layout.Blocks + 1];
        for (int b = 0; b + 1 < _start.Length; b++) _start[b + 1] = _start[b] + layout.Size(b) * (layout.Size(b) + 1) / 2;
        _rows = new double[banded ? 0 : _start[^1]];
    }

    bool InRows => _start.Length > 0;

    /// <summary>Sets block <paramref name="block"/> from its lower Cholesky factor (size × size, row by row): the inverse, transposed.</summary>
    public void SetInverse(int block, ReadOnlySpan<double> lower)
    {
        if (InRows)
        {
            SetInverseRows(block, lower);
            return;
        }
        int size = _layout.Size(block), start = _layout.Start(block), locals = _layout.Locals;
        // Column j of L⁻¹ is row j of L⁻ᵀ: entry (i, j) of L⁻¹ lies on diagonal i − j at row j.
        for (int j = 0; j < size; j++)
        {
            for (int i = j; i < size; i++)
            {
                double sum = i == j ? 1.0 : 0.0;
                for (int k = j; k < i; k++) sum -= lower[i * size + k] * _diagonals[(k - j) * locals + start + j];
                _diagonals[(i - j) * locals + start + j] = sum / lower[i * size + i];
            }
        }
    }

    void SetInverseRows(int block, ReadOnlySpan<double> lower)
    {
        int size = _layout.Size(block), at = _start[block];
        for (int j = 0; j < size; j++)
        {
            // Column j of L⁻¹ from its diagonal down.
            Span<double> row = _rows.AsSpan(at, size - j);
            for (int i = j; i < size; i++)
                row[i - j] = ((i == j ? 1 : 0) - TensorPrimitives.Dot(lower.Slice(i * size + j, i - j), (ReadOnlySpan<double>)row[..(i - j)])) / lower[i * size + i];
            at += size - j;
        }
    }

    // What is done with each row of each triangle: it begins at its diagonal, the given place among the locals, and ends with its block.
    delegate void OnRow(ReadOnlySpan<double> row, int local, ReadOnlySpan<double> x, Span<double> y);

    void EachRow(ReadOnlySpan<double> x, Span<double> y, OnRow act)
    {
        int at = 0;
        for (int b = 0; b < _layout.Blocks; b++)
        {
            for (int j = 0, size = _layout.Size(b); j < size; at += size - j, j++)
                act(_rows.AsSpan(at, size - j), _layout.Start(b) + j, x, y);
        }
    }

    /// <summary>y += L⁻ᵀ x over all locals.</summary>
    public void AddProduct(ReadOnlySpan<double> x, Span<double> y)
    {
        if (InRows)
        {
            EachRow(x, y, static (row, l, x, y) => y[l] += TensorPrimitives.Dot(row, x.Slice(l, row.Length)));
            return;
        }
        int locals = _layout.Locals, band = _layout.LargestBlock, i = 0;
        ref double first = ref MemoryMarshal.GetArrayDataReference(_diagonals);
        ref double rx = ref MemoryMarshal.GetReference(x[..locals]), ry = ref MemoryMarshal.GetReference(y[..locals]);
        for (; i + Vector<double>.Count + band - 1 <= locals; i += Vector<double>.Count)
        {
            Vector<double> sum = Vector.LoadUnsafe(ref ry, (nuint)i);
            for (int d = 0, at = i; d < band; d++, at += locals)
                sum = Vector.FusedMultiplyAdd(Vector.LoadUnsafe(ref first, (nuint)at), Vector.LoadUnsafe(ref rx, (nuint)(i + d)), sum);
            sum.StoreUnsafe(ref ry, (nuint)i);
        }
        for (; i < locals; i++)
            for (int d = 0; d < band && i + d < locals; d++) y[i] += _diagonals[d * locals + i] * x[i + d];
    }

    /// <summary>y += L⁻¹ x over all locals.</summary>
    public void AddTransposedProduct(ReadOnlySpan<double> x, Span<double> y)
    {
        if (InRows)
        {
            EachRow(x, y, static (row, l, x, y) => TensorPrimitives.MultiplyAdd(row, x[l], y.Slice(l, row.Length), y.Slice(l, row.Length)));
            return;
        }
        int locals = _layout.Locals, band = _layout.LargestBlock, i = 0;
        ref double first = ref MemoryMarshal.GetArrayDataReference(_diagonals);
        ref double rx = ref MemoryMarshal.GetReference(x[..locals]), ry = ref MemoryMarshal.GetReference(y[..locals]);
        for (; i < band - 1; i++)
            for (int d = 0; d <= i; d++) y[i] += _diagonals[d * locals + i - d] * x[i - d];
        for (; i + Vector<double>.Count <= locals; i += Vector<double>.Count)
        {
            Vector<double> sum = Vector.LoadUnsafe(ref ry, (nuint)i);
            for (int d = 0, at = i; d < band; d++, at += locals - 1)
                sum = Vector.FusedMultiplyAdd(Vector.LoadUnsafe(ref first, (nuint)at), Vector.LoadUnsafe(ref rx, (nuint)(i - d)), sum);
            sum.StoreUnsafe(ref ry, (nuint)i);
        }
        for (; i < locals; i++)
            for (int d = 0; d < band; d++) y[i] += _diagonals[d * locals + i - d] * x[i - d];
    }

    /// <summary>y[l] += squared length of row l of L⁻ᵀ, the diagonal of H_bb⁻¹.</summary>
    public void AddRowSquares(Span<double> y)
    {
        if (InRows)
        {
            EachRow([], y, static (row, l, _, y) => y[l] += TensorPrimitives.SumOfSquares(row));
            return;
        }
        int locals = _layout.Locals;
        for (int d = 0; d < _layout.LargestBlock; d++)
        {
            ReadOnlySpan<double> diagonal = _diagonals.AsSpan(d * locals, locals - d);
            Columns.AddEntrywise(diagonal, diagonal, y);
        }
    }
}
