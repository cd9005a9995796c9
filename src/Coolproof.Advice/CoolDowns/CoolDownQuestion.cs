using Coolproof.Evidence;

namespace Coolproof.Advice.CoolDowns;

/// <summary>How a motor is cooled between runs.</summary>
public enum CoolingBy
{
    /// <summary>Left in the shade, shell off, its own fan off.</summary>
    Shade,
    /// <summary>Its own fan keeps running.</summary>
    OwnFan,
    /// <summary>A pit fan blows on it.</summary>
    PitFan,
    /// <summary>A pit fan blows cooled air on it.</summary>
    CooledAir,
}

/// <summary>A look at the can while it cools.</summary>
/// <param name="Minutes">After the halt, min.</param>
/// <param name="CanC">As read, °C.</param>
public readonly record struct CanLook(double Minutes, double CanC);

/// <summary>A question of how long to cool.</summary>
/// <param name="AirC">Air, °C.</param>
/// <param name="WithinK">How near to the air all of it must come, K.</param>
/// <param name="CanC">Can as read soon after the halt, °C; null: as the drive is believed to leave it.</param>
public sealed record CoolDownQuestion(double AirC, double WithinK = 3, double? CanC = null)
{
    /// <summary>The motor, in equally weighted draws; null: as it is believed to be before any reading.</summary>
    public IReadOnlyList<MotorDraw>? Motors { get; init; }

    /// <summary>Which option of those draws is fitted.</summary>
    public int Option { get; init; }

    /// <summary>Whether the option has a fan of its own.</summary>
    public bool HasFan { get; init; } = true;

    /// <summary>The drive before and the drive to come, s.</summary>
    public double DriveS { get; init; } = 360;

    /// <summary>How much colder than the air cooled air is, K.</summary>
    public double CooledByK { get; init; } = 8;

    /// <summary>Minutes after which the next run would start anyway.</summary>
    public double WaitMin { get; init; } = 10;

    /// <summary>Looks at the can so far, and how it has been cooled meanwhile.</summary>
    public IReadOnlyList<CanLook> Looks { get; init; } = [];

    /// <summary>How it has been cooled while it was looked at.</summary>
    public CoolingBy LookedAtBy { get; init; } = CoolingBy.Shade;

    /// <summary>Seed.</summary>
    public long Seed { get; init; } = 1;
}

/// <summary>What one way of cooling promises.</summary>
/// <param name="By">The way.</param>
/// <param name="SoonMin">One in ten is ready by then, min.</param>
/// <param name="MiddleMin">Half are, min.</param>
/// <param name="PromisedMin">Nine in ten are: the promise, min; infinite where it takes longer than <see cref="CoolDown.LongestMin"/>.</param>
/// <param name="CanAloneMin">Minutes until half of the cans alone are as near: what the gun would have you believe.</param>
/// <param name="Path">Can and core over time.</param>
/// <param name="InheritsK">How much warmer the can ends the next run when it starts after the wait asked for, K: middle.</param>
/// <param name="InheritsMostK">The same, nine in ten at most.</param>
public sealed record CoolDownPromise(
    CoolingBy By, double SoonMin, double MiddleMin, double PromisedMin, double CanAloneMin, IReadOnlyList<CoolDownPoint> Path, double InheritsK, double InheritsMostK);

/// <summary>Can and core at one time.</summary>
/// <param name="Minutes">After the halt.</param>
/// <param name="CanC">Can, middle, °C.</param>
/// <param name="CoreC">Hottest of winding, laminations and rotor, middle, °C.</param>
/// <param name="CoreHighC">The same, nine in ten at most, °C.</param>
public readonly record struct CoolDownPoint(double Minutes, double CanC, double CoreC, double CoreHighC);
