using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace Coolproof.Json;

/// <summary>What `import --json` prints, version 1.</summary>
internal sealed record ImportJson(
    int Version, string File, string Store, bool DryRun, int Days, int Options, int Runs, int Readings, int Entries, int New, int There, IReadOnlyList<string> Questions);

/// <summary>What `import --as trace --json` prints, version 1.</summary>
internal sealed record ImportTraceJson(
    int Version, string File, string Store, bool DryRun, bool There, string Day, string Sha256, long Rows, double Seconds, IReadOnlyList<TraceChannelJson> Channels, IReadOnlyList<string> Guessed,
    long ProblemCount, IReadOnlyList<string> Problems, IReadOnlyList<TraceFitJson> Fits, int ReadingsTaken, IReadOnlyList<TracedLoadJson> Currents);

/// <summary>A channel of a trace.</summary>
internal sealed record TraceChannelJson(string Name, string Unit, string Measures);

/// <summary>A way in which a trace fits its day.</summary>
internal sealed record TraceFitJson(double ClockAheadS, double Probability, bool Sure, IReadOnlyList<TracedRunJson> Runs);

/// <summary>A run in a trace; s by the trace's own clock.</summary>
internal sealed record TracedRunJson(string Run, double GoS, double? StopS, double? HaltS, bool Seen);

/// <summary>A run's current as it was logged; no charge where it is the motor's.</summary>
internal sealed record TracedLoadJson(string Run, string Channel, double MeanA, double RmsA, double? ChargeMah);

/// <summary>What `export --json` prints, version 1.</summary>
internal sealed record ExportJson(int Version, string File, string Store, int Days, int Options, int Runs, int Readings, IReadOnlyList<string> LeftOut);

/// <summary>What `backup --json` and `restore --json` print, version 1.</summary>
internal sealed record BackupJson(int Version, string File, string Store, int Entries, int TraceFiles, IReadOnlyList<string> TracesMissing, long Bytes);

/// <summary>Serialisation written when the program is built.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata, PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(ImportJson))]
[JsonSerializable(typeof(ImportTraceJson))]
[JsonSerializable(typeof(ExportJson))]
[JsonSerializable(typeof(BackupJson))]
internal sealed partial class NotebookJson : JsonSerializerContext
{
    /// <summary>The version of the contract.</summary>
    public const int CurrentVersion = 1;

    static NotebookJson Printed { get; } = new(new JsonSerializerOptions(CompareJsonContext.Printed.Options));

    /// <summary>As text, with a line end.</summary>
    public static string Text<T>(T value) => JsonSerializer.Serialize(value, (JsonTypeInfo<T>)Printed.GetTypeInfo(typeof(T))!) + "\n";
}
