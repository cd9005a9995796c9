using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using AngleSharp.Html.Parser;
using Coolproof.Notebook.Journal;
using Coolproof.Rehearsal;

namespace Coolproof.Tests.Serving;

/// <summary>A logger's file of a made-up evening: into the notebook on the command line and on a page, its readings into the runs and out again.</summary>
public sealed class TraceCommandTests : IDisposable
{
    readonly string folder = Directory.CreateTempSubdirectory("coolproof-trace-").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    static SimulatedDay Evening { get; } = Rehearse.Day(new RehearsalSettings(4, [new("bare can", HasFan: false), new("rear blower")]) { Traced = true });

    (string Table, string Log) Files(string header = "time [s];can [°C]")
    {
        var (table, log) = (Path.Combine(folder, "evening.csv"), Path.Combine(folder, "log.csv"));
        using (var writer = new StreamWriter(table)) RehearsalFiles.WriteTable(Evening, writer);
        var rows = TrueProbe.Drawn(4).Logged(Evening, 0).Select((row, i) => string.Create(CultureInfo.InvariantCulture, $"{row.AtS + 5000:0.0};{(i == 300 ? -127 : row.ReadC):0.00}").Replace('.', ','));
        File.WriteAllText(log, $"logger, made up\n\n{header}\n{string.Join('\n', rows)}\n");
        return (table, log);
    }

    ProgramRun Run(params string[] arguments) => ProgramRun.In(new() { ["XDG_DATA_HOME"] = folder }, [.. arguments, "--store", Path.Combine(folder, "n.coolproof")]);

    [Fact]
    public void A_trace_is_kept_finds_its_runs_and_becomes_readings_once()
    {
        var (table, log) = Files();
        Assert.Equal(0, Run("import", table).ExitCode);
        var tried = Run("import", log, "--as", "trace", "--dry-run", "--json");
        Contract.Fits("import-trace", tried.Out);
        Assert.False(Directory.Exists(Path.Combine(folder, "n.coolproof.loggers")));
        var taken = Run("import", log, "--as", "trace", "--take", "--json");
        Contract.Fits("import-trace", taken.Out);
        var said = JsonNode.Parse(taken.Out)!;
        Assert.Equal(1, said["problemCount"]!.GetValue<int>());
        Assert.Contains("line 304, can [°C]: found -127", said["problems"]![0]!.GetValue<string>());
        var fit = said["fits"]![0]!;
        Assert.True(fit["sure"]!.GetValue<bool>(), taken.Out);
        Assert.Equal(Evening.Truth.Runs.Count, fit["runs"]!.AsArray().Count);
        foreach (var (run, truth) in fit["runs"]!.AsArray().Zip(Evening.Truth.Runs)) Assert.InRange(run!["goS"]!.GetValue<double>() - truth.GoS - 5000, -15, 15);
        Assert.InRange(said["readingsTaken"]!.GetValue<int>(), 4 * Evening.Truth.Runs.Count, 6 * Evening.Truth.Runs.Count);
        var readings = Run("export").Out.Split('\n').Count(line => line.Contains(",average,", StringComparison.Ordinal));
        Assert.Equal(said["readingsTaken"]!.GetValue<int>(), readings);
        var again = Run("import", log, "--as", "trace", "--take", "--json");
        Assert.True(JsonNode.Parse(again.Out)!["there"]!.GetValue<bool>());
        Assert.Equal(readings, Run("export").Out.Split('\n').Count(line => line.Contains(",average,", StringComparison.Ordinal)));
        Assert.Single(Directory.GetFiles(Path.Combine(folder, "n.coolproof.loggers")));
    }

    // A made-up current of 25 A with the throttle and half an ampere without, from go to the end of driving by the rehearsal's truth: 25 A for so many seconds are 25/3.6 mAh each.
    [Fact]
    public void A_logged_current_tells_what_each_run_drew()
    {
        var (table, _) = Files();
        Run("import", table);
        var log = Path.Combine(folder, "current.csv");
        var drives = Evening.Truth.Runs.Zip(Evening.Table.Runs).Select(pair => (pair.First.GoS, StopS: pair.First.GoS + pair.Second.DriveS)).ToList();
        string Row(double at) => string.Create(CultureInfo.InvariantCulture, $"{at + 5000:0.0},{(drives.Any(drive => at >= drive.GoS && at < drive.StopS) ? 25 : 0.5):0.0}");
        File.WriteAllText(log, $"time [s],pack current [A]\n{string.Join('\n', Enumerable.Range(-600, (int)(10 * drives[^1].StopS) + 6000).Select(i => Row(i / 10.0)))}\n");
        var said = JsonNode.Parse(Run("import", log, "--as", "trace", "--dry-run", "--json").Out)!;
        Assert.Equal(drives.Count, said["currents"]!.AsArray().Count);
        foreach (var (current, (goS, stopS)) in said["currents"]!.AsArray().Zip(drives))
        {
            // Go of a sheet is read to the minute and found again in the trace within a few seconds.
            Assert.Equal(25 * (stopS - goS) / 3.6, current!["chargeMah"]!.GetValue<double>(), 0.03 * 25 * (stopS - goS) / 3.6);
            Assert.InRange(current["meanA"]!.GetValue<double>(), 24.2, 25);
        }
        Assert.Contains("mAh drawn, 2", Run("import", log, "--as", "trace", "--dry-run").Out);
    }

    [Fact]
    public void What_the_person_said_of_a_layout_is_remembered_for_files_with_the_same_header()
    {
        var (table, log) = Files("ticks;sensor");
        Run("import", table);
        Assert.Contains("sensor °C", Run("import", log, "--as", "trace", "--time", "ticks", "--time-in", "s", "--unit", "sensor=C").Out);
        File.AppendAllText(log, "99999,0;30,00\n");
        var next = Run("import", log, "--as", "trace").Out;
        Assert.Contains("Its layout is that of an earlier file", next);
        Assert.Contains("sensor °C", next);
    }

    [Fact]
    public void What_can_t_be_right_is_refused_with_its_place_and_nothing_is_kept()
    {
        var (table, log) = Files();
        Assert.Equal(2, Run("import", log, "--as", "trace").ExitCode); // no notebook yet
        Run("import", table);
        foreach (var (arguments, said) in new (string[], string)[]
        {
            (["--time", "clock"], "one of time, can"), (["--day", "June"], "there is no such day"), (["--unit", "can"], "equals sign"), (["--step", "-1"], "more than 0"),
        })
        {
            var run = Run(["import", log, "--as", "trace", .. arguments]);
            Assert.True(run.ExitCode == 2 && run.Error.Contains(said, StringComparison.Ordinal), run.Error);
        }
        Assert.Contains("only with --as trace", Run("import", table, "--take").Error);
        var broken = Path.Combine(folder, "words.csv");
        File.WriteAllText(broken, "nothing but words\nand more of them\n");
        var refused = Run("import", broken, "--as", "trace");
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("no rows of numbers", refused.Error);
        Assert.False(Directory.Exists(Path.Combine(folder, "n.coolproof.loggers")));
    }

    [Fact]
    public void A_backup_brings_the_trace_to_another_machine_and_says_which_it_lacks()
    {
        var (table, log) = Files();
        Run("import", table);
        Run("import", log, "--as", "trace", "--take");
        var kept = Assert.Single(Directory.GetFiles(Path.Combine(folder, "n.coolproof.loggers")));
        var backup = Path.Combine(folder, "stick.coolproof");
        var said = Run("backup", backup, "--json");
        Contract.Fits("backup", said.Out);
        Assert.Equal((1, 0), (JsonNode.Parse(said.Out)!["traceFiles"]!.GetValue<int>(), JsonNode.Parse(said.Out)!["tracesMissing"]!.AsArray().Count));

        // Another machine: another folder, nothing in it.
        var other = Directory.CreateDirectory(Path.Combine(folder, "other")).FullName;
        ProgramRun There(params string[] arguments) => ProgramRun.In(new() { ["XDG_DATA_HOME"] = other }, [.. arguments, "--store", Path.Combine(other, "n.coolproof")]);
        Assert.Contains("and 1 file of traces of", There("restore", backup).Out);
        Assert.Equal(File.ReadAllBytes(kept), File.ReadAllBytes(Path.Combine(other, "n.coolproof.loggers", Path.GetFileName(kept))));
        var again = JsonNode.Parse(There("import", log, "--as", "trace", "--json").Out)!;
        Assert.True(again["there"]!.GetValue<bool>());

        File.Delete(kept);
        var without = Run("backup", Path.Combine(folder, "without.coolproof"));
        Assert.Equal(0, without.ExitCode);
        Assert.Contains("Not in it, since their files are not on this machine: log.csv.", without.Out);
    }

    [Fact]
    public async Task On_its_page_one_tap_takes_the_readings_and_another_takes_them_out()
    {
        var (_, log) = Files();
        await using var pit = await PitServer.StartAsync();
        var entries = TableImport.Of(Evening.Table);
        await pit.Store.AppendAsync(Guid.CreateVersion7(), entries, TestContext.Current.CancellationToken);
        var day = entries.First(entry => entry.Kind == EntryKind.DaySet).About;
        CookieContainer cookies = new();
        cookies.SetCookies(pit.Address, pit.CookieOf("logger"));
        using HttpClient client = new(new SocketsHttpHandler { CookieContainer = cookies }) { BaseAddress = pit.Address };
        async Task<string> GetAsync(string path)
        {
            await pit.Get<Board.NotebookBoard>().ReachAsync(await pit.Store.CursorAsync(TestContext.Current.CancellationToken), TestContext.Current.CancellationToken);
            return await client.GetStringAsync(path, TestContext.Current.CancellationToken);
        }
        static string Token(string page) => new HtmlParser().ParseDocument(page).QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        async Task<HttpResponseMessage> BringAsync(byte[] bytes)
        {
            using MultipartFormDataContent form = new() { { new StringContent(Token(await GetAsync($"/traces/{day}"))), "__RequestVerificationToken" }, { new ByteArrayContent(bytes), "file", "log.csv" } };
            return await client.PostAsync($"/trace-file/{day}", form, TestContext.Current.CancellationToken);
        }

        var refused = await BringAsync(Encoding.UTF8.GetBytes("words\nonly\n"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("no rows of numbers", await refused.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        var brought = await BringAsync(await File.ReadAllBytesAsync(log, TestContext.Current.CancellationToken));
        var place = brought.RequestMessage!.RequestUri!.AbsolutePath;
        Assert.StartsWith("/trace/", place);
        var page = await GetAsync(place);
        var form = new HtmlParser().ParseDocument(page).QuerySelector("form[action$='/take']")!;
        Assert.Contains("It holds 4 runs", page);
        Assert.Contains("found -127", page);
        Dictionary<string, string> tap = new() { ["__RequestVerificationToken"] = Token(page), ["ahead"] = form.QuerySelector("input[name=ahead]")!.GetAttribute("value")! };
        await client.PostAsync(form.GetAttribute("action"), new FormUrlEncodedContent(tap), TestContext.Current.CancellationToken);
        Assert.Contains("readings taken from log.csv", Flat(await GetAsync(place), "h1"), StringComparison.OrdinalIgnoreCase);
        var notebook = pit.Get<Board.NotebookBoard>().Notebook;
        Assert.All(notebook.RunsOf(day), run => Assert.InRange(run.Shots.Count(shot => shot.Trace is not null), 4, 6));
        Assert.Contains("<svg", await GetAsync($"/run/{notebook.RunsOf(day)[0].Id}"));
        await client.PostAsync(place + "/out", new FormUrlEncodedContent(new Dictionary<string, string> { ["__RequestVerificationToken"] = Token(await GetAsync(place)) }), TestContext.Current.CancellationToken);
        Assert.Contains("It holds 4 runs", Flat(await GetAsync(place), "h1"));
        Assert.All(pit.Get<Board.NotebookBoard>().Notebook.RunsOf(day), run => Assert.DoesNotContain(run.Shots, shot => shot.Trace is not null));
        Assert.NotEqual(HttpStatusCode.OK, (await pit.Stranger.GetAsync(place, TestContext.Current.CancellationToken)).StatusCode);
    }

    static string Flat(string page, string selector) => new HtmlParser().ParseDocument(page).QuerySelector(selector)!.TextContent;
}
