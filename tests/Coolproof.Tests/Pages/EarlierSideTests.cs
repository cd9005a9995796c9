using System.Globalization;
using Coolproof.Board;
using Coolproof.Reports;
using Coolproof.Tests.Serving;

namespace Coolproof.Tests.Pages;

/// <summary>Earlier days on a day's verdict: beside its own answer, before it only where somebody asked.</summary>
public class EarlierSideTests
{
    [Fact]
    public async Task Earlier_days_stand_beside_the_days_own_answer_and_before_it_after_a_tap_that_is_remembered()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var (_, day) = (await KeptAsync(reader, "Monday", 80, 74), await KeptAsync(reader, "Tuesday", 80.5, 74.5));
        var state = await TogetherAsync(pit, day);
        await reader.GoAsync($"/verdict/{day}");
        var own = reader.Heading;
        Assert.Equal("With your earlier days", reader.Page.QuerySelector("#earlier h2")!.TextContent);
        Assert.Contains("With an earlier day (Monday):", reader.Text);
        Assert.Contains("cooler", reader.Page.QuerySelector("#earlier")!.TextContent);
        Assert.Contains("with your earlier days, ", reader.Text);
        Assert.Contains("from this day alone.", reader.Text);
        Assert.Equal(2, reader.Page.QuerySelectorAll("#earlier-table tbody tr").Length);
        Assert.Contains("2 runs", reader.Page.QuerySelectorAll("#earlier-table td")[0].TextContent);
        Assert.Contains("4 runs", reader.Page.QuerySelectorAll("#earlier-table td")[1].TextContent);
        Assert.Null(reader.Page.QuerySelector("#stands-out, #with-earlier"));
        Assert.True(Sd(state.Earlier!.Together!.Verdict) < Sd(state.Verdict!));

        await reader.SendAsync("Put the answer with earlier days first");
        Assert.Equal($"/verdict/{day}", reader.Path);
        Assert.StartsWith("With an earlier day, as this device asks. From this day alone: ", reader.Page.QuerySelector("#with-earlier")!.TextContent);
        Assert.Contains(own.Replace('\u00a0', ' '), reader.Page.QuerySelector("#with-earlier")!.TextContent.Replace('\u00a0', ' '));
        Assert.Equal("From this day alone", reader.Page.QuerySelector("#earlier h2")!.TextContent);
        await reader.GoAsync($"/verdict/{day}"); // remembered
        Assert.NotNull(reader.Page.QuerySelector("#with-earlier"));
        await reader.SendAsync("Put the day’s own answer first");
        Assert.Equal(own, reader.Heading);
        Assert.Null(reader.Page.QuerySelector("#with-earlier"));
    }

    [Fact]
    public async Task A_day_that_contradicts_and_an_option_that_changed_are_pointed_out_with_the_remedy()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await KeptAsync(reader, "Monday", 84, 62);
        var day = await KeptAsync(reader, "Tuesday", 64, 84);
        await TogetherAsync(pit, day);
        await reader.GoAsync($"/verdict/{day}");
        var said = reader.Page.QuerySelector("#stands-out")!.TextContent;
        Assert.Contains("This day doesn’t agree with your earlier ones", said);
        Assert.Contains("This day contradicts the earlier ones: the can with the", said);
        Assert.Contains("A changed option is a new one", said);
        Assert.Null(reader.Page.QuerySelector("#with-earlier")); // and yet the day's own answer is the heading
    }

    [Fact]
    public async Task The_report_takes_the_pages_judgements_and_its_data_give_the_same_bytes()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var (_, day) = (await KeptAsync(reader, "Monday", 80, 74), await KeptAsync(reader, "Tuesday", 80.5, 74.5));
        var state = await TogetherAsync(pit, day);
        var subject = NotebookSubject.Of(reader.Notebook, day, Notebook.TemperatureUnitChoice.Celsius, new Words.CostWords("", Notebook.MassUnitChoice.Gram))!;
        var kept = NotebookSubject.Kept(subject, state);
        Assert.Same(state.Judgement, kept.Own);
        Assert.Same(state.Earlier!.Together, kept.Together);
        Assert.Equal(ReportKept.None, NotebookSubject.Kept(subject with { Settings = subject.Settings with { AmbientC = 31 } }, state)); // at other terms they are of no use
        // Days that can't be judged together leave the day's own answer, which says so.
        var apart = ReportJudging.Of(subject with { EarlierFirst = true }, new ReportJudges((_, _) => throw new InvalidOperationException("judged again"), (_, _, _, _) => new Evidence.NotConverged("the day as a whole", "The tries did not agree.", "Drive on.")), kept with { Together = null });
        Assert.Null(((Evidence.Judged)apart.Whole).Earlier);
        Assert.Contains("this answer is from the table alone (the day as a whole: The tries did not agree).", apart.NotTogether);
        var folder = Directory.CreateTempSubdirectory("coolproof-kept-").FullName;
        try
        {
            var judging = ReportJudging.Of(subject, new ReportJudges((_, _) => throw new InvalidOperationException("judged again"), (_, _, _, _) => throw new InvalidOperationException("judged again")), kept);
            foreach (var (name, bytes) in ReportData.Files(new Report(subject, ((Evidence.Judged)judging.Whole).Verdict, judging.Alone, new NodaTime.LocalDate(2026, 6, 14)) { Wider = judging.Wider }))
                await File.WriteAllBytesAsync(Path.Combine(folder, name), bytes, TestContext.Current.CancellationToken);
            string At(string name) => Path.Combine(folder, name);
            Assert.Equal(ProgramRun.Good([.. subject.CompareWords(At("readings.csv"))]), await File.ReadAllTextAsync(At("verdict.json"), TestContext.Current.CancellationToken));
            Assert.Equal(ProgramRun.Good([.. subject.CompareWords(At("readings.csv"), At("earlier-1.csv"))]), await File.ReadAllTextAsync(At("with-earlier.json"), TestContext.Current.CancellationToken));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task A_day_without_earlier_ones_says_nothing_of_them()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var day = await KeptAsync(reader, "Monday", 80, 74);
        pit.Get<VerdictBoard>().WithEarlier(day);
        for (var tries = 0; tries < 600 && pit.Get<VerdictBoard>().Of(day).Verdict is null; tries++) await Task.Delay(100, TestContext.Current.CancellationToken);
        await reader.GoAsync($"/verdict/{day}");
        Assert.Null(reader.Page.QuerySelector("#earlier"));
        await reader.GoAsync($"/day/{day}"); // from where it is a tap to why its runs differ
        Assert.Equal($"/why/{day}", reader.Page.QuerySelector("#to-reasons")!.GetAttribute("href"));
        await reader.GoAsync($"/day/{await OneRunAsync(reader)}");
        Assert.Null(reader.Page.QuerySelector("#to-reasons")); // one run has nothing to be set against
    }

    static async Task<Guid> OneRunAsync(Reader reader)
    {
        await reader.GoAsync("/paper");
        await reader.SendAsync("Look through it", ("table", "day,run,option,drive_s,read_c\nalone,1,bare can,360,71\n"));
        await reader.SendAsync("Keep these readings");
        return reader.Notebook.Days.Single(day => day.Name == "alone").Id;
    }

    static double Sd(Evidence.Verdict verdict) => verdict.Pairs[0].DifferenceK.Sd;

    static async Task<Guid> KeptAsync(Reader reader, string name, double bareC, double fanC)
    {
        var rows = Enumerable.Range(0, 4).SelectMany(run => Enumerable.Range(0, 2).Select(shot => string.Create(CultureInfo.InvariantCulture,
            $"{name},{run + 1},{(run % 2 == 0 ? "bare can" : "fan")},360,8,25,{10 + (20 * shot)},{(run % 2 == 0 ? bareC : fanC) + (0.4 * run) - (2.5 * shot):0.0}")));
        await reader.GoAsync("/paper");
        await reader.SendAsync("Look through it", ("table", "day,run,option,drive_s,roll_in_s,ambient_c,stop_to_read_s,read_c\n" + string.Join('\n', rows) + "\n"));
        await reader.SendAsync("Keep these readings");
        return reader.Notebook.Days.Single(day => day.Name == name).Id;
    }

    static async Task<VerdictState> TogetherAsync(PitServer pit, Guid day)
    {
        for (var tries = 0; tries < 900; tries++)
        {
            if (pit.Get<VerdictBoard>().WithEarlier(day) is { Earlier: { Current: true, Together: not null } } state) return state;
            await Task.Delay(100, TestContext.Current.CancellationToken);
        }
        throw new TimeoutException($"never judged together: {pit.Get<VerdictBoard>().Of(day).Earlier}");
    }
}
