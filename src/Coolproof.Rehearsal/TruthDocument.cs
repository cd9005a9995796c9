using System.Text.Encodings.Web;
using System.Text.Json;

namespace Coolproof.Rehearsal;

/// <summary>Conditions that a truth document's peaks hold at.</summary>
/// <param name="AmbientC">Air, °C.</param>
/// <param name="DriveS">Hard driving, s.</param>
/// <param name="Start">Where all bodies start: always "ambient".</param>
public sealed record TruthReference(double AmbientC, double DriveS, string Start = "ambient");

/// <summary>What is true of an option.</summary>
/// <param name="Name">Its name.</param>
/// <param name="WattsPerKelvin">Watts shed per degree from can to free air while driving, W/K.</param>
/// <param name="HasFan">Whether it has a fan of its own.</param>
/// <param name="SameAs">The option that it is in truth, where it is entered under a second name.</param>
/// <param name="PeakCanC">Can at the end of hard driving at the reference, °C.</param>
/// <param name="PeakWindingC">Mean winding temperature then, °C.</param>
public sealed record OptionInTruth(string Name, double WattsPerKelvin, bool HasFan, string? SameAs, double PeakCanC, double PeakWindingC);

/// <summary>What is true of a run.</summary>
/// <param name="Run">The run's truth.</param>
/// <param name="FairCanC">Can at the reference with the run's own heat and mounting, °C; null for a void run.</param>
/// <param name="FairWindingC">Winding then, °C; null for a void run.</param>
public sealed record RunInTruth(RunTruth Run, double? FairCanC, double? FairWindingC);

/// <summary>The truth beside a simulated readings table, to be opened after one has judged it.</summary>
/// <param name="Version">Version of this document: 1.</param>
/// <param name="About">That all is made up.</param>
/// <param name="Generator">Version of the generator.</param>
/// <param name="Seed">Seed.</param>
/// <param name="Reference">Conditions of the peaks.</param>
/// <param name="MotorMassKg">Mass of the motor, kg.</param>
/// <param name="Stratum">What kind of day it is.</param>
/// <param name="Hyperparameters">Sds, gun, thermometer.</param>
/// <param name="Options">Options.</param>
/// <param name="Runs">Runs in the order of time.</param>
public sealed record TruthDocument(
    int Version, string About, int Generator, long Seed, TruthReference Reference, double MotorMassKg, Stratum Stratum,
    Hyperparameters Hyperparameters, IReadOnlyList<OptionInTruth> Options, IReadOnlyList<RunInTruth> Runs)
{
    static readonly JsonSerializerOptions Layout = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new System.Text.Json.Serialization.JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
    };

    /// <summary>The truth of a day at the median noted air and the median drive, unless told otherwise.</summary>
    /// <param name="day">The day.</param>
    /// <param name="ambientC">Reference air, °C.</param>
    /// <param name="driveS">Reference seconds of hard driving.</param>
    public static TruthDocument Of(SimulatedDay day, double? ambientC = null, double? driveS = null)
    {
        Notebook.Run[] tests = [.. day.Runs.Where(r => r.Kind == Notebook.RunKind.Test)];
        double air = ambientC ?? Median(tests.Where(r => r.AirC is not null).Select(r => r.AirC!.Value));
        double drive = driveS ?? Median(tests.Select(r => r.DriveS));
        Dictionary<RunTruth, RunFloor> floors = day.Truth.Floors(air, drive).ToDictionary(f => f.Run);
        return new(
            1, "Made up: a simulated rehearsal, no real motor was driven.", TruthRanges.GeneratorVersion, day.Settings.Seed, new(air, drive),
            day.Truth.MotorMassKg, day.Stratum, day.Truth.Hyperparameters,
            [.. day.Truth.Options.Zip(day.Truth.Peaks(air, drive), (o, p) => new OptionInTruth(o.Name, o.WattsPerKelvin, o.HasFan, o.SameAs, p.CanC, p.WindingC))],
            [.. day.Truth.Runs.Select(r => floors.TryGetValue(r, out RunFloor f) ? new RunInTruth(r, f.CanC, f.WindingC) : new RunInTruth(r, null, null))]);
    }

    /// <summary>The document as JSON, property names in camel case, indented, LF line ends.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Layout) + "\n";

    static double Median(IEnumerable<double> values)
    {
        double[] v = [.. values.Order()];
        return v.Length % 2 == 1 ? v[v.Length / 2] : (v[v.Length / 2 - 1] + v[v.Length / 2]) / 2;
    }
}
