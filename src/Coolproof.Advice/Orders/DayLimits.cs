namespace Coolproof.Advice.Orders;

/// <summary>What a day at the track allows.</summary>
/// <param name="LengthS">From the first go to the last halt, s: hours, daylight, rain.</param>
/// <param name="DriveS">A drive, s.</param>
/// <param name="CoolS">Cool-down between runs, s.</param>
/// <param name="ReadS">Readings and handling after a halt, s.</param>
/// <param name="SwapS">Seconds to change from option a to option b: [a, b]; the diagonal is 0.</param>
/// <param name="Packs">Charged packs at the start.</param>
/// <param name="Chargers">Chargers at the track; 0: each pack is driven once.</param>
/// <param name="PackCoolS">A pack cools before it is charged, s.</param>
/// <param name="ChargeS">To charge a pack, s.</param>
/// <param name="CantBeUndone">Options that can't be undone (a cut shell) and have no second shell: driven after all others.</param>
/// <param name="Reference">An option to be driven first and last, that ties evenings together; null when none.</param>
public sealed record DayLimits(
    double LengthS, double DriveS, double CoolS, double ReadS, double[,] SwapS, int Packs, int Chargers, double PackCoolS, double ChargeS,
    IReadOnlyList<int> CantBeUndone, int? Reference)
{
    /// <summary>Rounds to plan at most; null: as many as fit.</summary>
    public int? MostRounds { get; init; }

    /// <summary>Number of options.</summary>
    public int Options => SwapS.GetLength(0);

    /// <summary>A day without hurry: the same minutes for every swap, packs enough.</summary>
    /// <param name="options">Number of options.</param>
    /// <param name="lengthS">Length of the day, s.</param>
    /// <param name="swapS">Seconds for a swap.</param>
    public static DayLimits Plain(int options, double lengthS, double swapS)
    {
        double[,] swaps = new double[options, options];
        for (int a = 0; a < options; a++)
            for (int b = 0; b < options; b++)
                swaps[a, b] = a == b ? 0 : swapS;
        return new(lengthS, 360, 900, 120, swaps, 6, 2, 900, 2700, [], null);
    }
}
