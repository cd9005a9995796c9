using Coolproof.Evidence.Forecasts;
using Coolproof.Notebook;
using Coolproof.Pictures;

namespace Coolproof.Commands;

/// <summary>What `coolproof gear` was asked; null where it was left to the table, or to what is typical.</summary>
/// <param name="Demand">Limits and accepted odds.</param>
internal sealed record GearRequest(RaceDemand Demand)
{
    public bool Carpet { get; init; }
    public string? LapFile { get; init; }
    public double? LapS { get; init; }
    public double? AirC { get; init; }
    public double? RaceS { get; init; }
    public int? Pinion { get; init; }
    public int? Spur { get; init; }
    public double? TimingDeg { get; init; }
    public (double Least, double Most)? Pinions { get; init; }
    public (double Least, double Most)? Timings { get; init; }
    public (double Least, double Most)? Ratio { get; init; }
    public (double Least, double Most)? SpaceMm { get; init; }
    public double? ModuleMm { get; init; }
    public double? InternalRatio { get; init; }
    public double? TyreMm { get; init; }
    public double? MassG { get; init; }
    public double? LeastMassG { get; init; }
    public bool TwoWheelDrive { get; init; }
    public double? Turns { get; init; }
    public double? RpmPerVolt { get; init; }
    public double? MotorMohm { get; init; }
    public double? NoLoadA { get; init; }
    public int? Cells { get; init; }
    public double? CapacityMah { get; init; }
    public double? CurrentLimitA { get; init; }
    public double HotterK { get; init; } = 5;
    public long Seed { get; init; } = 1;
    public TemperatureUnitChoice Units { get; init; }
    public bool Json { get; init; }
    public string? Picture { get; init; }
    public Theme Theme { get; init; }
}
