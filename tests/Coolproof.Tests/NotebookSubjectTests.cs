using System.Text;
using System.Text.Json.Nodes;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Reports;
using Coolproof.Words;
using NodaTime;

namespace Coolproof.Tests;

/// <summary>What a report takes from the notebook, invented here: what the table can't say is said beside it.</summary>
public sealed class NotebookSubjectTests
{
    static readonly Instant Start = Instant.FromUtc(2026, 6, 13, 16, 0);

    readonly Guid day = Guid.CreateVersion7(), bare = Guid.CreateVersion7(), fan = Guid.CreateVersion7(), gun = Guid.CreateVersion7();

    [Fact]
    public void A_drive_that_no_run_notes_is_among_the_words_that_judge_it_again()
    {
        var subject = Subject();
        Assert.Equal(4, subject.Table.Runs.Count);
        Assert.DoesNotContain("drive_s", Encoding.UTF8.GetString(subject.Csv));
        Assert.All(subject.Table.Runs, run => Assert.Equal((300, true), (run.DriveS, run.DriveAssumed)));
        Assert.Equal(["compare", "r.csv", "--json", "--random-seed", "1", "--same-within", "2K", "--drive", "300s", "--gun-checks", "about.json"], subject.CompareWords("r.csv"));
    }

    [Fact]
    public async Task Gun_checks_options_and_what_was_left_out_stand_beside_the_table()
    {
        var subject = Subject();
        var verdict = Samples.Of(2);
        var report = new Report(subject, verdict with { Options = [verdict.Options[0], verdict.Options[1] with { Name = "Clamp with a fan" }] }, null, new LocalDate(2026, 6, 14));
        var about = JsonNode.Parse(Json.ReportAboutJson.Text(report))!;
        Contract.Fits("report-about", about.ToJsonString());
        Assert.Equal("{\"gun\":\"Gun A\",\"way\":\"ice\",\"readC\":1.2,\"trueC\":0,\"emissivitySet\":0.95}", about["gunChecks"]![0]!.ToJsonString());
        Assert.Equal((1, 34.5), ((int)about["options"]![1]!["fans"]!, (double)about["options"]![1]!["price"]!));
        var html = await ReportHtml.OfAsync(report);
        Assert.Contains("without a cooling option", html);
        Assert.Contains("1 fan", html);
        Assert.Contains("34.50 coins", html);
    }

    [Fact]
    public void Without_a_run_there_is_nothing_to_report()
    {
        var notebook = PitNotebook.Of([Stored(EntryKind.DaySet, day, ("date", "2026-06-13"))]);
        Assert.Null(NotebookSubject.Of(notebook, day, TemperatureUnitChoice.Celsius, new CostWords("", MassUnitChoice.Gram)));
        Assert.Null(NotebookSubject.Of(notebook, Guid.CreateVersion7(), TemperatureUnitChoice.Celsius, new CostWords("", MassUnitChoice.Gram)));
    }

    ReportSubject Subject()
    {
        List<StoredEntry> entries =
        [
            Stored(EntryKind.OptionSet, bare, ("name", "Bare can"), ("fans", 0)), Stored(EntryKind.OptionSet, fan, ("name", "Clamp with a fan"), ("fans", 1), ("price", 34.5)),
            Stored(EntryKind.InstrumentSet, gun, ("name", "Gun A"), ("type", "gun")),
            Stored(EntryKind.GunCheckSet, Guid.CreateVersion7(), ("instrument", gun), ("way", "ice"), ("readC", 1.2), ("trueC", 0.0), ("emissivitySet", 0.95)),
            Stored(EntryKind.DaySet, day, ("date", "2026-06-13"), ("driveS", 300), ("instrument", gun)),
        ];
        for (var run = 0; run < 5; run++) entries.AddRange(Run(run, run == 4 ? null : run % 2 == 0 ? bare : fan));
        return NotebookSubject.Of(PitNotebook.Of(entries), day, TemperatureUnitChoice.Celsius, new CostWords("coins", MassUnitChoice.Gram))!;
    }

    IEnumerable<StoredEntry> Run(int place, Guid? option)
    {
        Guid run = Guid.CreateVersion7(), shot = Guid.CreateVersion7();
        (string, object?)[] fields = [("day", day), ("number", place + 1), ("typed", true)];
        yield return Stored(EntryKind.RunBegin, run, option is { } fitted ? [.. fields, ("option", fitted)] : fields);
        yield return Stored(EntryKind.Shot, shot, ("run", run));
        yield return Stored(EntryKind.ShotRead, shot, ("shot", shot), ("value", 70.0 + place), ("unit", "c"));
    }

    static StoredEntry Stored(string kind, Guid about, params (string, object?)[] fields) =>
        new(new Entry(Guid.CreateVersion7(), kind, Start, about, null, EntryBody.Of(fields)), Serving.PitServer.Device, 1, Start);
}
