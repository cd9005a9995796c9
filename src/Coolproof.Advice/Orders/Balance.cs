namespace Coolproof.Advice.Orders;

/// <summary>How evenly sequences of runs treat their options.</summary>
/// <param name="After">Times that option b was driven right after option a: [a, b].</param>
/// <param name="AtPlace">Times that an option was driven at a place of its sequence: [option, place].</param>
public sealed record Balance(int[,] After, int[,] AtPlace)
{
    /// <summary>Counts over sequences of equal length.</summary>
    /// <param name="sequences">Options 0 to <paramref name="options"/> − 1 in order of driving.</param>
    /// <param name="options">Number of options.</param>
    public static Balance Of(IReadOnlyList<IReadOnlyList<int>> sequences, int options)
    {
        int[,] after = new int[options, options], atPlace = new int[options, sequences.Count == 0 ? 0 : sequences[0].Count];
        foreach (IReadOnlyList<int> sequence in sequences)
        {
            for (int place = 0; place < sequence.Count; place++)
            {
                atPlace[sequence[place], place]++;
                if (place > 0)
                    after[sequence[place - 1], sequence[place]]++;
            }
        }
        return new(after, atPlace);
    }

    /// <summary>Largest less smallest count of one option following another.</summary>
    public int CarryOverSpread
    {
        get
        {
            int least = int.MaxValue, most = 0;
            for (int a = 0; a < After.GetLength(0); a++)
            {
                for (int b = 0; b < After.GetLength(1); b++)
                {
                    if (a != b)
                        (least, most) = (Math.Min(least, After[a, b]), Math.Max(most, After[a, b]));
                }
            }
            return most - Math.Min(least, most);
        }
    }
}
