using Coolproof.Advice.Gearing;

namespace Coolproof.Pages.Gears;

/// <summary>The laps that were driven for the last few pages of gearing: while a slider moves they need not be driven again. Any number of requests may use it at once.</summary>
internal sealed class KeptLaps
{
    const int Most = 8;

    readonly Lock gate = new();
    readonly List<(string About, double RaceS, GearLaps Laps)> kept = [];

    /// <summary>The laps of a setting.</summary>
    /// <param name="about">The same text for the same readings, car and card.</param>
    /// <param name="raceS">Length of the race, s.</param>
    /// <param name="orNear">Whether those of another length of the race will do: they differ by the charge of the pack at mid-race only.</param>
    /// <param name="drive">Drives them.</param>
    public GearLaps Of(string about, double raceS, bool orNear, Func<GearLaps> drive)
    {
        lock (gate)
        {
            var place = kept.FindIndex(one => one.About == about && (one.RaceS == raceS || orNear));
            if (place >= 0)
            {
                var found = kept[place];
                kept.RemoveAt(place);
                kept.Add(found);
                return found.Laps;
            }
        }
        // Outside: another page must not wait for these.
        var laps = drive();
        lock (gate)
        {
            kept.RemoveAll(one => one.About == about && one.RaceS == raceS);
            kept.Add((about, raceS, laps));
            if (kept.Count > Most) kept.RemoveAt(0);
        }
        return laps;
    }
}
