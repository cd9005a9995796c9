using Coolproof.Evidence.Guns;
using Coolproof.Notebook;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Coolproof.Evidence.Earlier;

/// <summary>A gun that reads cans before runs otherwise on the new day than before.</summary>
/// <param name="Gun">Its name.</param>
/// <param name="Days">Earlier days with such readings; 0: what guns are off by at all stands in for them.</param>
/// <param name="Cans">Cans before runs of the new day that it was read on; 1: the cold one before the first.</param>
/// <param name="NowK">What it read on the new day over the air, and over what the runs before have left of warmth, K.</param>
/// <param name="BeforeK">The same by the days before, K.</param>
/// <param name="Sds">Standard deviations between the two.</param>
/// <param name="Chance">Chance that a gun which reads as before is found this far off, shots that go wild included.</param>
public sealed record GunChange(string Gun, int Days, int Cans, double NowK, double BeforeK, double Sds, double Chance);

/// <summary>
/// Whether guns read as they did. Hot readings can't tell: all of them higher is a hotter day as well. The can before a day's first run can, since it has the temperature of the air, which a thermometer reads; and so can
/// those before later runs, set beside what air and runs before leave of them, by as much as a gun reads more of that on one day than on others (<see cref="ColdCanContrast"/>).
/// </summary>
internal static class GunChanges
{
    // A can that stood in the shade before the first run, against the air: 1 K; a thermometer in the pit: 0.7 K (design ranges of the simulated days; common practice, no source).
    private const double StoodK = 1, ThermometerK = 0.7;

    // What repeated shots scatter by is learnt from the hot readings where there are enough of them.
    private const double UsualScatterK = 1, LeastScatterK = 0.4, MostScatterK = 3;
    private const int EnoughTriples = 6;

    // Part of shots that scatter five times as far: a glance off a fin, a gun just out of the car (design ranges of the simulated days; common practice, no source).
    private const double WildPart = 0.05, WildFactor = 5, WildVariances = WildFactor * WildFactor - 1;

    // Days without any change on which one of all guns is called changed.
    private const double FalseAlarms = 0.05;

    /// <summary>One for each gun that read cans before runs of a new day.</summary>
    /// <param name="table">The new day, or days.</param>
    /// <param name="before">Earlier ones.</param>
    public static IReadOnlyList<GunChange> Of(ReadingsTable table, IReadOnlyList<ReadingsTable> before)
    {
        ILookup<string, double> now = ColdStarts([table]), then = ColdStarts(before);
        GunChange[] later = [.. LaterCans(table, before)];
        ReadingsTable all = EarlierTables.Joined(table, before);
        return [.. later, .. now.Where(gun => !later.Any(l => Same(l.Gun, gun.Key))).Select(gun => Of(gun.Key, GunBelief.Of(gun.Key, all), [.. gun], [.. then[gun.Key]], ScatterK(gun.Key, [table, .. before])))];
    }

    // By all cans before runs, where there are several on the new day and days to set them beside.
    private static IEnumerable<GunChange> LaterCans(ReadingsTable table, IReadOnlyList<ReadingsTable> before)
    {
        if (before.Count == 0 || table.Runs.Count + before.Sum(b => b.Runs.Count) > EarlierTables.MostRuns || table.Runs.Count(r => r.StartC is not null) < 2)
            return [];
        return from gun in ColdCan.Of(table, before).GroupBy(c => c.Gun, StringComparer.OrdinalIgnoreCase)
               let contrast = ColdCanContrast.Of([.. gun], ThermometerK)
               where contrast is { Cans: > 1 }
               select new GunChange(gun.Key, contrast.Days, contrast.Cans, contrast.BeforeK + contrast.DifferenceK, contrast.BeforeK, Math.Abs(contrast.DifferenceK) / contrast.Sd, contrast.Chance);
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);

    /// <summary>The one that stands out most; null where none is beyond what one in twenty days without any change shows (Šidák 1967).</summary>
    public static GunChange? Most(IReadOnlyList<GunChange> guns) => guns.Where(g => g.Chance < 1 - Math.Pow(1 - FalseAlarms, 1.0 / guns.Count)).MinBy(g => g.Chance);

    private static GunChange Of(string gun, GunBelief believed, double[] now, double[] then, double scatterK)
    {
        double shot = scatterK * scatterK, day = StoodK * StoodK + ThermometerK * ThermometerK + shot;
        double precision = 1 / (believed.OffsetSdK * believed.OffsetSdK) + then.Length / (day + WildPart * WildVariances * shot);
        double nowK = now.Mean(), beforeK = (believed.OffsetK / (believed.OffsetSdK * believed.OffsetSdK) + then.Sum() / (day + WildPart * WildVariances * shot)) / precision;
        double off = Math.Abs(nowK - beforeK), variance = day / now.Length + 1 / precision;
        double chance = Enumerable.Range(0, now.Length + 1).Sum(wild =>
            Binomial.PMF(WildPart, now.Length, wild) * 2 * Normal.CDF(0, Math.Sqrt(variance + wild * WildVariances * shot / (now.Length * now.Length)), -off));
        return new(gun, then.Length, 1, nowK, beforeK, off / Math.Sqrt(variance), chance);
    }

    // What the can read over the air before the first run of a day, by gun.
    private static ILookup<string, double> ColdStarts(IReadOnlyList<ReadingsTable> tables) =>
        (from table in tables
         from day in table.Runs.GroupBy(r => r.Day)
         let first = day.OrderBy(r => r.StartedAt ?? NodaTime.LocalDateTime.MaxIsoValue).First()
         where first.StartC is not null && first.AirC is not null
         let gun = ColdCan.GunOf(day)
         where gun is not null
         select (Gun: gun, OverAir: first.StartC!.Value - first.AirC!.Value)).ToLookup(x => x.Gun, x => x.OverAir, StringComparer.OrdinalIgnoreCase);

    // Three readings of a falling can lie near a line: by what the middle one is off it, shots scatter.
    private static double ScatterK(string gun, IReadOnlyList<ReadingsTable> tables)
    {
        double[] off =
        [
            .. from run in tables.SelectMany(t => t.Runs)
               let can = run.Readings.Where(x => x is { Spot: Spot.Can, StopToReadS: not null, ReadC: not null } && string.Equals(x.Instrument, gun, StringComparison.OrdinalIgnoreCase)).ToArray()
               from i in Enumerable.Range(1, Math.Max(0, can.Length - 2))
               let part = (can[i].StopToReadS!.Value - can[i - 1].StopToReadS!.Value) / (can[i + 1].StopToReadS!.Value - can[i - 1].StopToReadS!.Value)
               where part is > 0 and < 1
               let line = can[i - 1].ReadC!.Value + part * (can[i + 1].ReadC!.Value - can[i - 1].ReadC!.Value)
               select Math.Abs(can[i].ReadC!.Value - line) / Math.Sqrt(1 + part * part + (1 - part) * (1 - part)),
        ];
        // The median of |x| is 0.6745 sd of a normal x.
        return off.Length < EnoughTriples ? UsualScatterK : Math.Clamp(off.Median() / 0.6745, LeastScatterK, MostScatterK);
    }
}
