using System.Text.Json;

namespace Coolproof.Evidence.Tests.Causes;

/// <summary>Days already judged, a line of JSON each below the builds that judged them, so that a long run that was cut short goes on where it stopped.</summary>
internal sealed class CauseFile
{
    private readonly Lock _lock = new();
    private readonly string _path;
    private readonly Dictionary<long, CausePartFound[]> _days = [];

    private sealed record Line(long Day, CausePartFound[] Parts);

    /// <summary>Opens a file or begins it; a last line that was cut short is dropped.</summary>
    /// <exception cref="InvalidDataException">Another build judged its days.</exception>
    public CauseFile(string path)
    {
        _path = path;
        string text = File.Exists(path) ? File.ReadAllText(path) : "";
        string[] whole = text[..(text.LastIndexOf('\n') + 1)].Split('\n', StringSplitOptions.RemoveEmptyEntries);
        if (whole.Length > 0 && whole[0] != Builds)
            throw new InvalidDataException($"{path}: its days were judged by another build; name a new file.");
        foreach (Line line in whole.Skip(1).Select(l => JsonSerializer.Deserialize<Line>(l)!))
            _days[line.Day] = line.Parts;
        File.WriteAllText(path, string.Concat(whole.DefaultIfEmpty(Builds).Select(l => l + "\n")));
    }

    // What a day's parts depend on: the judge with all below it, the evenings, and the true split.
    private static string Builds { get; } = string.Join(' ', new[] { typeof(Judge), typeof(Sampling.RandomStream), typeof(Thermal.ThermalClass), typeof(Rehearsal.Rehearse), typeof(CauseDay) }.Select(t => t.Module.ModuleVersionId));

    /// <summary>The parts of a day: those of the file, else as found now, and kept.</summary>
    public CausePartFound[] Of(long day, Func<long, IReadOnlyList<CausePartFound>> find)
    {
        lock (_lock)
        {
            if (_days.TryGetValue(day, out CausePartFound[]? kept))
                return kept;
        }
        CausePartFound[] found = [.. find(day)];
        lock (_lock)
        {
            _days[day] = found;
            File.AppendAllText(_path, JsonSerializer.Serialize(new Line(day, found)) + "\n");
        }
        return found;
    }
}
