namespace Coolproof.Thermal;

/// <summary>Specific heats of what a motor is made of, J/(kg K), about room temperature. Handbook values, from memory.</summary>
public static class SpecificHeat
{
    /// <summary>Copper of the winding.</summary>
    public const double Copper = 385;

    /// <summary>Silicon steel of the laminations; used for the shaft too.</summary>
    public const double Steel = 460;

    /// <summary>Sintered NdFeB. (Makers' tables also give 0.12 kcal/(kg K) = 502.)</summary>
    public const double NdFeB = 440;

    /// <summary>Aluminium of can and endbell.</summary>
    public const double Aluminium = 900;
}
