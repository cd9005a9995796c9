namespace Coolproof.Notebook.Tables;

/// <summary>Levenshtein's distance: letters put in, left out or changed.</summary>
internal static class EditDistance
{
    /// <summary>Whether two texts are at most <paramref name="limit"/> changes apart.</summary>
    public static bool Within(string a, string b, int limit)
    {
        if (Math.Abs(a.Length - b.Length) > limit) return false;
        int[] above = [.. Enumerable.Range(0, b.Length + 1)];
        int[] row = new int[b.Length + 1];
        for (int i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int change = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                row[j] = Math.Min(change, Math.Min(above[j], row[j - 1]) + 1);
            }

            (above, row) = (row, above);
        }

        return above[b.Length] <= limit;
    }
}
