using System.Globalization;
using Coolproof.Screen;
using Coolproof.Thermal;
using Coolproof.Traces.Import;

namespace Coolproof.Commands;

/// <summary>What `--lap` gave: one of the two.</summary>
/// <param name="Paced">Straights and corners as they were paced out.</param>
/// <param name="Logged">A logger's speed, with laps in it.</param>
internal sealed record GivenLap(Track? Paced, LoggedSpeed? Logged);

/// <summary>A lap as it is paced out, a CSV with a row for each straight and corner, or a logger's file with a speed (docs/gear.md). Every row of the first that can't be right is listed.</summary>
internal static class LapFile
{
    const int MostBytes = 1 << 20, MostListed = 20, LongestHeader = 4096;
    const string Header = "a header with the columns length_m, radius_m and turn_deg";

    /// <summary>The lap; null when it can't be used, which has then been said.</summary>
    public static GivenLap? Read(string path, Terminal terminal)
    {
        try
        {
            if (!IsPaced(path))
            {
                using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, 0, FileOptions.SequentialScan);
                return new(null, LoggedSpeed.Of(stream));
            }
            if (new FileInfo(path).Length > MostBytes) return Refused(path, ["it is longer than a lap can be: expected a row for each straight and corner."], terminal);
            var (parts, problems) = Parts(File.ReadAllLines(path));
            if (problems.Count == 0 && Track.Refusal(parts) is { } refused) problems = [refused];
            return problems.Count == 0 ? new(new Track(parts), null) : Refused(path, problems, terminal);
        }
        catch (TraceRefusedException cause)
        {
            return Refused(path, [$"{cause.Problem}.", $"A lap is a logger's file with time and speed, or {Header}."], terminal);
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refused(path, [$"it can't be read: {cause.Message}"], terminal);
        }
    }

    // By its first line, of which a file without lines has more than is looked at.
    static bool IsPaced(string path)
    {
        using StreamReader reader = new(path);
        var first = new char[LongestHeader];
        var header = new string(first, 0, reader.ReadBlock(first)).Split('\n')[0].ToLowerInvariant();
        return header.Contains("length_m", StringComparison.Ordinal) || header.Contains("radius_m", StringComparison.Ordinal);
    }

    static (List<TrackPart> Parts, List<string> Problems) Parts(string[] lines)
    {
        List<TrackPart> parts = [];
        List<string> problems = [];
        var separator = lines.Length > 0 && lines[0].Contains(';') ? ';' : ',';
        var header = lines.Length == 0 ? [] : lines[0].Split(separator).Select(cell => cell.Trim().ToLowerInvariant()).ToList();
        int length = header.IndexOf("length_m"), radius = header.IndexOf("radius_m"), turn = header.IndexOf("turn_deg");
        if (length < 0 || radius < 0) return (parts, [$"line 1: expected {Header}."]);
        for (var i = 1; i < lines.Length; i++)
        {
            if (lines[i].Trim().Trim(separator).Length == 0) continue;
            var cells = lines[i].Split(separator);
            if (Figure(length, out var m) && Figure(radius, out var r) && Figure(turn, out var deg))
            {
                if (double.IsNaN(r) && !double.IsNaN(m)) parts.Add(TrackPart.Straight(m));
                else if (!double.IsNaN(r) && !double.IsNaN(deg)) parts.Add(TrackPart.Corner(r, deg));
                else if (!double.IsNaN(r) && !double.IsNaN(m)) parts.Add(new(m, r));
                else problems.Add($"line {i + 1}: expected a length for a straight, or a radius with an angle turned (or a length) for a corner.");
            }
            else
            {
                problems.Add($"line {i + 1}: {lines[i].Trim()}: expected figures in metres and degrees, like 12.5, above 0.");
            }

            bool Figure(int column, out double value)
            {
                value = double.NaN;
                if (column < 0 || column >= cells.Length || cells[column].Trim().Length == 0) return true;
                return double.TryParse(separator == ';' ? cells[column].Trim().Replace(',', '.') : cells[column].Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value) && value > 0;
            }
        }
        return (parts, problems);
    }

    static GivenLap? Refused(string path, List<string> problems, Terminal terminal)
    {
        terminal.Error.WriteLine($"coolproof gear: the lap in {Cells.Clean(path)} can't be used as it stands. Nothing was done.");
        foreach (var problem in problems.Take(MostListed)) terminal.Error.WriteLine($"  {Cells.Clean(problem)}");
        return null;
    }
}
