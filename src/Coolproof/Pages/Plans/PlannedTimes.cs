using Coolproof.Advice.Orders;
using Coolproof.Notebook.Journal;

namespace Coolproof.Pages.Plans;

/// <summary>When the runs of a kept plan are to go.</summary>
internal static class PlannedTimes
{
    /// <summary>Go of each planned run that fits, min after midnight, by what the day allows; nothing where the day has no hours.</summary>
    public static IReadOnlyList<double> Of(PitNotebook notebook, NotedDay day)
    {
        if (day.FromMin is not { } from || day.ToMin is null) return [];
        var asked = new PlanAsked(QueryCollection.Empty, notebook, day, null);
        var places = day.Plan.Select(option => asked.Options.ToList().FindIndex(one => one.Id == option)).ToArray();
        if (!asked.Understood || places.Contains(-1)) return [];
        return [.. DaySchedule.Of(places, asked.Limits()).StartS.Select(start => from + start / 60)];
    }
}
