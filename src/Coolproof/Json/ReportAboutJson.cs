using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Coolproof.Evidence;
using Coolproof.Notebook.Journal;
using Coolproof.Reports;

namespace Coolproof.Json;

/// <summary>"about.json" beside the data of a report, version 1: what stands around the table. °C, K, s, g.</summary>
internal sealed record ReportAboutJson(
    int Version, string Coolproof, string Made, bool MadeUp, string Question, string Sentence, IReadOnlyList<string> Compare, long Seed, ReferenceJson Reference, double SameWithinK,
    IReadOnlyList<ReportDayJson> Days, LastDayJson? LastDay, IReadOnlyList<ReportOptionJson> Options, IReadOnlyList<GunCheckJson> GunChecks,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ReportEarlierJson? Earlier)
{
    /// <summary>The version of the contract.</summary>
    public const int CurrentVersion = 1;

    /// <summary>As text, with a line end.</summary>
    public static string Text(Report report) => ReportJson.Text(Of(report));

    static ReportAboutJson Of(Report report)
    {
        var (verdict, subject) = (report.Verdict, report.Subject);
        return new(
            CurrentVersion, Report.Version, report.Made.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture), subject.MadeUp, report.Asked, report.Answer, ReportData.CompareWords(report),
            verdict.Seed, new ReferenceJson(CompareJson.Round(verdict.Fair.AmbientC, 2, "ambientC"), CompareJson.Round(verdict.Fair.DriveS, 1, "driveS"), verdict.Fair.Start), verdict.SameWithinK,
            [.. report.Days.Select(day => Day(verdict, day))],
            report.Alone is { } alone ? new LastDayJson(alone.Day, alone.Verdict?.Sentence, alone.Why.Length > 0 ? alone.Why : null) : null,
            [.. verdict.Options.Select(option => Option(option.Name, subject.Noted(option.Name)))],
            [.. subject.GunChecks.Select(check => new GunCheckJson(check.Gun, check.Way, check.ReadC, check.TrueC, check.EmissivitySet))],
            ReportEarlierJson.Of(report));
    }

    static ReportDayJson Day(Verdict verdict, string day)
    {
        RunCurve[] runs = [.. verdict.Runs.Where(run => string.Equals(run.Day, day, StringComparison.OrdinalIgnoreCase))];
        return new(day, runs.Length, runs.Sum(run => run.Readings.Count + run.WindingReadings.Count), [.. runs.Select(run => run.Option).Distinct(StringComparer.OrdinalIgnoreCase)]);
    }

    static ReportOptionJson Option(string name, NotedOption? noted) => new(name, noted?.Mount, noted?.Fans, noted?.FanSizeMm, noted?.FanV, noted?.Price, noted?.MassG, noted?.CantBeUndone);
}

/// <summary>A day of a report: what it brought.</summary>
internal sealed record ReportDayJson(string Name, int Runs, int Readings, IReadOnlyList<string> Options);

/// <summary>The last day alone: its sentence, or why it can't be judged alone.</summary>
internal sealed record LastDayJson(string Name, string? Sentence, string? Why);

/// <summary>Earlier days that were judged together with the table.</summary>
internal sealed record ReportEarlierJson(bool First, int Days, int Runs, string Sentence, IReadOnlyList<string> Compare)
{
    /// <summary>Of a report; null where there are none.</summary>
    public static ReportEarlierJson? Of(Report report) => (report.Earlier ?? report.Wider?.Earlier) is { } earlier
        ? new(report.Earlier is not null, earlier.Days, earlier.Runs, report.AnswerOf(report.Wider?.Verdict ?? report.Verdict), ReportData.WiderWords(report))
        : null;
}

/// <summary>A cooling option as noted; null where a thing isn't.</summary>
internal sealed record ReportOptionJson(string Name, string? Mount, int? Fans, double? FanSizeMm, double? FanV, double? Price, double? MassG, bool? CantBeUndone);

/// <summary>A check of a gun.</summary>
internal sealed record GunCheckJson(string Gun, string? Way, double? ReadC, double? TrueC, double? EmissivitySet);

/// <summary>What `report --json` prints, version 1.</summary>
internal sealed record ReportFilesJson(int Version, string Folder, IReadOnlyList<string> Files, bool Pdf)
{
    /// <summary>The version of the contract.</summary>
    public const int CurrentVersion = 1;
}

/// <summary>Serialisation written when the program is built.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata, PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(ReportAboutJson))]
[JsonSerializable(typeof(ReportFilesJson))]
internal sealed partial class ReportJson : JsonSerializerContext
{
    static ReportJson Printed { get; } = new(new JsonSerializerOptions(CompareJsonContext.Printed.Options));

    /// <summary>As text, with a line end.</summary>
    public static string Text<T>(T value) => JsonSerializer.Serialize(value, (JsonTypeInfo<T>)Printed.GetTypeInfo(typeof(T))!) + "\n";
}
