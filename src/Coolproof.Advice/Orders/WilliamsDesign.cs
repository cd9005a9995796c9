namespace Coolproof.Advice.Orders;

/// <summary>
/// Sequences in which each option follows each other equally often, so that warmth carried over from the run before falls on all alike: balanced for first-order
/// carry-over (Williams 1949, Aust. J. Sci. Res. A 2, 149).
/// </summary>
public static class WilliamsDesign
{
    /// <summary>The sequences of a design: n for an even number of options, 2n for an odd one; each holds every option 0 to n − 1 once.</summary>
    /// <param name="options">Options, at least 2.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two options.</exception>
    public static int[][] Sequences(int options)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(options, 2);
        int[] first = Zigzag(options);
        int[][] turned = [.. Enumerable.Range(0, options).Select(shift => first.Select(o => (o + shift) % options).ToArray())];
        return options % 2 == 0 ? turned : [.. turned, .. turned.Select(sequence => sequence.Reverse().ToArray())];
    }

    // 0, 1, n − 1, 2, n − 2, …: neighbours differ by each amount once (even n), or with the reversed sequence twice (odd n).
    private static int[] Zigzag(int options)
    {
        int[] sequence = new int[options];
        for (int i = 1; i < options; i++)
            sequence[i] = i % 2 == 1 ? (i + 1) / 2 : options - i / 2;
        return sequence;
    }
}
