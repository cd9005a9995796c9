namespace Coolproof.Thermal;

/// <summary>
/// What an infrared gun's number means. The surface is grey, the surroundings are of one temperature, the air between takes nothing:
/// what the gun sees is ε L(T) + (1 − ε) L(T_surroundings).
/// </summary>
/// <param name="Band">Band in which it responds.</param>
/// <param name="TakesOffReflection">
/// Whether it takes off the part that its own emissivity setting leaves to the surroundings, by its own temperature; simple guns do not and show
/// the T for which setting × L(T) is what they see.
/// </param>
public sealed record Gun(Band Band, bool TakesOffReflection)
{
    /// <summary>An 8 to 14 µm gun that takes off the reflected part by its own temperature, as most hand-held ones do (common practice, no source).</summary>
    public static Gun Usual { get; } = new(Band.Gun, TakesOffReflection: true);

    /// <summary>Temperature of the surface behind a number on the display, °C; NaN where no temperature would give it.</summary>
    /// <param name="readC">Number on the display, °C.</param>
    /// <param name="setting">The gun's emissivity setting, above 0, at most 1.</param>
    /// <param name="emissivity">Emissivity of the surface, above 0, at most 1.</param>
    /// <param name="surroundingsC">What the surface mirrors, and the gun's own temperature, °C.</param>
    public double SurfaceC(double readC, double setting, double emissivity, double surroundingsC)
    {
        RefuseEmissivity(emissivity, nameof(emissivity));
        double own = Seen(readC, setting, surroundingsC) - (1 - emissivity) * Black(surroundingsC);
        return Celsius(own / emissivity);
    }

    /// <summary>Number that the display shows for a surface, °C; the way back is <see cref="SurfaceC"/>.</summary>
    /// <param name="surfaceC">True temperature of the surface, °C.</param>
    /// <param name="setting">The gun's emissivity setting, above 0, at most 1.</param>
    /// <param name="emissivity">Emissivity of the surface, 0 to 1.</param>
    /// <param name="surroundingsC">What the surface mirrors, and the gun's own temperature, °C.</param>
    /// <param name="shareOff">Share of the spot that lies off the surface, on something of the surroundings' temperature, 0 to 1.</param>
    public double ReadingC(double surfaceC, double setting, double emissivity, double surroundingsC, double shareOff = 0)
    {
        double onSurface = emissivity * Black(surfaceC) + (1 - emissivity) * Black(surroundingsC);
        return Shown((1 - shareOff) * onSurface + shareOff * Black(surroundingsC), setting, surroundingsC);
    }

    /// <summary>
    /// The number that the same shot would have given at another emissivity setting, °C; to a setting of 1 undoes the gun's own and leaves the
    /// temperature of a black surface of the same radiance.
    /// </summary>
    /// <param name="readC">Number on the display, °C.</param>
    /// <param name="setting">The setting it was read at.</param>
    /// <param name="otherSetting">The setting asked for.</param>
    /// <param name="surroundingsC">The gun's own temperature, °C.</param>
    public double AtSettingC(double readC, double setting, double otherSetting, double surroundingsC) =>
        Shown(Seen(readC, setting, surroundingsC), otherSetting, surroundingsC);

    /// <summary>
    /// (reading − surroundings)/(surface − surroundings): the gain g by which a reading model sees a surface, exact for this
    /// surface temperature. NaN where surface and surroundings are equally warm.
    /// </summary>
    /// <param name="surfaceC">True temperature of the surface, °C.</param>
    /// <param name="setting">The gun's emissivity setting, above 0, at most 1.</param>
    /// <param name="emissivity">Emissivity of the surface, 0 to 1.</param>
    /// <param name="surroundingsC">What the surface mirrors, and the gun's own temperature, °C.</param>
    public double Gain(double surfaceC, double setting, double emissivity, double surroundingsC) =>
        (ReadingC(surfaceC, setting, emissivity, surroundingsC) - surroundingsC) / (surfaceC - surroundingsC);

    /// <summary>Radiance behind a number on the display, W m⁻² sr⁻¹.</summary>
    double Seen(double readC, double setting, double surroundingsC)
    {
        RefuseEmissivity(setting, nameof(setting));
        return setting * Black(readC) + (TakesOffReflection ? (1 - setting) * Black(surroundingsC) : 0);
    }

    double Shown(double seen, double setting, double surroundingsC)
    {
        RefuseEmissivity(setting, nameof(setting));
        return Celsius((seen - (TakesOffReflection ? (1 - setting) * Black(surroundingsC) : 0)) / setting);
    }

    double Black(double celsius) => Radiance.Of(celsius + PhysicalConstants.ZeroCelsiusK, Band);

    double Celsius(double radiance) => Radiance.Temperature(radiance, Band) - PhysicalConstants.ZeroCelsiusK;

    static void RefuseEmissivity(double value, string argument)
    {
        if (!(value is > 0 and <= 1)) throw new ArgumentOutOfRangeException(argument, value, "An emissivity lies above 0 and is at most 1.");
    }
}
