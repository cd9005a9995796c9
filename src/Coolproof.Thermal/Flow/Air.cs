namespace Coolproof.Thermal;

/// <summary>
/// Air at a temperature and a pressure. Viscosity and conductivity of dry air by Lemmon and Jacobsen 2004 (Int. J. Thermophys. 25, 21;
/// coefficients from memory, shown right by that paper's check values), density of an ideal gas with water vapour.
/// </summary>
public readonly record struct Air
{
    const double DryMolarMass = 28.9586e-3, WaterMolarMass = 18.015268e-3;
    const double CriticalK = 132.6312, CriticalMolPerM3 = 10447.7;

    /// <summary>Air at a temperature, a pressure and a humidity.</summary>
    /// <param name="celsius">Temperature, °C, −100 to 500.</param>
    /// <param name="pascal">Pressure, Pa, above zero.</param>
    /// <param name="relativeHumidity">0 to 1; it acts on the density, and is nothing at or below freezing.</param>
    public Air(double celsius, double pascal = PhysicalConstants.StandardAtmospherePa, double relativeHumidity = 0)
    {
        if (!(celsius is >= -100 and <= 500)) throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "Air lies between -100 and 500 °C.");
        if (!(pascal > 0)) throw new ArgumentOutOfRangeException(nameof(pascal), pascal, "A pressure is above zero.");
        if (!(relativeHumidity is >= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(relativeHumidity), relativeHumidity, "A relative humidity is 0 to 1.");
        Celsius = celsius;
        Pascal = pascal;
        double vapour = relativeHumidity == 0 || celsius <= 0 ? 0 : relativeHumidity * Water.SaturationPressurePa(Math.Min(celsius, 370));
        double share = Math.Min(1, vapour / pascal), molar = pascal / (PhysicalConstants.MolarGas * Kelvin);
        Density = molar * ((1 - share) * DryMolarMass + share * WaterMolarMass);
        Viscosity = ViscosityOf(Kelvin, molar);
        Conductivity = ConductivityOf(Kelvin, molar);
    }

    /// <summary>Temperature, °C.</summary>
    public double Celsius { get; }

    /// <summary>Temperature, K.</summary>
    public double Kelvin => Celsius + PhysicalConstants.ZeroCelsiusK;

    /// <summary>Pressure, Pa.</summary>
    public double Pascal { get; }

    /// <summary>Density, kg/m³.</summary>
    public double Density { get; }

    /// <summary>Dynamic viscosity, Pa s.</summary>
    public double Viscosity { get; }

    /// <summary>Thermal conductivity, W/(m K).</summary>
    public double Conductivity { get; }

    /// <summary>
    /// Specific heat at constant pressure, J/(kg K): parabola through the dry-air equation of state of Lemmon et al. 2000 at one atmosphere,
    /// within 0.1 % from −20 to 150 °C and 70 to 101 kPa.
    /// </summary>
    public double SpecificHeat => 1005.92 + 0.01466 * Celsius + 4.111e-4 * Celsius * Celsius;

    /// <summary>Kinematic viscosity, m²/s.</summary>
    public double KinematicViscosity => Viscosity / Density;

    /// <summary>Prandtl number.</summary>
    public double Prandtl => Viscosity * SpecificHeat / Conductivity;

    /// <summary>Reynolds number of a stream past a length.</summary>
    /// <param name="speedMS">Speed, m/s.</param>
    /// <param name="lengthM">Length or diameter, m.</param>
    public double Reynolds(double speedMS, double lengthM) => speedMS * lengthM / KinematicViscosity;

    /// <summary>
    /// Rayleigh number of a warm body's own draught; this air is taken at the film temperature, of which the expansion is 1/T.
    /// </summary>
    /// <param name="differenceK">Body less air, K.</param>
    /// <param name="lengthM">Diameter or height, m.</param>
    public double Rayleigh(double differenceK, double lengthM) =>
        PhysicalConstants.StandardGravity / Kelvin * Math.Abs(differenceK) * lengthM * lengthM * lengthM
        / (KinematicViscosity * KinematicViscosity) * Prandtl;

    /// <summary>Pressure at an altitude in the US Standard Atmosphere 1976, Pa, below 11 km.</summary>
    /// <param name="altitudeM">Geometric altitude, m, −5000 to 11000.</param>
    public static double PressureAtPa(double altitudeM)
    {
        if (!(altitudeM is >= -5000 and <= 11000))
            throw new ArgumentOutOfRangeException(nameof(altitudeM), altitudeM, "The formula holds from -5000 to 11000 m.");
        const double EarthRadius = 6356766, Lapse = 0.0065, SeaLevelK = 288.15, GravityByLapse = 9.80665 * 28.9644 / 8.31432 / 6.5;
        double geopotential = EarthRadius * altitudeM / (EarthRadius + altitudeM);
        return PhysicalConstants.StandardAtmospherePa * Math.Pow(1 - Lapse * geopotential / SeaLevelK, GravityByLapse);
    }

    /// <summary>Dry air's viscosity, Pa s, at a temperature and a molar density, mol/m³.</summary>
    internal static double ViscosityOf(double kelvin, double molPerM3)
    {
        double tau = CriticalK / kelvin, delta = molPerM3 / CriticalMolPerM3;
        double residual = 10.72 * Math.Pow(tau, 0.2) * delta
            + 1.122 * Math.Pow(tau, 0.05) * Math.Pow(delta, 4)
            + 0.002019 * Math.Pow(tau, 2.4) * Math.Pow(delta, 9)
            - 8.876 * Math.Pow(tau, 0.6) * delta * Math.Exp(-delta)
            - 0.02916 * Math.Pow(tau, 3.6) * Math.Pow(delta, 8) * Math.Exp(-delta);
        return 1e-6 * (DilutePerMicro(kelvin) + residual);
    }

    /// <summary>Dry air's conductivity, W/(m K), far from the critical point.</summary>
    internal static double ConductivityOf(double kelvin, double molPerM3)
    {
        double tau = CriticalK / kelvin, delta = molPerM3 / CriticalMolPerM3;
        double dilute = 1.308 * DilutePerMicro(kelvin) + 1.405 * Math.Pow(tau, -1.1) - 1.036 * Math.Pow(tau, -0.3);
        double twice = Math.Exp(-delta * delta);
        double residual = 8.743 * Math.Pow(tau, 0.1) * delta
            + 14.76 * delta * delta
            - 16.62 * Math.Pow(tau, 0.5) * Math.Pow(delta, 3) * twice
            + 3.793 * Math.Pow(tau, 2.7) * Math.Pow(delta, 7) * twice
            - 6.142 * Math.Pow(tau, 0.3) * Math.Pow(delta, 7) * twice
            - 0.3778 * Math.Pow(tau, 1.3) * Math.Pow(delta, 11) * twice;
        return 1e-3 * (dilute + residual);
    }

    /// <summary>Viscosity of the dilute gas, µPa s: 0.0266958 √(M T)/(σ² Ω), σ = 0.360 nm, ε/k = 103.3 K.</summary>
    static double DilutePerMicro(double kelvin)
    {
        double x = Math.Log(kelvin / 103.3);
        double omega = Math.Exp(0.431 + x * (-0.4623 + x * (0.08406 + x * (0.005341 - 0.00331 * x))));
        return 0.0266958 * Math.Sqrt(28.9586 * kelvin) / (0.360 * 0.360 * omega);
    }
}
