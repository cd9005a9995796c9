namespace Coolproof.Traces.Live;

/// <summary>Samples put in the order of time.</summary>
public static class Timeline
{
    /// <summary>Shortest silence that counts as a gap, ms.</summary>
    public const long ShortestGapMs = 3000;

    /// <summary>Sorts samples; those of one instant stay in the order in which they came.</summary>
    /// <param name="samples">Samples in the order in which they came.</param>
    /// <returns>Without marks of gaps that samples sent late have filled: the sensor was heard of late, and nothing is missing.</returns>
    public static IReadOnlyList<Sample> Of(IReadOnlyList<Sample> samples)
    {
        ArgumentNullException.ThrowIfNull(samples);
        var sorted = InOrder(samples) ? samples : [.. samples.OrderBy(sample => sample.AtMs)];
        if (!sorted.Any(sample => sample.Mark == SampleMark.Gap)) return sorted;
        var kept = new List<Sample>(sorted.Count);
        for (var i = 0; i < sorted.Count; i++)
            if (sorted[i].Mark != SampleMark.Gap || !Filled(sorted, i)) kept.Add(sorted[i]);
        return kept;
    }

    static bool Filled(IReadOnlyList<Sample> sorted, int gap)
    {
        var (before, after) = (gap - 1, gap + 1);
        while (before >= 0 && sorted[before].Mark == SampleMark.Gap) before--;
        while (after < sorted.Count && sorted[after].Mark == SampleMark.Gap) after++;
        return before >= 0 && after < sorted.Count && sorted[after].AtMs - sorted[before].AtMs <= ShortestGapMs;
    }

    static bool InOrder(IReadOnlyList<Sample> samples)
    {
        for (var i = 1; i < samples.Count; i++)
            if (samples[i].AtMs < samples[i - 1].AtMs) return false;
        return true;
    }
}
