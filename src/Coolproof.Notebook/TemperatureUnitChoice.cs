namespace Coolproof.Notebook;

/// <summary>Unit in which a person reads temperatures.</summary>
public enum TemperatureUnitChoice
{
    /// <summary>Degrees Celsius.</summary>
    Celsius,
    /// <summary>Degrees Fahrenheit.</summary>
    Fahrenheit
}

/// <summary>Unit in which a person reads masses.</summary>
public enum MassUnitChoice
{
    /// <summary>Grams.</summary>
    Gram,
    /// <summary>Ounces (avoirdupois).</summary>
    Ounce
}
