namespace Coolproof.Sampling.Classical;

/// <summary>One-way analysis of variance: do group means differ by more than the scatter within groups explains?</summary>
public static class OneWayAnova
{
    /// <summary>Of readings in groups, sums carried in double-double about the grand mean.</summary>
    /// <param name="groups">At least two groups, each with at least one reading, finite.</param>
    /// <returns>A table with one line, "between".</returns>
    /// <exception cref="ArgumentException">Fewer than two groups, an empty group or a number that is not finite.</exception>
    public static AnovaTable Of(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        if (groups.Count < 2) throw new ArgumentException($"{groups.Count} group(s); at least two are needed.", nameof(groups));
        var (count, total) = (0, DoubleDouble.Zero);
        for (var g = 0; g < groups.Count; g++)
        {
            if (groups[g].Count == 0) throw new ArgumentException($"Group {g} is empty.", nameof(groups));
            foreach (var value in groups[g])
            {
                if (!double.IsFinite(value)) throw new ArgumentException($"Group {g} holds {value}.", nameof(groups));
                total += value;
            }
            count += groups[g].Count;
        }
        var grandMean = total / count;
        var (between, within) = (DoubleDouble.Zero, DoubleDouble.Zero);
        foreach (var group in groups)
        {
            var mean = group.Aggregate(DoubleDouble.Zero, (sum, value) => sum + value) / group.Count;
            between += (mean - grandMean) * (mean - grandMean) * group.Count;
            foreach (var value in group) within += (value - mean) * (value - mean);
        }
        var (df, residualDf) = (groups.Count - 1, count - groups.Count);
        var residual = (double)within;
        return new([AnovaTable.Line("between", df, (double)between, residualDf, residual)], residualDf, residual);
    }

    /// <summary>
    /// Of readings kept as decimals, for readings with many constant leading digits: the first reading is taken off in decimal arithmetic,
    /// exactly, before anything is rounded to binary.
    /// </summary>
    /// <param name="groups">As for the other overload.</param>
    public static AnovaTable Of(IReadOnlyList<IReadOnlyList<decimal>> groups)
    {
        var origin = groups.SelectMany(group => group).FirstOrDefault();
        return Of([.. groups.Select(IReadOnlyList<double> (group) => [.. group.Select(value => (double)(value - origin))])]);
    }
}
