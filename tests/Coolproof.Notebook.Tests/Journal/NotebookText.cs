using System.Globalization;
using System.Text;
using Coolproof.Notebook.Journal;

namespace Coolproof.Notebook.Tests.Journal;

/// <summary>All that a notebook says as text, so that two can be compared to the letter.</summary>
internal static class NotebookText
{
    public static string Of(PitNotebook notebook, bool history)
    {
        StringBuilder text = new();
        foreach (NotedOption option in notebook.Options)
        {
            Thing(text, option);
            foreach (NotedPart part in option.Parts) Thing(text, part);
            foreach (NotedPhoto photo in notebook.PhotosOf(option.Id)) Thing(text, photo);
        }

        foreach (NotedDevice device in notebook.Devices) Thing(text, device).Append(device.OffsetMs).Append('\n');
        Thing(text, notebook.Settings);
        foreach (NotedDay day in notebook.Days)
        {
            Thing(text, day);
            foreach (NotedWeather weather in day.Weather) text.Append(weather).Append('\n');
            foreach (SameRunOffer offer in notebook.Offers(day.Id)) text.Append(offer).Append('\n');
            foreach (LooseEnd end in LooseEnds.Of(notebook, day, Taps.At(10_000))) text.Append(end).Append('\n');
        }

        foreach (NotedRun run in notebook.Runs) Run(text, run, history);
        if (history) History(text, notebook);
        return text.ToString();
    }

    private static void Run(StringBuilder text, NotedRun run, bool history)
    {
        Thing(text, run).Append(CultureInfo.InvariantCulture, $"  also {string.Join(' ', run.OtherIds)} by {string.Join(' ', run.Devices.Order())} number {run.Number}\n");
        text.Append(CultureInfo.InvariantCulture, $"  {run.Countdown} drive {run.DriveS} roll-in {run.RollInS} stood {run.StoodS} laps {string.Join(' ', run.LapTimes)} charge {run.ChargeBackMah}\n");
        text.Append(CultureInfo.InvariantCulture, $"  abandoned {run.Abandoned} {run.AbandonedBecause} fan {run.FanTurnedBefore} {run.FanTurnedAfter} {run.FanAfterAnswered} step {RunNow.Of(run, Taps.At(30))}\n");
        foreach (ClockedInstant? stamp in (ClockedInstant?[])[run.Go, run.Stop, run.Halt]) text.Append(CultureInfo.InvariantCulture, $"  {stamp?.At} by {stamp?.Counted.Entry} {stamp?.SpreadS} {stamp?.Chosen} beside {string.Join(' ', stamp?.Others.Select(other => other.Entry) ?? [])}\n");
        foreach (RunEvent stamp in run.Events.Where(stamp => history || stamp.Standing != EventStanding.TakenBack)) text.Append(CultureInfo.InvariantCulture, $"  {stamp}\n");
        foreach (NotedShot shot in run.Shots) Thing(text, shot).Append(CultureInfo.InvariantCulture, $"  {shot.At} {shot.ReadC} {shot.Photo} {run.StopToReadS(shot)}\n");
        foreach (NotedCoolDown cooling in run.CoolDowns) Thing(text, cooling).Append(CultureInfo.InvariantCulture, $"  {cooling.Begin} {cooling.End}\n");
    }

    private static void History(StringBuilder text, PitNotebook notebook)
    {
        foreach (Guid thing in notebook.Options.Select(option => option.Id).Concat(notebook.Runs.Select(run => run.Id)).Concat(notebook.Days.Select(day => day.Id)))
        {
            foreach (HistoryLine line in notebook.History(thing)) text.Append(CultureInfo.InvariantCulture, $"h {line.Stored.Id} {line.Said} {line.At} {line.Stands} {line.Corrected} {line.Before}\n");
        }
    }

    private static StringBuilder Thing(StringBuilder text, NotedThing thing) =>
        text.Append(CultureInfo.InvariantCulture, $"{thing.GetType().Name} {thing.Id} {thing.Fields} {thing.Since} {thing.Removed}\n");
}
