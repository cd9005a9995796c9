using System.Diagnostics;
using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.Notebook.Tests.Journal;

/// <summary>Tests that measure time: beside no others.</summary>
[CollectionDefinition(nameof(Timed), DisableParallelization = true)]
public sealed class Timed;

/// <summary>A racer's life: a thousand days, a hundred thousand entries.</summary>
[Collection(nameof(Timed))]
public sealed class ThousandDays(ITestOutputHelper output)
{
    /// <summary>Six runs a day, some seventeen entries a run.</summary>
    internal static StoredEntry[] Entries(int days)
    {
        List<StoredEntry> all = [];
        int things = 0;
        Guid phone = Taps.Id(1), clock = Taps.Id(2);
        Guid[] options = [.. Enumerable.Range(10, 6).Select(Taps.Id)];
        Guid Say(string kind, Guid about, double at, Guid device, params (string, object?)[] body)
        {
            Guid id = Taps.Id(1_000_000 + all.Count);
            all.Add(new StoredEntry(new Entry(id, kind, Taps.At(at), about, null, EntryBody.Of(body)), device, all.Count + 1, Taps.At(at)));
            return id;
        }

        foreach (Guid option in options) Say(EntryKind.OptionSet, option, 0, phone, ("name", "option " + option.ToString("N")[30..]));
        for (int d = 0; d < days; d++)
        {
            Guid day = Taps.Id(10_000 + things++);
            double at = 86_400.0 * d;
            LocalDate date = new LocalDate(2026, 6, 13).PlusDays(d);
            Say(EntryKind.DaySet, day, at, phone, ("name", "evening " + d), ("date", date.ToString("uuuu-MM-dd", null)), ("utcOffsetMin", 120));
            Say(EntryKind.ClockOffset, phone, at, phone, ("ms", d % 7));
            for (int r = 0; r < 6; r++)
            {
                Guid run = Taps.Id(10_000 + things++);
                at += 1500;
                Say(EntryKind.Weather, day, at - 100, phone, ("day", day), ("airC", 25 + r));
                Say(EntryKind.RunBegin, run, at, phone, ("day", day), ("option", options[(d + r) % 6]), ("kind", "test"), ("number", r + 1));
                Say(EntryKind.RunCountdown, run, at + 1, phone, ("seconds", 9), ("driveS", 360));
                Say(EntryKind.RunGo, run, at + 10, phone);
                Say(EntryKind.RunGo, run, at + 10.3, clock);
                Say(EntryKind.RunStop, run, at + 370, phone, ("by", "horn"));
                Guid halt = Say(EntryKind.RunHalt, run, at + 378, phone);
                Say(EntryKind.Nudge, run, at + 379, phone, ("of", halt), ("seconds", -1));
                for (int s = 0; s < 3; s++)
                {
                    Guid shot = Taps.Id(10_000 + things++);
                    Say(EntryKind.Shot, shot, at + 390 + (5 * s), phone, ("run", run), ("spot", "can"), ("hold", "single"), ("surface", "tape"));
                    Say(EntryKind.ShotRead, shot, at + 450 + s, phone, ("shot", shot), ("value", 60 + s), ("unit", "c"));
                }

                Say(EntryKind.RunFan, run, at + 460, phone, ("when", "after"), ("turning", false));
                Say(EntryKind.Charge, run, at + 1400, phone, ("run", run), ("mah", 2000 + r));
            }
        }

        return [.. all];
    }

    [Fact, Trait("Suite", "long")]
    public void A_thousand_days_open_in_under_a_second_and_take_a_tap_in_milliseconds()
    {
        StoredEntry[] entries = Entries(1000);
        Stopwatch watch = new();
        NotebookFold fold = new();
        double openS = double.MaxValue;
        // The first time includes the compiler's, and any time what else the machine does: the best tells what the work takes.
        for (int i = 0; i < 5; i++)
        {
            fold = new NotebookFold();
            watch.Restart();
            fold.Add(entries);
            openS = Math.Min(openS, watch.Elapsed.TotalSeconds);
        }

        PitNotebook notebook = fold.Notebook;
        Assert.Equal((1000, 6000), (notebook.Days.Count, notebook.Runs.Count));
        watch.Restart();
        NotebookTable table = NotebookTable.Of(notebook);
        double tableS = watch.Elapsed.TotalSeconds;
        Assert.Equal((6000, 18_000), (table.Table.Runs.Count, table.Table.Runs.Sum(run => run.Readings.Count)));

        Guid run = notebook.Runs[^1].Id;
        List<double> addMs = [], viewMs = [];
        for (int i = 0; i < 200; i++)
        {
            Entry lap = new(Taps.Id(5_000_000 + i), EntryKind.RunLap, Taps.At((86_400 * 1000) + i), run, null, EntryBody.Empty);
            watch.Restart();
            PitNotebook now = fold.Add([new StoredEntry(lap, Taps.Id(1), entries.Length + i + 1, lap.At)]);
            addMs.Add(watch.Elapsed.TotalMilliseconds);
            watch.Restart();
            Assert.Equal(i + 1, now.RunsOf(now.Days[^1].Id)[^1].LapTimes.Count);
            viewMs.Add(watch.Elapsed.TotalMilliseconds);
        }

        watch.Restart();
        Entry offset = new(Taps.Id(6_000_000), EntryKind.ClockOffset, Taps.At(86_400 * 1000), Taps.Id(1), null, EntryBody.Of(("ms", 123)));
        fold.Add([new StoredEntry(offset, Taps.Id(1), entries.Length + 300, offset.At)]);
        double offsetMs = watch.Elapsed.TotalMilliseconds;
        addMs.Sort();
        viewMs.Sort();
        output.WriteLine($"{entries.Length} entries: opened in {openS:F2} s, table in {tableS:F2} s; a tap {addMs[100]:F3} ms (99 %: {addMs[198]:F2} ms), then a look at days and runs {viewMs[100]:F1} ms; a clock measurement {offsetMs:F1} ms");
        Assert.InRange(openS, 0, 1);
        Assert.InRange(addMs[100], 0, 5);
        Assert.InRange(offsetMs, 0, 100);
    }
}
