using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>The air of a run.</summary>
/// <param name="AirC">Air in the shade near the track, °C.</param>
/// <param name="By">Where that came from.</param>
/// <param name="AgeS">From the nearest note to the run's middle, s; 0 where it was typed for the run.</param>
public sealed record RunAir(double AirC, AirSource By, double AgeS)
{
    /// <summary>
    /// As typed for the run; else between the notes before and after it, in proportion of time; else the nearest within <see cref="LooseEnds.AirHolds"/>; null when there is none.
    /// </summary>
    public static RunAir? Of(NotedRun run, NotedDay? day)
    {
        ArgumentNullException.ThrowIfNull(run);
        if (run.Fields.Number("airC") is { } typed) return new RunAir(typed, NotedWords.Choice<AirSource>(Tables.Field.AirBy, run.Fields.Text("airBy")) ?? AirSource.Thermometer, 0);
        if (day is null || run.Go is not { } go) return null;
        Instant middle = (run.Stop ?? run.Halt) is { } end && end.At > go.At ? go.At + ((end.At - go.At) / 2) : go.At;
        NotedWeather? before = day.Weather.LastOrDefault(weather => weather.AirC is not null && weather.At <= middle);
        NotedWeather? after = day.Weather.FirstOrDefault(weather => weather.AirC is not null && weather.At > middle);
        NotedWeather? nearest = before is null || (after is not null && after.At - middle < middle - before.At) ? after : before;
        if (nearest is null) return null;
        Duration age = nearest.At > middle ? nearest.At - middle : middle - nearest.At;
        if (age > LooseEnds.AirHolds) return null;
        if (before is null || after is null || before.AirBy != after.AirBy) return new RunAir(nearest.AirC!.Value, nearest.AirBy, age.TotalSeconds);
        double share = (middle - before.At) / (after.At - before.At);
        return new RunAir(before.AirC!.Value + (share * (after.AirC!.Value - before.AirC.Value)), before.AirBy, age.TotalSeconds);
    }
}
