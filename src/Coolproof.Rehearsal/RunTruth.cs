using System.Text.Json.Serialization;

namespace Coolproof.Rehearsal;

/// <summary>What is true of one simulated run.</summary>
/// <param name="Evening">Which evening, from 0.</param>
/// <param name="Run">Name of the run, as in the table.</param>
/// <param name="Option">Name of its option.</param>
/// <param name="CountsInRanking">False for a void run.</param>
/// <param name="Driver">Which driver, from 0.</param>
/// <param name="LogLoad">Deviation of log heat of this run alone.</param>
/// <param name="LogHeat">Log of the mean heat in W with the winding at 25 °C, all deviations in.</param>
/// <param name="LogMounting">Deviation of log conductance of this refit.</param>
/// <param name="LogConductance">Deviation of log conductance of refit and day together.</param>
/// <param name="AirC">Air in the middle of the drive, °C.</param>
/// <param name="GoS">Go, s after the first go of the evening.</param>
/// <param name="DriveS">Hard driving, s.</param>
/// <param name="RollInS">Roll-in, s.</param>
/// <param name="PowerOffS">From halt to the fan's stop, s; null where it runs until the next go.</param>
/// <param name="WarmUpS">Warm-up laps before go that nobody notes, s.</param>
/// <param name="StartC">At go: winding, laminations, rotor, can, endbell, air in the shell, °C.</param>
/// <param name="EndC">The same at the end of hard driving, °C.</param>
/// <param name="HaltC">The same at the halt, °C.</param>
/// <param name="DelaysS">From halt to each reading, s.</param>
/// <param name="CanAtReadingsC">The can at each reading, °C.</param>
public sealed record RunTruth(
    int Evening, string Run, string Option, bool CountsInRanking, int Driver, double LogLoad, double LogHeat, double LogMounting,
    double LogConductance, double AirC, double GoS, double DriveS, double RollInS, double? PowerOffS, double WarmUpS,
    IReadOnlyList<double> StartC, IReadOnlyList<double> EndC, IReadOnlyList<double> HaltC, IReadOnlyList<double> DelaysS,
    IReadOnlyList<double> CanAtReadingsC)
{
    /// <summary>The can before warm-up laps and go, when a person would note it, °C.</summary>
    public double CanBeforeC { get; init; }

    /// <summary>The winding at each reading, °C. The truth's file does not tell it.</summary>
    [JsonIgnore]
    public IReadOnlyList<double> WindingAtReadingsC { get; init; } = [];

    /// <summary>Its gearing, where the rehearsal has laps; else null. The truth's file does not tell it.</summary>
    [JsonIgnore]
    public TrueGear? Gear { get; init; }

    /// <summary>Deviation of log heat of its driver; part of <see cref="LogHeat"/>. The truth's file does not tell it apart.</summary>
    [JsonIgnore]
    public double LogDriver { get; init; }
}
