using System.IO.Compression;
using System.Text;
using System.Text.Json.Nodes;
using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Reports;
using NodaTime;

namespace Coolproof.Tests;

/// <summary>`coolproof report` as a process, and the report itself on verdicts with invented numbers.</summary>
public sealed class ReportTests : IDisposable
{
    static readonly string[] Evenings =
    [
        "day,run,started_at,option,drive_s,ambient_c,stop_to_read_s,read_c,note",
        "first,1,2026-06-02T17:00,bare can,360,26.5,10,71.8,", "first,1,,,,,22,70.9,", "first,2,2026-06-02T17:30,\"clamp, with a 25 mm fan\",360,26.5,10,63.5,",
        "first,3,2026-06-02T18:00,bare can,360,26,11,72.2,", "first,4,2026-06-02T18:30,\"clamp, with a 25 mm fan\",360,26,12,62.9,",
        "second,1,2026-06-09T17:00,\"clamp, with a 25 mm fan\",360,27.5,10,64.5,", "second,2,2026-06-09T17:30,bare can,360,27.5,9,73.1,all made up",
    ];

    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("coolproof-report-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void The_data_of_a_report_on_a_table_give_the_same_verdict_to_the_last_byte()
    {
        var table = Place("evenings.csv");
        File.WriteAllLines(table, Evenings);
        var said = ProgramRun.Good("report", table, "--out", Place("out"), "--no-pdf", "--json", "--at-ambient", "86F", "--same-within", "3.6F", "--random-seed", "4", "--units", "f");
        Contract.Fits("report", said);
        var files = JsonNode.Parse(said)!["files"]!.AsArray().Select(file => (string)file!).ToArray();
        Assert.Equal(["report.html", "picture-1080.png", "picture-1920.png", "picture.svg", "data/readings.csv", "data/verdict.json", "data/last-day.json", "data/about.json"], files);
        Assert.All(files, file => Assert.True(new FileInfo(Place("out", file)).Length > 100, file));
        Assert.Equal(["evenings.csv", "out"], folder.GetFileSystemInfos().Select(one => one.Name).Order(StringComparer.Ordinal)); // nothing half done is left
        Assert.Equal(File.ReadAllBytes(table), File.ReadAllBytes(Place("out", "data", "readings.csv")));
        var about = AssertSameAgain("out");
        Assert.Equal(30, (double)about["reference"]!["ambientC"]!);
        Assert.Equal(["first", "second"], about["days"]!.AsArray().Select(day => (string)day!["name"]!));
        Assert.Equal(2, (int)about["days"]![1]!["runs"]!);
        Assert.Equal("second", (string)about["lastDay"]!["name"]!);
        CompareJsonTests.AssertFits(File.ReadAllText(Place("out", "data", "last-day.json")));
        // The verdict on the last day alone stands beside the other, at the same terms.
        Assert.Equal(30, (double)JsonNode.Parse(File.ReadAllText(Place("out", "data", "last-day.json")))!["reference"]!["ambientC"]!);
        var page = System.Net.WebUtility.HtmlDecode(File.ReadAllText(Place("out", "report.html")));
        Assert.Contains("From second alone", page);
        Assert.Contains("Can by second alone, °F", page);
    }

    [Fact]
    public void The_data_of_a_report_on_a_day_of_the_notebook_do_so_too()
    {
        var store = Place("n.coolproof");
        ProgramRun.Good("import", TestFiles.Of("demo", "demo-day.csv"), "--store", store);
        ProgramRun.Good("report", "--day", "day", "--store", store, "--out", Place("out"), "--no-pdf", "--question", "Which fan?");
        Assert.Equal("Which fan?", (string)AssertSameAgain("out")["question"]!);
        Assert.Contains("Which fan?", File.ReadAllText(Place("out", "report.html")));
    }

    [Fact]
    public void Earlier_days_are_named_handed_on_and_the_day_alone_stands_beside_their_answer()
    {
        var (today, before) = (Place("today.csv"), Place("before.csv"));
        File.WriteAllLines(today, [Evenings[0], .. Evenings[6..]]);
        File.WriteAllLines(before, Evenings[..6]);
        ProgramRun.Good("report", today, "--earlier", before, "--out", Place("out"), "--no-pdf");
        Assert.Equal(["about.json", "earlier-1.csv", "last-day.json", "readings.csv", "verdict.json"], Names("out"));
        Assert.Equal(File.ReadAllBytes(before), File.ReadAllBytes(Place("out", "data", "earlier-1.csv")));
        var about = AssertSameAgain("out");
        Assert.Contains("earlier-1.csv", about["compare"]!.AsArray().Select(word => (string)word!));
        Assert.Equal((true, 1, 4), ((bool)about["earlier"]!["first"]!, (int)about["earlier"]!["days"]!, (int)about["earlier"]!["runs"]!));
        Assert.Equal(ProgramRun.Good("compare", today, "--json"), File.ReadAllText(Place("out", "data", "last-day.json")));
        var page = System.Net.WebUtility.HtmlDecode(File.ReadAllText(Place("out", "report.html")));
        Assert.Contains("From second alone", page);
        Assert.Contains("Readings of 2 days, 2 to 9 June 2026", page);
        var twice = ProgramRun.Of("report", today, "--earlier", today, "--out", Place("not"), "--no-pdf");
        Assert.Equal(2, twice.ExitCode);
        Assert.Contains("would count twice", twice.Error);
    }

    [Fact]
    public void A_day_of_the_notebook_keeps_its_own_answer_and_the_one_with_earlier_days_stands_beside_it()
    {
        var store = Place("n.coolproof");
        foreach (var (name, rows) in new[] { ("before.csv", Evenings[..6]), ("today.csv", [Evenings[0], .. Evenings[6..]]) })
        {
            File.WriteAllLines(Place(name), rows);
            ProgramRun.Good("import", Place(name), "--store", store);
        }
        ProgramRun.Good("report", "--day", "second", "--store", store, "--out", Place("out"), "--no-pdf");
        Assert.Equal(["about.json", "earlier-1.csv", "readings.csv", "verdict.json", "with-earlier.json"], Names("out"));
        var about = AssertSameAgain("out");
        Assert.DoesNotContain("--earlier", about["compare"]!.AsArray().Select(word => (string)word!));
        Assert.False((bool)about["earlier"]!["first"]!);
        var words = about["earlier"]!["compare"]!.AsArray().Select(word => word!.ToString()).Select(word => word.EndsWith(".csv", StringComparison.Ordinal) ? Place("out", "data", word) : word);
        Assert.Equal(File.ReadAllText(Place("out", "data", "with-earlier.json")), ProgramRun.Good([.. words]));
        Assert.Contains("With an earlier day", System.Net.WebUtility.HtmlDecode(File.ReadAllText(Place("out", "report.html"))));
    }

    string[] Names(string report) => [.. Directory.EnumerateFiles(Place(report, "data")).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    [Fact]
    public void What_is_asked_wrongly_is_said_and_nothing_is_written()
    {
        Directory.CreateDirectory(Place("there"));
        foreach (var (words, said) in new (string[], string)[]
        {
            (["report"], "expected a readings table, or --day"),
            (["report", "a.csv", "--day", "b"], "expected a readings table, or --day"),
            (["report", TestFiles.Of("demo", "demo-day.csv"), "--out", Place("there")], "is there already"),
            (["report", Place("nowhere.csv"), "--out", Place("out")], "there is no such file"),
            (["report", "--day", "x", "--store", Place("no.coolproof"), "--out", Place("out")], "there is no notebook"),
        })
        {
            var run = ProgramRun.Of(words);
            Assert.True(run.ExitCode == 2, run.Out);
            Assert.Contains(said, run.Error);
        }
        Assert.Equal(["there"], folder.GetFileSystemInfos().Select(one => one.Name));
        Assert.Empty(Directory.GetFileSystemEntries(Place("there")));
    }

    [Fact]
    public async Task Without_a_browser_the_failure_says_what_to_do_instead()
    {
        var trouble = await Assert.ThrowsAsync<PdfException>(() => PdfPrinter.PrintAsync("<p>x</p>", _ => folder.FullName, TestContext.Current.CancellationToken));
        Assert.Contains("there is no Chromium on this machine", trouble.Reason);
        Assert.Contains("Open report.html in any browser and print it", trouble.Remedy);
        // One that starts and makes nothing, with its own last words.
        var broken = Place("chromium");
        File.WriteAllText(broken, "#!/bin/sh\necho no display for a picture >&2\nexit 1\n");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(broken, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        trouble = await Assert.ThrowsAsync<PdfException>(() => PdfPrinter.PrintAsync("<p>x</p>", _ => folder.FullName, TestContext.Current.CancellationToken));
        Assert.Contains("no display for a picture", trouble.Reason);
    }

    [Fact]
    public void Where_no_PDF_can_be_made_the_other_files_are_written_and_it_is_said()
    {
        var table = Place("evening.csv");
        File.WriteAllLines(table, Evenings[..6]);
        var run = ProgramRun.In(new() { ["PATH"] = folder.FullName }, "report", table, "--out", Place("out"));
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("there is no Chromium", run.Error);
        Assert.Contains("The other files are written.", run.Error);
        Assert.True(File.Exists(Place("out", "report.html")));
        Assert.Empty(Directory.GetFiles(Place("out"), "*.pdf"));
    }

    [Fact]
    public async Task Names_and_notes_with_markup_are_shown_as_text()
    {
        const string Evil = "<script>alert(1)</script><img src=x onerror=alert(2)> & \"fan\"";
        var verdict = Samples.Of(3);
        verdict = verdict with
        {
            Options = [verdict.Options[0] with { Name = Evil }, .. verdict.Options.Skip(1)],
            Pairs = [.. verdict.Pairs.Select(pair => pair.A == verdict.Options[0].Name ? pair with { A = Evil } : pair)],
            Runs = [verdict.Runs[0] with { Option = Evil, Day = Evil, Outlier = Evil }, .. verdict.Runs.Skip(1)],
            Warnings = [Evil],
        };
        var html = await ReportHtml.OfAsync(Of(verdict) with { Subject = Subject(verdict) with { Asked = Evil } });
        Assert.DoesNotContain("<script", html);
        Assert.DoesNotContain("<img src=x", html);
        Assert.Contains("&lt;script&gt;alert(1)", html);
    }

    [Fact]
    public async Task The_page_says_all_that_a_reader_needs_and_asks_for_nothing()
    {
        var report = Of(Samples.Of(6)) with { Alone = new DayAlone("evening 2", null, "One run is not enough.") };
        var html = await ReportHtml.OfAsync(report);
        string[] wanted =
        [
            "made up", "random seed 1", $"Coolproof {Report.Version}", "26 November 2026", "9 June 2026", "power off first", "That day alone gives no verdict: One run is not enough.",
            "The delay was not noted for 4 of 18 runs",
        ];
        Assert.All(wanted, said => Assert.Contains(said, html));
        var method = html[html.IndexOf("<ol class=\"method\">", StringComparison.Ordinal)..];
        Assert.Equal(6, method[..method.IndexOf("</ol>", StringComparison.Ordinal)].Split("<li>").Length - 1);
        foreach (var fetched in new[] { "src=\"http", "href=\"http", "url(http", "<link", "<script", "@import" }) Assert.DoesNotContain(fetched, html);
        Assert.Equal(html, await ReportHtml.OfAsync(report)); // the same report is the same page
    }

    [Fact]
    public void The_data_in_one_file_are_the_same_bytes_each_time()
    {
        var report = Of(Samples.Of(4));
        var zip = ReportData.Zip(report);
        Assert.Equal(zip, ReportData.Zip(report));
        using var archive = new ZipArchive(new MemoryStream(zip));
        Assert.Equal(["readings.csv", "verdict.json", "about.json"], archive.Entries.Select(entry => entry.Name));
        using var reader = new StreamReader(archive.GetEntry("about.json")!.Open());
        Contract.Fits("report-about", reader.ReadToEnd());
    }

    [Theory]
    [InlineData("2026-06-09", "2026-06-09", "Readings of 9 June 2026")]
    [InlineData("2026-06-02", "2026-06-09", "Readings of 2 to 9 June 2026")]
    [InlineData("2026-05-30", "2026-06-09", "Readings of 30 May to 9 June 2026")]
    [InlineData("2025-12-30", "2026-01-09", "Readings of 30 December 2025 to 9 January 2026")]
    [InlineData("", "", "Readings without a date, drawn on 26 November 2026")]
    public void Dates_are_said_as_people_say_them(string first, string last, string said)
    {
        var verdict = Samples.Of(2);
        var runs = new[] { first, last }.Select((date, i) => Run(i, date.Length == 0 ? null : NodaTime.Text.LocalDatePattern.Iso.Parse(date).Value.At(new LocalTime(17, 0))));
        Assert.Equal(said, (Of(verdict) with { Subject = Subject(verdict) with { Table = new ReadingsTable([.. runs], [], []) } }).When);
    }

    string Place(params string[] parts) => Path.Combine([folder.FullName, .. parts]);

    // As a reader does it: in the folder of the data, with the words that stand there.
    JsonNode AssertSameAgain(string report)
    {
        var text = File.ReadAllText(Place(report, "data", "about.json"));
        Contract.Fits("report-about", text);
        var about = JsonNode.Parse(text)!;
        string[] words = [.. about["compare"]!.AsArray().Select(word => (string)word!)];
        words = [.. words.Select(word => word.EndsWith(".csv", StringComparison.Ordinal) ? Place(report, "data", word) : word)];
        Assert.Equal(File.ReadAllBytes(Place(report, "data", "verdict.json")), Encoding.UTF8.GetBytes(ProgramRun.Good(words)));
        return about;
    }

    static Report Of(Verdict verdict) => new(Subject(verdict), verdict, null, new LocalDate(2026, 11, 26));

    static ReportSubject Subject(Verdict verdict) => new(
        Encoding.UTF8.GetBytes("option,run,drive_min,read_c\n"), new ReadingsTable([Run(0, new LocalDateTime(2026, 6, 9, 17, 0))], [], [.. verdict.Options.Select(option => option.Name)]), new JudgeSettings())
    {
        MadeUp = true,
    };

    static Run Run(int place, LocalDateTime? at) => new(
        "day", $"{place + 1}", "bare can", at, null, RunKind.Test, 360, false, null, 0, CutShort.No, 27, AirSource.Thermometer, null, null,
        FanInRun.Unknown, FanAfterStop.Unknown, null, new LoadNotes(), new PackNotes(),
        [new Reading(2, 71.8, 10)]);
}
