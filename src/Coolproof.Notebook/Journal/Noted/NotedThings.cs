using NodaTime;
using NodaTime.Text;

namespace Coolproof.Notebook.Journal;

/// <summary>A class card: what is allowed, as the person typed it; nothing is preset.</summary>
public sealed record NotedClass(Guid Id, EntryBody Fields, Instant Since, bool Removed) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>Which motors are allowed.</summary>
    public string? MotorRule => Fields.Text("motorRule");
    /// <summary>Least timing, degrees.</summary>
    public double? TimingMinDeg => Fields.Number("timingMinDeg");
    /// <summary>Most timing, degrees.</summary>
    public double? TimingMaxDeg => Fields.Number("timingMaxDeg");
    /// <summary>Least final drive ratio.</summary>
    public double? RatioMin => Fields.Number("ratioMin");
    /// <summary>Most final drive ratio.</summary>
    public double? RatioMax => Fields.Number("ratioMax");
    /// <summary>Which packs are allowed.</summary>
    public string? PackRule => Fields.Text("packRule");
    /// <summary>Least mass of the vehicle, g.</summary>
    public double? MassMinG => Fields.Number("massMinG");
    /// <summary>Most fans on the motor.</summary>
    public int? FansMax => Fields.Whole("fansMax");
    /// <summary>Highest fan voltage, V.</summary>
    public double? FanMaxV => Fields.Number("fanMaxV");
    /// <summary>Whether openings in the shell are allowed.</summary>
    public bool? OpeningsAllowed => Fields.YesNo("openingsAllowed");
    /// <summary>Length of a race, s.</summary>
    public double? RaceS => Fields.Number("raceS");
}

/// <summary>A vehicle.</summary>
public sealed record NotedVehicle(Guid Id, EntryBody Fields, Instant Since, bool Removed) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>Scale, such as 1:10.</summary>
    public string? Scale => Fields.Text("scale");
    /// <summary>Driven wheels.</summary>
    public string? Drive => Fields.Text("drive");
    /// <summary>Teeth of the pinion.</summary>
    public int? PinionTeeth => Fields.Whole("pinion");
    /// <summary>Teeth of the spur.</summary>
    public int? SpurTeeth => Fields.Whole("spur");
    /// <summary>Ratio between spur and wheel.</summary>
    public double? InternalRatio => Fields.Number("internalRatio");
    /// <summary>Tyre diameter, mm.</summary>
    public double? TyreDiameterMm => Fields.Number("tyreDiameterMm");
    /// <summary>Mass ready to race, g.</summary>
    public double? MassG => Fields.Number("massG");
    /// <summary>Its motor.</summary>
    public Guid? Motor => Fields.Id("motor");
    /// <summary>Its class card.</summary>
    public Guid? Class => Fields.Id("class");
    /// <summary>Tyres.</summary>
    public string? Tyres => Fields.Text("tyres");
    /// <summary>Profile of the speed controller.</summary>
    public string? ControllerProfile => Fields.Text("controllerProfile");
    /// <summary>Limit of the speed controller, °C.</summary>
    public double? ControllerLimitC => Fields.Number("controllerLimitC");
}

/// <summary>A motor.</summary>
public sealed record NotedMotor(Guid Id, EntryBody Fields, Instant Since, bool Removed) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>Mass with leads, g.</summary>
    public double? MassG => Fields.Number("massG");
    /// <summary>Whether it has brushes.</summary>
    public bool? Brushed => Fields.YesNo("brushed");
    /// <summary>Turns.</summary>
    public double? Turns => Fields.Number("turns");
    /// <summary>Timing, degrees.</summary>
    public double? TimingDeg => Fields.Number("timingDeg");
    /// <summary>Can diameter, mm.</summary>
    public double? CanDiameterMm => Fields.Number("canDiameterMm");
    /// <summary>Can length, mm.</summary>
    public double? CanLengthMm => Fields.Number("canLengthMm");
    /// <summary>Winding resistance, cold, mΩ.</summary>
    public double? WindingColdMilliohm => Fields.Number("windingColdMohm");
    /// <summary>Temperature of the winding at that resistance, °C.</summary>
    public double? WindingColdC => Fields.Number("windingColdC");
    /// <summary>Insulation class, as written.</summary>
    public string? Insulation => Fields.Text("insulation");
    /// <summary>Letters of the magnets' grade, as written.</summary>
    public string? MagnetGrade => Fields.Text("magnetGrade");
    /// <summary>Limit of the can, °C.</summary>
    public double? CanLimitC => Fields.Number("canLimitC");
    /// <summary>Limit of the winding, °C.</summary>
    public double? WindingLimitC => Fields.Number("windingLimitC");
    /// <summary>Limit of the magnets, °C.</summary>
    public double? MagnetLimitC => Fields.Number("magnetLimitC");
    /// <summary>Surface of the spot; null when not noted.</summary>
    public SpotSurface? Surface => NotedWords.Surface(Fields.Text("surface"));
}

/// <summary>A part of a cooling option.</summary>
public sealed record NotedPart(Guid Id, EntryBody Fields, Instant Since, bool Removed) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>The option that takes it.</summary>
    public Guid? Option => Fields.Id("option");
    /// <summary>Price, own currency.</summary>
    public double? Price => Fields.Number("price");
    /// <summary>Mass, g.</summary>
    public double? MassG => Fields.Number("massG");
    /// <summary>Whether it is owned already.</summary>
    public bool Owned => Fields.YesNo("owned") ?? false;
}

/// <summary>A cooling option.</summary>
/// <param name="Id">Its UUID.</param>
/// <param name="Fields">Its fields.</param>
/// <param name="Since">When its first entry was made.</param>
/// <param name="Removed">Whether it was taken out of lists.</param>
/// <param name="Parts">Its parts.</param>
public sealed record NotedOption(Guid Id, EntryBody Fields, Instant Since, bool Removed, IReadOnlyList<NotedPart> Parts) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>Where the fan sits.</summary>
    public string? Mount => Fields.Text("mount");
    /// <summary>Fan size, mm.</summary>
    public double? FanSizeMm => Fields.Number("fanSizeMm");
    /// <summary>Number of fans.</summary>
    public int? Fans => Fields.Whole("fans");
    /// <summary>Supply voltage of the fan, V.</summary>
    public double? FanV => Fields.Number("fanV");
    /// <summary>What supplies the fan.</summary>
    public string? FanSupply => Fields.Text("fanSupply");
    /// <summary>What blocks its inlet.</summary>
    public string? InletBlockedBy => Fields.Text("inletBlockedBy");
    /// <summary>Whether fitting it can't be undone.</summary>
    public bool CantBeUndone => Fields.YesNo("cantBeUndone") ?? false;
    /// <summary>Whether nobody owns it yet.</summary>
    public bool NotOwned => Fields.YesNo("notOwned") ?? false;
    /// <summary>What had to be cut, re-soldered or moved to fit it.</summary>
    public string? FitNotes => Fields.Text("fitNotes");
    /// <summary>Time that fitting it takes, min.</summary>
    public double? FitMin => Fields.Number("fitMin");
    /// <summary>What of it touches the shell.</summary>
    public string? TouchesShell => Fields.Text("touchesShell");
    /// <summary>Its colour: place in the palette, from 0; null: by its place among all options.</summary>
    public int? Colour => Fields.Whole("colour");
    /// <summary>Its mark: circle, square, triangle-up, diamond, triangle-down, cross, star or hourglass; null: by its place among all options.</summary>
    public string? Mark => Fields.Text("mark");
    /// <summary>Price of its parts, or its own; null when none is known.</summary>
    public double? Price => Parts.Any(part => part.Price is not null) ? Parts.Sum(part => part.Price ?? 0) : Fields.Number("price");
    /// <summary>Mass of its parts, or its own, g; null when none is known.</summary>
    public double? MassG => Parts.Any(part => part.MassG is not null) ? Parts.Sum(part => part.MassG ?? 0) : Fields.Number("massG");
}

/// <summary>A check of a gun against something known.</summary>
public sealed record NotedGunCheck(Guid Id, EntryBody Fields, Instant Since, bool Removed) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>The gun.</summary>
    public Guid? Instrument => Fields.Id("instrument");
    /// <summary>Against what: ice, boiling, probe-in-water, beside-tape.</summary>
    public string? Way => Fields.Text("way");
    /// <summary>What the gun showed, °C.</summary>
    public double? ReadC => Fields.Number("readC");
    /// <summary>What was true, °C.</summary>
    public double? TrueC => Fields.Number("trueC");
    /// <summary>Its emissivity setting then.</summary>
    public double? EmissivitySet => Fields.Number("emissivitySet");
}

/// <summary>An instrument.</summary>
/// <param name="Id">Its UUID.</param>
/// <param name="Fields">Its fields.</param>
/// <param name="Since">When its first entry was made.</param>
/// <param name="Removed">Whether it was taken out of lists.</param>
/// <param name="Checks">Its checks, in the order of time.</param>
public sealed record NotedInstrument(Guid Id, EntryBody Fields, Instant Since, bool Removed, IReadOnlyList<NotedGunCheck> Checks) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>How it measures; a gun when not noted.</summary>
    public InstrumentKind Kind => Fields.Text("type") switch { "probe" => InstrumentKind.Probe, "ohmmeter" => InstrumentKind.Ohmmeter, _ => InstrumentKind.Gun };
    /// <summary>Its emissivity setting; null when unknown.</summary>
    public double? Emissivity => Fields.Number("emissivity");
    /// <summary>Distance to spot size.</summary>
    public double? SpotRatio => Fields.Number("spotRatio");
    /// <summary>Unit of its display.</summary>
    public TemperatureUnitChoice? Unit => NotedWords.Unit(Fields.Text("unit"));
}

/// <summary>A pack.</summary>
public sealed record NotedPack(Guid Id, EntryBody Fields, Instant Since, bool Removed) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>Cells in series.</summary>
    public int? Cells => Fields.Whole("cells");
    /// <summary>Capacity, mAh.</summary>
    public double? CapacityMah => Fields.Number("capacityMah");
    /// <summary>Chemistry.</summary>
    public string? Chemistry => Fields.Text("chemistry");
}

/// <summary>A charger.</summary>
public sealed record NotedCharger(Guid Id, EntryBody Fields, Instant Since, bool Removed) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>Charging current, A.</summary>
    public double? ChargeA => Fields.Number("chargeA");
    /// <summary>Packs at once.</summary>
    public int? Outputs => Fields.Whole("outputs");
}

/// <summary>A question.</summary>
public sealed record NotedQuestion(Guid Id, EntryBody Fields, Instant Since, bool Removed) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>The question as asked.</summary>
    public string Text => Fields.Text("text") ?? "";
    /// <summary>What is asked: which, pays, gear, limit, why, other.</summary>
    public string? Sort => Fields.Text("sort");
    /// <summary>Options that it is between.</summary>
    public IReadOnlyList<Guid> Options => Fields.Ids("options");
    /// <summary>Limit, °C.</summary>
    public double? LimitC => Fields.Number("limitC");
    /// <summary>What the limit holds for.</summary>
    public LimitOn? LimitOn => Fields.Text("limitOn") switch { "can" => Notebook.LimitOn.Can, "winding" => Notebook.LimitOn.Winding, "magnet" => Notebook.LimitOn.Magnet, "controller" => Notebook.LimitOn.Controller, _ => null };
    /// <summary>Budget, own currency.</summary>
    public double? Budget => Fields.Number("budget");
    /// <summary>Budget of mass, g.</summary>
    public double? BudgetG => Fields.Number("budgetG");
    /// <summary>Air of the race day, °C.</summary>
    public double? AirC => Fields.Number("airC");
    /// <summary>Length of the race or run, s.</summary>
    public double? DriveS => Fields.Number("driveS");
    /// <summary>Difference that makes none, K.</summary>
    public double? SameWithinK => Fields.Number("sameWithinK");
    /// <summary>Class card.</summary>
    public Guid? Class => Fields.Id("class");
    /// <summary>Vehicle.</summary>
    public Guid? Vehicle => Fields.Id("vehicle");
    /// <summary>Motor.</summary>
    public Guid? Motor => Fields.Id("motor");
    /// <summary>Whether it is put aside as answered.</summary>
    public bool Answered => Fields.YesNo("answered") ?? false;
}

/// <summary>A reading after a real race.</summary>
/// <param name="Id">Its UUID.</param>
/// <param name="Fields">Its fields.</param>
/// <param name="Since">When it was noted.</param>
/// <param name="Removed">Whether it was taken out of lists.</param>
/// <param name="At">When it was read.</param>
/// <param name="ReadC">The number on the display, °C.</param>
public sealed record NotedRaceReading(Guid Id, EntryBody Fields, Instant Since, bool Removed, Instant At, double ReadC) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>The cooling option.</summary>
    public Guid? Option => Fields.Id("option");
    /// <summary>From the end of the race to the reading, s.</summary>
    public double AfterS => (Fields.Number("minutesAfter") ?? 0) * 60;
    /// <summary>The day.</summary>
    public Guid? Day => Fields.Id("day");
    /// <summary>Air, °C.</summary>
    public double? AirC => Fields.Number("airC");
    /// <summary>Length of the race, s.</summary>
    public double? RaceS => Fields.Number("raceS");
}

/// <summary>A photo; its bytes are kept apart, under the same UUID.</summary>
public sealed record NotedPhoto(Guid Id, EntryBody Fields, Instant Since, bool Removed) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>The thing that it shows.</summary>
    public Guid? About => Fields.Id("about");
    /// <summary>Media type.</summary>
    public string? MediaType => Fields.Text("type");
    /// <summary>Size, bytes.</summary>
    public int? Bytes => Fields.Whole("bytes");
    /// <summary>Width, pixels.</summary>
    public int? Width => Fields.Whole("width");
    /// <summary>Height, pixels.</summary>
    public int? Height => Fields.Whole("height");
}

/// <summary>A device: a phone or a laptop.</summary>
/// <param name="Id">Its UUID.</param>
/// <param name="Fields">Its fields.</param>
/// <param name="Since">When its first entry was made.</param>
/// <param name="Removed">Whether it was taken out of lists.</param>
/// <param name="OffsetMs">Its clock minus the server's by its latest measurement, ms; null when it never measured.</param>
public sealed record NotedDevice(Guid Id, EntryBody Fields, Instant Since, bool Removed, double? OffsetMs) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>What it does.</summary>
    public DeviceRole Role => Fields.Text("role") switch { "driver" => DeviceRole.Driver, "clock" => DeviceRole.Clock, "gun" => DeviceRole.Gun, _ => DeviceRole.Any };
    /// <summary>The hand that holds it: left or right; null when not noted.</summary>
    public string? Hand => Fields.Text("hand");
}

/// <summary>What a device does in a run.</summary>
public enum DeviceRole
{
    /// <summary>Anything.</summary>
    Any,
    /// <summary>The driver's.</summary>
    Driver,
    /// <summary>Its stamps count.</summary>
    Clock,
    /// <summary>The one with the gun.</summary>
    Gun
}

/// <summary>The settings.</summary>
public sealed record NotedSettings(Guid Id, EntryBody Fields, Instant Since, bool Removed) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>No settings.</summary>
    public static NotedSettings None { get; } = new(Guid.Empty, EntryBody.Empty, Instant.FromUnixTimeTicks(0), false);
    /// <summary>Unit of temperatures; °C when not set.</summary>
    public TemperatureUnitChoice TemperatureUnit => NotedWords.Unit(Fields.Text("temperatureUnit")) ?? TemperatureUnitChoice.Celsius;
    /// <summary>Unit of masses; grams when not set.</summary>
    public MassUnitChoice MassUnit => Fields.Text("massUnit") == "oz" ? MassUnitChoice.Ounce : MassUnitChoice.Gram;
    /// <summary>Sign of the currency; empty when not set.</summary>
    public string Currency => Fields.Text("currency") ?? "";
}

/// <summary>An import of a readings table.</summary>
public sealed record NotedImport(Guid Id, EntryBody Fields, Instant Since, bool Removed) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>Hash of its content.</summary>
    public string? Sha256 => Fields.Text("sha256");
    /// <summary>Runs in it.</summary>
    public int? Runs => Fields.Whole("runs");
}

/// <summary>A note of the weather.</summary>
/// <param name="Entry">Its entry.</param>
/// <param name="At">When.</param>
/// <param name="AirC">Air in the shade near the track, °C; null when not noted.</param>
/// <param name="AirBy">Where that came from.</param>
/// <param name="Sky">Sky.</param>
/// <param name="Wind">Wind.</param>
/// <param name="Track">State of the track.</param>
/// <param name="TrackC">Surface of the track, °C.</param>
public sealed record NotedWeather(Guid Entry, Instant At, double? AirC, AirSource AirBy, Sky? Sky, Wind? Wind, TrackState? Track, double? TrackC);

/// <summary>A day at the track.</summary>
/// <param name="Id">Its UUID.</param>
/// <param name="Fields">Its fields.</param>
/// <param name="Since">When its first entry was made.</param>
/// <param name="Removed">Whether it was taken out of lists.</param>
/// <param name="Weather">Notes of the weather in the order of time.</param>
public sealed record NotedDay(Guid Id, EntryBody Fields, Instant Since, bool Removed, IReadOnlyList<NotedWeather> Weather) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>Its local date; null when not noted.</summary>
    public LocalDate? Date => Fields.Text("date") is { } text && LocalDatePattern.Iso.Parse(text) is { Success: true } date ? date.Value : null;
    /// <summary>Local time minus UTC; zero when not noted.</summary>
    public Offset UtcOffset => Fields.Number("utcOffsetMin") is { } minutes and >= -1080 and <= 1080 ? Offset.FromSeconds((int)Math.Round(minutes * 60)) : Offset.Zero;
    /// <summary>Question that it works on.</summary>
    public Guid? Question => Fields.Id("question");
    /// <summary>Venue.</summary>
    public string? Venue => Fields.Text("venue");
    /// <summary>Surface.</summary>
    public string? Surface => Fields.Text("surface");
    /// <summary>Driver.</summary>
    public string? Driver => Fields.Text("driver");
    /// <summary>Vehicle.</summary>
    public Guid? Vehicle => Fields.Id("vehicle");
    /// <summary>Motor.</summary>
    public Guid? Motor => Fields.Id("motor");
    /// <summary>Gun.</summary>
    public Guid? Instrument => Fields.Id("instrument");
    /// <summary>Planned drive of a run, s.</summary>
    public double? DriveS => Fields.Number("driveS");
    /// <summary>Shots wanted after a run; three when not noted (common practice, no source).</summary>
    public int ShotsPerRun => Fields.Whole("shotsPerRun") ?? 3;
    /// <summary>Options in the planned order of runs.</summary>
    public IReadOnlyList<Guid> Plan => Fields.Ids("plan");
    /// <summary>First minute of the day at the track, local, min after midnight.</summary>
    public double? FromMin => Fields.Number("fromMin");
    /// <summary>Last minute, min after midnight; over 1440 after the next midnight.</summary>
    public double? ToMin => Fields.Number("toMin");
    /// <summary>Planned cool-down between runs, min.</summary>
    public double? CoolMin => Fields.Number("coolMin");
    /// <summary>Planned change of the option where none takes longer, min.</summary>
    public double? SwapMin => Fields.Number("swapMin");
    /// <summary>Charged packs at the start.</summary>
    public int? Packs => Fields.Whole("packs");
    /// <summary>Chargers at the track.</summary>
    public int? Chargers => Fields.Whole("chargers");
    /// <summary>To charge a pack, min.</summary>
    public double? ChargeMin => Fields.Number("chargeMin");
    /// <summary>Option to be driven first and last.</summary>
    public Guid? Reference => Fields.Id("reference");
    /// <summary>The one spot of all readings.</summary>
    public string? Spot => Fields.Text("spot");
    /// <summary>Seed of the plan.</summary>
    public int? PlanSeed => Fields.Whole("planSeed");
}
