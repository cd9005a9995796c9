namespace Coolproof.Evidence.Causes;

/// <summary>What can make one run read other than another.</summary>
public enum Cause
{
    /// <summary>Air.</summary>
    Air,

    /// <summary>Core and can over the air at go.</summary>
    Warmth,

    /// <summary>Length of the drive, and standing within it.</summary>
    Length,

    /// <summary>Driver.</summary>
    Driver,

    /// <summary>Surface, venue, vehicle, motor, tyres, controller profile.</summary>
    Surface,

    /// <summary>Pinion over spur.</summary>
    Gearing,

    /// <summary>Timing.</summary>
    Timing,

    /// <summary>Heat and conductance of the day, and the trend of heat over it.</summary>
    Day,

    /// <summary>Cooling option, driving and standing.</summary>
    Option,

    /// <summary>How the option was fitted this time.</summary>
    Mounting,

    /// <summary>From the end of driving to the reading, the fan meanwhile, the gun and its aim.</summary>
    Reading,

    /// <summary>Load of this run alone.</summary>
    Load,

    /// <summary>What was read less what was to be expected.</summary>
    Rest,
}
