namespace Coolproof.Thermal;

/// <summary>Constants of nature and conventions. Exact values of the SI (since 2019) and what follows from them; CODATA 2018 and 2022 agree.</summary>
public static class PhysicalConstants
{
    /// <summary>0 °C in kelvin (definition of the Celsius scale).</summary>
    public const double ZeroCelsiusK = 273.15;

    /// <summary>Second radiation constant h c / k, m K.</summary>
    public const double SecondRadiation = 6.62607015e-34 * 299792458 / 1.380649e-23;

    /// <summary>Stefan-Boltzmann constant 2π⁵k⁴/(15 h³ c²), W m⁻² K⁻⁴.</summary>
    public const double StefanBoltzmann = 5.670374419184429e-8;

    /// <summary>Molar gas constant, J mol⁻¹ K⁻¹.</summary>
    public const double MolarGas = 8.31446261815324;

    /// <summary>Standard atmosphere, Pa (convention).</summary>
    public const double StandardAtmospherePa = 101325;

    /// <summary>Standard acceleration of gravity, m s⁻² (convention).</summary>
    public const double StandardGravity = 9.80665;
}
