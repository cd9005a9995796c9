namespace Coolproof.Advice.Orders;

/// <summary>When each run of an order can start, and how many fit.</summary>
/// <param name="StartS">Start of each run that fits, s from the first go.</param>
/// <param name="WaitedForPackS">Seconds that were lost waiting for a charged pack.</param>
public sealed record DaySchedule(IReadOnlyList<double> StartS, double WaitedForPackS)
{
    /// <summary>Runs that fit into the day.</summary>
    public int Runs => StartS.Count;

    /// <summary>Walks through a day: cool down and swap at once, then drive when a pack is charged.</summary>
    public static DaySchedule Of(ReadOnlySpan<int> order, DayLimits limits)
    {
        double[] pack = new double[limits.Packs], charger = new double[limits.Chargers];
        List<double> starts = [];
        double halt = 0, waited = 0;
        for (int i = 0; i < order.Length; i++)
        {
            double ready = i == 0 ? 0 : halt + limits.ReadS + Math.Max(limits.CoolS, limits.SwapS[order[i - 1], order[i]]);
            int next = Array.IndexOf(pack, pack.Min());
            double start = Math.Max(ready, pack[next]);
            if (double.IsPositiveInfinity(start) || start + limits.DriveS > limits.LengthS)
                break;
            waited += start - ready;
            starts.Add(start);
            halt = start + limits.DriveS;
            pack[next] = Charged(halt + limits.PackCoolS, charger, limits.ChargeS);
        }
        return new(starts, waited);
    }

    private static double Charged(double fromS, double[] charger, double chargeS)
    {
        if (charger.Length == 0)
            return double.PositiveInfinity;
        int free = Array.IndexOf(charger, charger.Min());
        return charger[free] = Math.Max(fromS, charger[free]) + chargeS;
    }
}
