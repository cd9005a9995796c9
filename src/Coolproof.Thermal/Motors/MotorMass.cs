namespace Coolproof.Thermal;

/// <summary>
/// What a motor's mass is made of, and what heat its parts hold. Shares of the mass are a typical sensored brushless motor of 100 to 250 g
/// (common practice, no source); the rest, about 2 %, is board, leads and screws, which hold little.
/// </summary>
public sealed record MotorMass
{
    const double CopperShare = 0.13, LaminationShare = 0.34, MagnetShare = 0.13, ShaftShare = 0.10, CanShare = 0.17, EndbellShare = 0.11;

    /// <summary>Mass of the reference motor of all priors, kg.</summary>
    public const double ReferenceKg = 0.165;

    /// <summary>Breaks a motor's mass down.</summary>
    /// <param name="kg">Mass of the whole motor, kg, above zero.</param>
    public MotorMass(double kg)
    {
        if (!(double.IsFinite(kg) && kg > 0)) throw new ArgumentOutOfRangeException(nameof(kg), kg, "A motor has a mass above zero.");
        Kg = kg;
    }

    /// <summary>Mass of the whole motor, kg.</summary>
    public double Kg { get; }

    /// <summary>Copper, kg.</summary>
    public double CopperKg => CopperShare * Kg;

    /// <summary>Laminations, kg.</summary>
    public double LaminationsKg => LaminationShare * Kg;

    /// <summary>Magnet and shaft, kg.</summary>
    public double RotorKg => (MagnetShare + ShaftShare) * Kg;

    /// <summary>Heat capacity of the winding, J/K.</summary>
    public double WindingJK => CopperKg * SpecificHeat.Copper;

    /// <summary>Heat capacity of the laminations, J/K.</summary>
    public double LaminationsJK => LaminationsKg * SpecificHeat.Steel;

    /// <summary>Heat capacity of magnet and shaft, J/K.</summary>
    public double RotorJK => Kg * (MagnetShare * SpecificHeat.NdFeB + ShaftShare * SpecificHeat.Steel);

    /// <summary>Heat capacity of the can alone, J/K.</summary>
    public double CanAloneJK => CanShare * Kg * SpecificHeat.Aluminium;

    /// <summary>Heat capacity of the endbell, J/K.</summary>
    public double EndbellJK => EndbellShare * Kg * SpecificHeat.Aluminium;

    /// <summary>The working model's core and winding together, J/K: winding, laminations, rotor. About 50 for 165 g.</summary>
    public double CoreAndWindingJK => WindingJK + LaminationsJK + RotorJK;

    /// <summary>The working model's core without the winding, J/K.</summary>
    public double CoreJK => LaminationsJK + RotorJK;

    /// <summary>The working model's can: can and endbell, J/K. About 40 for 165 g.</summary>
    public double CanJK => CanAloneJK + EndbellJK;

    /// <summary>This motor's mass over the reference motor's; heat capacities, conductances and losses of the priors go with it.</summary>
    public double Scale => Kg / ReferenceKg;
}
