namespace Coolproof.Rehearsal;

/// <summary>A shot at a motor that is made up.</summary>
/// <param name="AtS">When the trigger was pulled, s from the day's first go.</param>
/// <param name="Key">Tells its chance apart from every other shot's: the same key, the same number.</param>
public readonly record struct DrivenShot(double AtS, int Key);

/// <summary>Cooling by hand between two runs.</summary>
/// <param name="FromS">From, s from the day's first go.</param>
/// <param name="ToS">To; infinite while it lasts.</param>
/// <param name="Fan">The option's own fan runs.</param>
/// <param name="Pit">A pit fan blows on it.</param>
/// <param name="ColderK">By how much the air that is blown is colder, K.</param>
public readonly record struct DrivenCooling(double FromS, double ToS, bool Fan, bool Pit, double ColderK);

/// <summary>One run of a rehearsal as a person drove it on the clock. All times in s from the day's first go.</summary>
/// <param name="Option">Which option, from 0.</param>
/// <param name="GoS">Go.</param>
/// <param name="StopS">End of hard driving.</param>
/// <param name="HaltS">The car stands.</param>
/// <param name="FanOffS">The power, and with it the fan, went off; infinite where it ran on.</param>
/// <param name="Shots">Shots after it.</param>
/// <param name="Coolings">Cooling after it.</param>
public sealed record DrivenRun(int Option, double GoS, double StopS, double HaltS, double FanOffS, IReadOnlyList<DrivenShot> Shots, IReadOnlyList<DrivenCooling> Coolings);

/// <summary>What truly happened in a run of a rehearsal.</summary>
/// <param name="ReadC">What the display showed at each shot, °C.</param>
/// <param name="CanAtStopC">Can as hard driving ended, °C.</param>
/// <param name="CoreOverAirK">Hottest of winding, laminations and rotor over the air at go, K.</param>
/// <param name="CanOverAirK">Can over the air at go, K.</param>
/// <param name="InheritedK">How much hotter the can was at the stop than if all of it had begun at the air, K.</param>
/// <param name="AirC">True air at go, °C.</param>
public sealed record DrivenTruth(IReadOnlyList<double> ReadC, double CanAtStopC, double CoreOverAirK, double CanOverAirK, double InheritedK, double AirC);
