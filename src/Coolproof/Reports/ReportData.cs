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

    /// <summary>Question, version, seed, options, gun checks, days.</summary>
    public const string About = "about.json";

    /// <summary>The files by name.</summary>
    public static IReadOnlyList<(string Name, byte[] Bytes)> Files(Report report)
    {
        List<(string, byte[])> files = [(Readings, report.Subject.Csv), (Verdict, Encoding.UTF8.GetBytes(CompareJson.Text(report.Verdict)))];
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
