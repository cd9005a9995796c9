namespace Coolproof.Thermal.FullModel;

/// <summary>The six bodies of the full model. A state is six temperatures in °C in this order.</summary>
public enum Node
{
    /// <summary>The copper, at its mean temperature.</summary>
    Winding,
    /// <summary>The stator's laminations.</summary>
    Laminations,
    /// <summary>Magnets and shaft.</summary>
    Rotor,
    /// <summary>The can, where the gun is pointed.</summary>
    Can,
    /// <summary>The endbell.</summary>
    Endbell,
    /// <summary>The air in the body shell, and the film of shell that follows it.</summary>
    ShellAir,
}
