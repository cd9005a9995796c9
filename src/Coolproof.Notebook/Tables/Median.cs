namespace Coolproof.Notebook.Tables;

/// <summary>The middle of a list of numbers.</summary>
internal static class Median
{
    /// <summary>Median; the mean of the two middle ones for an even count; null for none.</summary>
    public static double? Of(IReadOnlyCollection<double> values)
    {
        if (values.Count == 0) return null;
        double[] sorted = [.. values.Order()];
        int middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }
}
