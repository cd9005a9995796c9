using Coolproof.Evidence.Model;

namespace Coolproof.Evidence.Forecasts;

/// <summary>Heat of another gearing or timing over that of the tests, copper and iron apart.</summary>
/// <param name="Copper">Copper heat with the winding at 25 °C over the tests', above 0.</param>
/// <param name="Iron">Iron heat over the tests', above 0.</param>
public readonly record struct RaceHeat(double Copper, double Iron)
{
    /// <summary>That of the tests.</summary>
    public static RaceHeat AsTested => new(1, 1);

    /// <summary>Times a factor, as by another pace.</summary>
    public RaceHeat Times(double factor) => new(factor * Copper, factor * Iron);

    /// <summary>All of the heat over the tests' where copper has this share of it.</summary>
    /// <param name="copperShare">0 to 1.</param>
    public double Factor(double copperShare) => copperShare * Copper + (1 - copperShare) * Iron;

    // Where the tests tell of a load: half as much again widens as half as much again of whatever kind.
    internal double Beyond(double copperShare) => Math.Max(0, Math.Log2(Factor(copperShare)));

    /// <summary>The motor while it races: its heat and copper's share of it.</summary>
    internal Constants Of(in Constants tested) => tested with
    {
        LogHeat = tested.LogHeat + Math.Log(Factor(tested.Copper)),
        Copper = tested.Copper * Copper / Factor(tested.Copper),
    };
}
