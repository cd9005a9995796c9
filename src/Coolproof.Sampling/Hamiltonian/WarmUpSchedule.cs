namespace Coolproof.Sampling.Hamiltonian;

/// <summary>
/// When the warm-up gathers covariance: a fast stretch for the step size, then windows that double in length, then a fast stretch again
/// (common practice; Carpenter et al. 2017, J. Stat. Softw. 76(1), section 3.3 describes it).
/// </summary>
sealed class WarmUpSchedule
{
    readonly HashSet<int> windowEnds = [];
    readonly int first, last;

    public WarmUpSchedule(NutsSettings settings)
    {
        int total = settings.WarmUp, start = settings.FastStart, end = settings.FastEnd, window = settings.FirstWindow;
        if (!settings.AdaptMetric || total < 20)
            return;
        if (start + window + end > total)
            (start, end, window) = (total * 15 / 100, total / 10, total - total * 15 / 100 - total / 10);
        (first, last) = (start, total - end);
        for (int at = start; at < last; window *= 2)
        {
            // A window whose successor would not fit takes the rest.
            at = at + window + 2 * window > last ? last : at + window;
            windowEnds.Add(at - 1);
        }
    }

    /// <summary>Whether iteration <paramref name="i"/> of the warm-up is gathered.</summary>
    public bool Gathers(int i) => i >= first && i < last;

    /// <summary>Whether the metric is renewed after iteration <paramref name="i"/>.</summary>
    public bool EndsWindow(int i) => windowEnds.Contains(i);
}
