using System.Numerics;
using System.Runtime.InteropServices;

namespace Coolproof.Sampling.Laplace;

/// <summary>
/// The upper triangular matrices L_b⁻ᵀ of all blocks as one banded matrix, kept diagonal by diagonal over all locals: a product is then a few
/// long entry-by-entry sums instead of many tiny triangles. Entries that would reach past a block are 0.
/// </summary>
sealed class BlockTriangles
{
    readonly ArrowLayout _layout;
    readonly double[] _diagonals;

    public BlockTriangles(ArrowLayout layout)
    {
        _layout = layout;
        _diagonals = new double[layout.LargestBlock * layout.Locals];
    }

    /// <summary>Sets block <paramref name="block"/> from its lower Cholesky factor (size × size, row by row): the inverse, transposed.</summary>
    public void SetInverse(int block, ReadOnlySpan<double> lower)
    {
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

    /// <summary>y += L⁻ᵀ x over all locals.</summary>
    public void AddProduct(ReadOnlySpan<double> x, Span<double> y)
    {
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
        int locals = _layout.Locals;
        for (int d = 0; d < _layout.LargestBlock; d++)
        {
            ReadOnlySpan<double> diagonal = _diagonals.AsSpan(d * locals, locals - d);
            Columns.AddEntrywise(diagonal, diagonal, y);
        }
    }
}
