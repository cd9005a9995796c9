using System.IO.Compression;
using System.Text;
using Coolproof.Json;

namespace Coolproof.Reports;

/// <summary>The data for whoever wants to check a report: the readings table, the verdict as `coolproof compare` prints it, and what stands around them.</summary>
internal static class ReportData
{
    /// <summary>The readings table.</summary>
    public const string Readings = "readings.csv";

    /// <summary>The verdict, byte for byte what `coolproof compare` prints of the table with the words that "about.json" gives.</summary>
    public const string Verdict = "verdict.json";

    /// <summary>The verdict on the last day alone, where there are several.</summary>
    public const string LastDay = "last-day.json";

    /// <summary>The verdict together with earlier days, where the day's own is the report's.</summary>
    public const string WithEarlier = "with-earlier.json";

    /// <summary>The readings table of an earlier day.</summary>
    /// <param name="place">Its place, from 1 on, in the order of time.</param>
    public static string Earlier(int place) => $"earlier-{place}.csv";

    /// <summary>The words after `coolproof` that print the report's verdict again.</summary>
    public static IReadOnlyList<string> CompareWords(Report report) => report.Earlier is null ? report.Subject.CompareWords(Readings) : WiderWords(report);

    /// <summary>The words that print the verdict together with earlier days again.</summary>
    public static IReadOnlyList<string> WiderWords(Report report) => report.Subject.CompareWords(Readings, report.Subject.Earlier.Select((_, place) => Earlier(place + 1)));

    /// <summary>Question, version, seed, options, gun checks, days.</summary>
    public const string About = "about.json";

    /// <summary>The files by name.</summary>
    public static IReadOnlyList<(string Name, byte[] Bytes)> Files(Report report)
    {
        List<(string, byte[])> files = [(Readings, report.Subject.Csv), (Verdict, Encoding.UTF8.GetBytes(CompareJson.Text(report.Verdict, report.Earlier)))];
        if (report.Earlier is not null || report.Wider is not null) files.AddRange(report.Subject.Earlier.Select((one, place) => (Earlier(place + 1), one.Csv)));
        if (report.Wider is { } wider) files.Add((WithEarlier, Encoding.UTF8.GetBytes(CompareJson.Text(wider.Verdict, wider.Earlier))));
        if (report.Alone?.Verdict is { } alone) files.Add((LastDay, Encoding.UTF8.GetBytes(CompareJson.Text(alone))));
        files.Add((About, Encoding.UTF8.GetBytes(ReportAboutJson.Text(report))));
        return files;
    }

    /// <summary>The same in one ZIP file; the same report gives the same bytes.</summary>
    public static byte[] Zip(Report report)
    {
        using var bytes = new MemoryStream();
        using (var archive = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, content) in Files(report))
            {
                var entry = archive.CreateEntry(name);
                entry.LastWriteTime = new DateTimeOffset(report.Made.ToDateTimeUnspecified(), TimeSpan.Zero);
                using var stream = entry.Open();
                stream.Write(content);
            }
        }
        return bytes.ToArray();
    }
}
