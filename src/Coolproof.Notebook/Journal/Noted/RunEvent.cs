using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>Whether a stamp counts.</summary>
public enum EventStanding
{
    /// <summary>It counts.</summary>
    Counts,
    /// <summary>The same device pressed before: the first counts, this one is kept and shown.</summary>
    PressedAgain,
    /// <summary>Another device's stamp counts; this one is kept and shown.</summary>
    OtherDevice,
    /// <summary>It was taken back.</summary>
    TakenBack,
    /// <summary>Another entry stands in for it.</summary>
    Corrected
}

/// <summary>A stamp of a run.</summary>
/// <param name="Entry">Its entry.</param>
/// <param name="Kind">Its kind, such as <see cref="EntryKind.RunGo"/>.</param>
/// <param name="Device">Who pressed.</param>
/// <param name="At">When it was, by the corrected clock: seconds ago and nudges included.</param>
/// <param name="Tapped">When it was pressed, by the corrected clock.</param>
/// <param name="NudgedS">Sum of its nudges, s.</param>
/// <param name="Standing">Whether it counts.</param>
/// <param name="Body">What it says.</param>
public sealed record RunEvent(Guid Entry, string Kind, Guid Device, Instant At, Instant Tapped, double NudgedS, EventStanding Standing, EntryBody Body);

/// <summary>An instant of a run that one or several devices stamped.</summary>
/// <param name="At">The instant that counts.</param>
/// <param name="Counted">The stamp that it comes from.</param>
/// <param name="Others">Stamps of other devices and second presses, in the order of time; they are kept and shown.</param>
/// <param name="SpreadS">Between the earliest and the latest device, s; 0 where one device stamped.</param>
/// <param name="Chosen">Whether a person chose the device.</param>
public sealed record ClockedInstant(Instant At, RunEvent Counted, IReadOnlyList<RunEvent> Others, double SpreadS, bool Chosen);

/// <summary>A time that the vehicle lay or stood within the drive.</summary>
/// <param name="Down">When it went down.</param>
/// <param name="Up">When it drove again; null while it lies, or when it never did.</param>
public sealed record StandStill(Instant Down, Instant? Up);

/// <summary>A countdown.</summary>
/// <param name="At">When it began.</param>
/// <param name="Seconds">Until go, s.</param>
/// <param name="DriveS">Planned drive, s.</param>
public sealed record Countdown(Instant At, double Seconds, double DriveS)
{
    /// <summary>When go is.</summary>
    public Instant Go => At + Duration.FromSeconds(Seconds);
}

/// <summary>Cooling before a run.</summary>
/// <param name="Id">Its UUID.</param>
/// <param name="Fields">Its fields.</param>
/// <param name="Since">When it was noted.</param>
/// <param name="Removed">Whether it was taken out.</param>
/// <param name="Begin">When it began.</param>
/// <param name="End">When it ended; null while it lasts.</param>
public sealed record NotedCoolDown(Guid Id, EntryBody Fields, Instant Since, bool Removed, Instant Begin, Instant? End) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>The run that it comes before.</summary>
    public Guid? Run => Fields.Id("run");
    /// <summary>How: shade, own-fan, pit-fan, cooled-air.</summary>
    public string Way => Fields.Text("way") ?? "";
}

/// <summary>A shot of an instrument at the motor.</summary>
/// <param name="Id">Its UUID.</param>
/// <param name="Fields">Its fields.</param>
/// <param name="Since">When it was noted.</param>
/// <param name="Removed">Whether it was taken out.</param>
/// <param name="At">The trigger, by the corrected clock; null for a shot that was typed without a time.</param>
/// <param name="ReadC">The number on the display, °C; null while it has none.</param>
/// <param name="Photo">The photo that the number can be read from.</param>
public sealed record NotedShot(Guid Id, EntryBody Fields, Instant Since, bool Removed, Instant? At, double? ReadC, Guid? Photo) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>The run.</summary>
    public Guid? Run => Fields.Id("run");
    /// <summary>The instrument.</summary>
    public Guid? Instrument => Fields.Id("instrument");
    /// <summary>The trace that it was taken from; null: it was shot.</summary>
    public Guid? Trace => Fields.Id("trace");
    /// <summary>Where the spot lay.</summary>
    public Spot Spot => NotedWords.Choice<Spot>(Tables.Field.Spot, Fields.Text("spot")) ?? Notebook.Spot.Can;
    /// <summary>What the number on the display is.</summary>
    public Hold Hold => NotedWords.Choice<Hold>(Tables.Field.Hold, Fields.Text("hold")) ?? Notebook.Hold.Single;
    /// <summary>What the spot lay on.</summary>
    public SpotSurface Surface => NotedWords.Surface(Fields.Text("surface")) ?? SpotSurface.Unknown;
    /// <summary>Emissivity setting then; null when not noted.</summary>
    public double? EmissivitySet => Fields.Number("emissivitySet");
    /// <summary>From halt to the reading as typed, s; goes before the stamps.</summary>
    public double? TypedStopToReadS => Fields.Number("stopToReadS");
    /// <summary>Why it is left out; null: it counts.</summary>
    public string? ExcludedBecause => Fields.Text("excludedBecause");
    /// <summary>The winding resistance in it; null where there is none, or its cold value is missing.</summary>
    public WindingResistance? Winding =>
        Fields.Number("windingHotMohm") is { } hot && Fields.Number("windingColdMohm") is { } cold && Fields.Number("windingColdC") is { } coldC
            ? new WindingResistance(hot, Fields.Number("windingAtS"), cold, coldC, NotedWords.Choice<WindingPair>(Tables.Field.WindingPair, Fields.Text("windingPair")))
            : null;
    /// <summary>Whether its number is still to be typed.</summary>
    public bool OwesNumber => ReadC is null && Fields.Number("windingHotMohm") is null;
}
