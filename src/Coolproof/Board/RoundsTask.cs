using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Coolproof.Advice.HowMany;
using Coolproof.Advice.Orders;
using Coolproof.Commands;
using Coolproof.Evidence;

namespace Coolproof.Board;

/// <summary>What is simulated to tell how many rounds of a plan are enough.</summary>
internal static class RoundsTask
{
    const int RoundsAsked = 6;

    /// <summary>Whole rounds, as many as are asked about, whatever fits into the day; what can't be undone takes its turn, since its numbers are the same.</summary>
    /// <param name="request">The plan.</param>
    /// <param name="known">What a day with these options has shown; null: nothing.</param>
    /// <param name="threads">Days simulated at once.</param>
    public static HowManySettings Of(PlanRequest request, QuickVerdict? known, int threads)
    {
        DayLimits free = request.Limits with { LengthS = 1e6, CantBeUndone = [], Reference = null, Packs = 1000, MostRounds = null };
        PlannedOrder order = OrderSearch.Randomised(free, new RunNoise(), request.Seed);
        int runs = Math.Min(RoundsAsked * request.Options.Count, order.Options.Count);
        return new(
            request.Options, [.. order.Options.Take(runs)], request.Limits.DriveS, request.Limits.CoolS / 60, request.Days, request.SameWithinK, request.Seed, threads)
        { Known = known };
    }

    /// <summary>The same for settings that give the same figures.</summary>
    public static string Key(HowManySettings settings)
    {
        var text = new StringBuilder();
        foreach (var option in settings.Options) text.Append(option).Append('\n');
        text.Append(CultureInfo.InvariantCulture, $"{string.Join(',', settings.Order)} {settings.DriveS} {settings.CoolDownMin} {settings.Days} {settings.SameWithinK} {settings.Seed} {settings.ReadingsPerRun}");
        // Of what is known, the figures rest on each draw's watts per degree.
        if (settings.Known is { } known)
        {
            foreach (var option in known.Options) text.Append('\n').Append(option);
            foreach (var motor in known.Motors) text.Append(CultureInfo.InvariantCulture, $"\n{string.Join(',', motor.ConductancePerS.Select(one => one.ToString("R", CultureInfo.InvariantCulture)))}");
        }
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..16];
    }
}
