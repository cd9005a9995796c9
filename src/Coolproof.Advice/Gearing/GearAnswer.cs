using Coolproof.Evidence;

namespace Coolproof.Advice.Gearing;

/// <summary>Lap time against heat.</summary>
/// <param name="Gears">Every pinion and timing within the card that can be driven, pinions ascending, then timings.</param>
/// <param name="Options">Every option with each of them.</param>
/// <param name="Driven">The lap as the notebook's runs were driven.</param>
public sealed record GearAnswer(IReadOnlyList<GearedLap> Gears, IReadOnlyList<OptionGears> Options, DrivenFigures Driven)
{
    /// <summary>Whether temperatures of several gearings, or timings, and the lap contradict each other on how heat goes with them: the lap's word is then taken as if one gearing had been driven.</summary>
    public bool Contradicted { get; init; }
}

/// <summary>A lap with one pinion and timing.</summary>
/// <param name="Choice">Pinion, spur, timing.</param>
/// <param name="FinalDriveRatio">Turns of the motor for one of the wheels.</param>
/// <param name="RolloutM">Way of the car for one turn of the motor, m.</param>
/// <param name="LapS">Lap time, s.</param>
/// <param name="GainS">Lap time less that of the notebook's gearing, s: below 0 is quicker.</param>
/// <param name="Heat">Heat over that of the notebook's gearing.</param>
/// <param name="ChargeAh">Charge of the race, Ah.</param>
/// <param name="PackLasts">Whether the pack lasts the race in 19 of 20 draws.</param>
public sealed record GearedLap(GearChoice Choice, double FinalDriveRatio, double RolloutM, Summary LapS, Summary GainS, Summary Heat, Summary ChargeAh, bool PackLasts);

/// <summary>One option with every pinion and timing.</summary>
/// <param name="Option">Its name.</param>
/// <param name="Gears">Temperatures and odds, in the order of <see cref="GearAnswer.Gears"/>.</param>
/// <param name="Best">Place of the quickest whose odds are accepted; null: none is.</param>
/// <param name="BestOnHotterDay">Place of the quickest with the timing of <see cref="Best"/> on the hotter day; null: none, or no best.</param>
public sealed record OptionGears(string Option, IReadOnlyList<GearedHeat> Gears, int? Best, int? BestOnHotterDay);

/// <summary>One option with one pinion and timing.</summary>
/// <param name="PeakCanC">Highest can with the soak after the stop, °C.</param>
/// <param name="PeakWindingC">Highest mean winding, °C.</param>
/// <param name="Odds">Odds of passing each limit, in the order asked, 0 to 1.</param>
/// <param name="OddsOfAny">Odds of passing any.</param>
public sealed record GearedHeat(Summary PeakCanC, Summary PeakWindingC, IReadOnlyList<double> Odds, double OddsOfAny);

/// <summary>The lap as the notebook's runs were driven, as far as it is believed.</summary>
/// <param name="LapS">Lap time, s.</param>
/// <param name="FullThrottleShare">Share of it with the throttle fully open.</param>
/// <param name="HighestMS">Highest speed, m/s.</param>
/// <param name="RmsMotorA">Motor current, root mean square, A.</param>
/// <param name="MeanBatteryA">Mean current of the pack, A.</param>
/// <param name="CopperW">Copper heat with the winding at 25 °C, W.</param>
/// <param name="IronW">Iron heat, W.</param>
/// <param name="LapM">Length of the lap, m.</param>
/// <param name="Grip">Grip.</param>
/// <param name="NotedLapS">Mean lap time that the runs noted, s; null: none.</param>
/// <param name="NotedA">Mean current by the charge that they noted, A; null: none.</param>
public sealed record DrivenFigures(
    double LapS, double FullThrottleShare, double HighestMS, double RmsMotorA, double MeanBatteryA, double CopperW, double IronW, double LapM, double Grip, double? NotedLapS, double? NotedA);
