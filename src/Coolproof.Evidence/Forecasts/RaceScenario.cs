using Coolproof.Notebook;

namespace Coolproof.Evidence.Forecasts;

/// <summary>How the motor cools between two races.</summary>
public enum BreakCooling
{
    /// <summary>In the shade, fan off.</summary>
    Shade,

    /// <summary>The option's own fan goes on.</summary>
    OwnFan,

    /// <summary>Blown at by a pit fan.</summary>
    PitFan,
}

/// <summary>A race day to be forecast.</summary>
/// <param name="AirC">Air in the shade, °C.</param>
/// <param name="RaceS">Length of a race, s.</param>
public sealed record RaceScenario(double AirC, double RaceS)
{
    /// <summary>Most races in a row.</summary>
    public const int MostRaces = 12;

    /// <summary>Races in a row.</summary>
    public int Races { get; init; } = 1;

    /// <summary>From the halt of one race to the start of the next, s; also how long is looked at after the last.</summary>
    public double BreakS { get; init; } = 1200;

    /// <summary>How it cools in the breaks.</summary>
    public BreakCooling Cooling { get; init; }

    /// <summary>Altitude of the race, m.</summary>
    public double AltitudeM { get; init; }

    /// <summary>Altitude of the tests, m.</summary>
    public double TestedAtM { get; init; }

    /// <summary>Sky over the race; null: like the tests'.</summary>
    public Sky? Sky { get; init; }

    /// <summary>Wind at the race; null: like the tests'.</summary>
    public Wind? Wind { get; init; }

    /// <summary>Heat over that of the tests, as by another gearing or another pace; 1: the same.</summary>
    public double HeatFactor { get; init; } = 1;
}

/// <summary>Which part of the motor a limit is set for.</summary>
public enum LimitedPart
{
    /// <summary>The can's surface.</summary>
    Can,

    /// <summary>Mean winding temperature.</summary>
    Winding,

    /// <summary>The magnet.</summary>
    Magnet,
}

/// <summary>A temperature that should not be passed.</summary>
/// <param name="Part">Of what.</param>
/// <param name="LimitC">°C.</param>
/// <param name="Reason">Where it comes from, in a few words.</param>
public sealed record RaceLimit(LimitedPart Part, double LimitC, string Reason)
{
    /// <summary>The part in a word.</summary>
    public string PartName => Part switch { LimitedPart.Winding => "winding", LimitedPart.Magnet => "magnet", _ => "can" };
}
