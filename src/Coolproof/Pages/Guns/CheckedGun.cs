using Coolproof.Advice.Instruments;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;

namespace Coolproof.Pages.Guns;

/// <summary>What the checks that are noted of a gun come to.</summary>
internal static class CheckedGun
{
    const double UsualSetting = 0.95, UsualAirC = 22;

    /// <summary>Gain and offset; null where no check has both its temperatures.</summary>
    /// <param name="gun">The gun.</param>
    public static GunCheckLine? Of(NotedInstrument gun)
    {
        CheckPair[] pairs =
        [
            .. from check in gun.Checks
               let against = GunCheck.AgainstOf(check.Way) ?? CheckedAgainst.ProbeInWater
               let known = check.TrueC ?? (against == CheckedAgainst.Ice ? 0 : null)
               where check.ReadC is not null && known is not null
               group check.ReadC!.Value by (against, known.Value) into shots
               select new CheckPair(shots.Key.against, [.. shots], shots.Key.Value),
        ];
        return pairs.Length == 0 ? null : GunCheckLine.Of(pairs, gun.Checks.Select(c => c.EmissivitySet).LastOrDefault(s => s is not null) ?? gun.Emissivity ?? UsualSetting, UsualAirC);
    }
}
