using Coolproof.Sampling;

namespace Coolproof.Advice.Mounts;

/// <summary>
/// What is not known of a mount, as standard normals; all zero: the middle of what is believed. The first group is the same for every mount of a sheet (one car, one motor, the same
/// correlations), the second is each mount's own.
/// </summary>
internal readonly record struct MountChance
{
    /// <summary>Heat that leaves by motor plate, chassis and the endbell's windows.</summary>
    public double Plate { get; init; }
    /// <summary>Wind at the can over the car's speed.</summary>
    public double Wind { get; init; }
    /// <summary>The car's mean speed against what was entered.</summary>
    public double Speed { get; init; }
    /// <summary>Exchange of the shell's air.</summary>
    public double Shell { get; init; }
    /// <summary>Emissivity.</summary>
    public double Emissivity { get; init; }
    /// <summary>Draught.</summary>
    public double Draught { get; init; }
    /// <summary>What the correlation of forced convection is off by on all mounts alike.</summary>
    public double Correlation { get; init; }
    /// <summary>Half-angle of spreading jets.</summary>
    public double Spread { get; init; }

    /// <summary>Free flow against what is printed.</summary>
    public double Flow { get; init; }
    /// <summary>Stall pressure against what is printed.</summary>
    public double Stall { get; init; }
    /// <summary>Lengths and areas on the way in.</summary>
    public double Inlet { get; init; }
    /// <summary>Lengths and areas on the way out.</summary>
    public double Outlet { get; init; }
    /// <summary>Loss factors.</summary>
    public double Losses { get; init; }
    /// <summary>Gap to the can.</summary>
    public double Gap { get; init; }
    /// <summary>What of the wind's pressure a duct's mouth takes up.</summary>
    public double Ram { get; init; }
    /// <summary>Fins: their contact, their warmth towards the tips, and how well the stream gets between them.</summary>
    public double Fins { get; init; }
    /// <summary>What the correlation is off by on this mount.</summary>
    public double Own { get; init; }

    /// <summary>Draws what is shared by the mounts of a sheet.</summary>
    public static MountChance Shared(RandomStream chance) => new()
    {
        Plate = chance.NextNormal(),
        Wind = chance.NextNormal(),
        Speed = chance.NextNormal(),
        Shell = chance.NextNormal(),
        Emissivity = chance.NextNormal(),
        Draught = chance.NextNormal(),
        Correlation = chance.NextNormal(),
        Spread = chance.NextNormal(),
    };

    /// <summary>The same with a mount's own part drawn.</summary>
    public MountChance Drawn(RandomStream chance) => this with
    {
        Flow = chance.NextNormal(),
        Stall = chance.NextNormal(),
        Inlet = chance.NextNormal(),
        Outlet = chance.NextNormal(),
        Losses = chance.NextNormal(),
        Gap = chance.NextNormal(),
        Ram = chance.NextNormal(),
        Fins = chance.NextNormal(),
        Own = chance.NextNormal(),
    };
}
