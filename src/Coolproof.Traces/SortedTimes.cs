namespace Coolproof.Traces;

/// <summary>Times in order.</summary>
static class SortedTimes
{
    /// <summary>Place of the first that is not before a time; how many there are where all are before it.</summary>
    public static int FirstFrom<T>(ReadOnlySpan<T> times, T from)
        where T : IComparable<T>
    {
        int low = 0, high = times.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (times[middle].CompareTo(from) < 0) low = middle + 1;
            else high = middle;
        }
        return low;
    }
}
