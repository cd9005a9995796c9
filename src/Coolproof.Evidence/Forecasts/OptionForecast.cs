namespace Coolproof.Evidence.Forecasts;

/// <summary>One option on a race day.</summary>
/// <param name="Option">Its name.</param>
/// <param name="Seconds">Times since the first start, s.</param>
/// <param name="CanC">Can at those times, °C.</param>
/// <param name="WindingC">Mean winding temperature, °C.</param>
/// <param name="MagnetC">Magnet, °C.</param>
/// <param name="Stops">Each race's stop and what comes after.</param>
/// <param name="Limits">Odds of passing each limit.</param>
/// <param name="OddsOfAny">Odds of passing any of them, 0 to 1.</param>
/// <param name="CoolMin">Minutes after a race until winding, core and magnet are within <see cref="Forecast.CooledWithinK"/> of the air; 90 where they are not by then; null where they were not asked for.</param>
/// <param name="ToBeSafe">What would have to change where the odds are above those accepted; else null.</param>
public sealed record OptionForecast(
    string Option, IReadOnlyList<double> Seconds, IReadOnlyList<Summary> CanC, IReadOnlyList<Summary> WindingC, IReadOnlyList<Summary> MagnetC,
    IReadOnlyList<RaceStop> Stops, IReadOnlyList<LimitOdds> Limits, double OddsOfAny, Summary? CoolMin, SafeChange? ToBeSafe);

/// <summary>The end of one race, and the highest values with the soak after it.</summary>
/// <param name="Race">Which race, from 1.</param>
/// <param name="CanC">Can at the end of hard driving, °C.</param>
/// <param name="WindingC">Winding then, °C.</param>
/// <param name="HighestCanC">Highest can from this start to the next, °C.</param>
/// <param name="HighestWindingC">Highest winding, °C.</param>
/// <param name="HighestMagnetC">Highest magnet, °C.</param>
public sealed record RaceStop(int Race, Summary CanC, Summary WindingC, Summary HighestCanC, Summary HighestWindingC, Summary HighestMagnetC);

/// <summary>Odds of passing one limit.</summary>
/// <param name="Limit">The limit.</param>
/// <param name="Odds">0 to 1.</param>
/// <param name="MinutesTo">Minutes from the first start until it is passed, among the draws in which it is; null where it never is.</param>
public sealed record LimitOdds(RaceLimit Limit, double Odds, Summary? MinutesTo);
