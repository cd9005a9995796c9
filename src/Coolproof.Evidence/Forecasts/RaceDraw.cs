namespace Coolproof.Evidence.Forecasts;

/// <summary>Motor and options as one draw of what is believed has them; heat flows over the heat capacity of the core.</summary>
/// <param name="CoreOverCan">Core capacity over can capacity.</param>
/// <param name="CoreToCanPerS">Core-to-can conductance over core capacity, 1/s.</param>
/// <param name="WindingShare">Winding capacity over core capacity.</param>
/// <param name="SlotS">Slot resistance times core capacity, s.</param>
/// <param name="CopperShare">Copper's share of the heat.</param>
/// <param name="LogHeat">Log of mean heat with the winding at 25 °C, K/s.</param>
/// <param name="DayHeatSd">Log-sd of heat from day to day.</param>
/// <param name="RunHeatSd">Log-sd of heat from run to run.</param>
/// <param name="MountingSd">Log-sd of an option's conductance from one refit to the next.</param>
/// <param name="Options">What is believed of each option.</param>
public sealed record RaceDraw(
    double CoreOverCan, double CoreToCanPerS, double WindingShare, double SlotS, double CopperShare, double LogHeat, double DayHeatSd, double RunHeatSd,
    double MountingSd, IReadOnlyList<RaceOption> Options);

/// <summary>One option in one draw.</summary>
/// <param name="LogConductance">Log of the driving conductance over core capacity, 1/s.</param>
/// <param name="LogStoppedFanOn">Log of the same at standstill with the fan on, over driving.</param>
/// <param name="LogStoppedFanOff">Likewise with the fan off, or without one.</param>
public readonly record struct RaceOption(double LogConductance, double LogStoppedFanOn, double LogStoppedFanOff);

/// <summary>What a judged table says of races to come: draws, and the conditions that the readings come from.</summary>
/// <param name="Options">Names of the options that were judged.</param>
/// <param name="Draws">Equally weighted draws.</param>
/// <param name="Fair">Fair conditions of the table: the middle of its air and of its drives.</param>
/// <param name="LongestDriveS">Longest drive with a reading that counts, s.</param>
/// <param name="SunShare">Share of the runs that were driven in the sun; null where the sky was not noted.</param>
/// <param name="Winds">Winds that were noted.</param>
public sealed record RaceEvidence(
    IReadOnlyList<string> Options, IReadOnlyList<RaceDraw> Draws, FairConditions Fair, double LongestDriveS, double? SunShare, IReadOnlyList<Notebook.Wind> Winds)
{
    /// <summary>Slope of log heat against log of pinion over spur, draw by draw; null where the tests were all driven with one gearing.</summary>
    public IReadOnlyList<double>? GearingSlopes { get; init; }

    /// <summary>Log heat for a degree of timing, draw by draw; null likewise.</summary>
    public IReadOnlyList<double>? TimingSlopes { get; init; }

    /// <summary>With fewer draws, evenly taken.</summary>
    /// <param name="most">About how many.</param>
    public RaceEvidence Thinned(int most)
    {
        int every = Math.Max(1, Draws.Count / most);
        return At([.. Enumerable.Range(0, (Draws.Count + every - 1) / every).Select(i => i * every)]);
    }

    /// <summary>With some of its draws.</summary>
    /// <param name="places">Places of the draws, in order; one may come more than once.</param>
    public RaceEvidence At(IReadOnlyList<int> places)
    {
        IReadOnlyList<T> Taken<T>(IReadOnlyList<T> all) => [.. places.Select(place => all[place])];
        return this with
        {
            Draws = Taken(Draws),
            GearingSlopes = GearingSlopes is { } gearing ? Taken(gearing) : null,
            TimingSlopes = TimingSlopes is { } timing ? Taken(timing) : null,
        };
    }
}
