namespace Coolproof.Sampling.Laplace;

/// <summary>
/// Order of the coordinates of a hierarchical position: [globals | block 0 | block 1 | …]. Locals of a block go together with the globals and
/// with each other, so that the matrix of second derivatives has the shape of an arrow.
/// </summary>
public sealed class ArrowLayout
{
    readonly int[] _starts;
    readonly int[] _entryStarts;

    /// <summary>A layout of <paramref name="globals"/> globals followed by one block per entry of <paramref name="blockSizes"/>.</summary>
    /// <param name="globals">Number of globals, 0 or more.</param>
    /// <param name="blockSizes">Number of locals of each block, each 1 or more; sizes may differ.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative number of globals, an empty block, or no coordinate at all.</exception>
    public ArrowLayout(int globals, ReadOnlySpan<int> blockSizes)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(globals);
        Globals = globals;
        _starts = new int[blockSizes.Length + 1];
        _entryStarts = new int[blockSizes.Length + 1];
        for (int b = 0; b < blockSizes.Length; b++)
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(blockSizes[b], 1, nameof(blockSizes));
            _starts[b + 1] = _starts[b] + blockSizes[b];
            _entryStarts[b + 1] = checked(_entryStarts[b] + blockSizes[b] * blockSizes[b]);
            LargestBlock = Math.Max(LargestBlock, blockSizes[b]);
        }
        ArgumentOutOfRangeException.ThrowIfZero(Dimension, nameof(blockSizes));
    }

    /// <summary>A layout of <paramref name="blocks"/> blocks of the same size.</summary>
    /// <param name="globals">Number of globals.</param>
    /// <param name="blocks">Number of blocks.</param>
    /// <param name="size">Locals in each block.</param>
    public static ArrowLayout Even(int globals, int blocks, int size)
    {
        int[] sizes = new int[blocks];
        Array.Fill(sizes, size);
        return new ArrowLayout(globals, sizes);
    }

    /// <summary>Number of globals.</summary>
    public int Globals { get; }

    /// <summary>Number of blocks.</summary>
    public int Blocks => _starts.Length - 1;

    /// <summary>Number of locals over all blocks.</summary>
    public int Locals => _starts[^1];

    /// <summary>Globals and locals together.</summary>
    public int Dimension => Globals + Locals;

    /// <summary>Locals of the largest block; 0 without blocks.</summary>
    public int LargestBlock { get; }

    /// <summary>Entries of all dense blocks, Σ size².</summary>
    public int BlockEntries => _entryStarts[^1];

    /// <summary>Index of the first local of a block among all locals (add <see cref="Globals"/> for its index in a position).</summary>
    public int Start(int block) => _starts[block];

    /// <summary>Number of locals of a block.</summary>
    public int Size(int block) => _starts[block + 1] - _starts[block];

    /// <summary>Index of the first entry of a block in an array that holds all dense blocks, each row by row.</summary>
    public int EntryStart(int block) => _entryStarts[block];
}
