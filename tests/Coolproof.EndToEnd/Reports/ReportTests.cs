using System.Globalization;
using System.Text;
using Coolproof.EndToEnd.Pages;
using Coolproof.EndToEnd.Support;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using SkiaSharp;

namespace Coolproof.EndToEnd.Reports;

/// <summary>A report taken from the verdict's page, as whoever wasn't there gets it: opened from a file without a network, printed on both papers, posted.</summary>
public sealed class ReportTests(Chromium chromium)
{
    const string Long = "clamp with the twenty-five millimetre fan that was printed in two halves and glued together after the second evening <b>because the first had warped</b>";

    static readonly string[] Table =
    [
        "day,run,started_at,option,drive_s,ambient_c,stop_to_read_s,read_c",
        "first evening,1,2026-06-02T17:00,bare can,360,26.5,10,71.8", "first evening,1,,,,,22,70.9", $"first evening,2,2026-06-02T17:30,{Long},360,26.5,10,63.5", "first evening,2,,,,,24,62.4",
        "first evening,3,2026-06-02T18:00,bare can,360,26,11,72.2", $"first evening,4,2026-06-02T18:30,{Long},360,26,12,62.9",
        $"second evening,1,2026-06-09T17:00,{Long},360,27.5,10,64.5", "second evening,2,2026-06-09T17:30,bare can,360,27.5,9,73.1",
    ];

    static readonly string[] Said =
    [
        "Which of the two?", "Coolest first", "From second evening alone", "What was fitted", "Every run after the stop", "Each reading, as read and as corrected", "power off first", "random seed 1",
        "<b>because the first had warped</b>",
    ];

    static readonly (string What, string Property, string Wanted)[] BlackOnWhite =
    [
        ("html", "backgroundColor", "rgb(255, 255, 255)"), ("h1", "color", "rgb(0, 0, 0)"), ("td", "color", "rgb(0, 0, 0)"), (".quiet", "color", "rgb(0, 0, 0)"), (".picture .broad text", "fill", "rgb(0, 0, 0)"),
    ];

    [Fact]
    public async Task Whoever_was_not_there_gets_a_page_two_prints_pictures_and_the_data()
    {
        await using var bench = await Bench.StartAsync();
        var question = await NoteAsync(bench);
        var page = await PitTable.OpenAsync(chromium, bench, wide: true);
        await KeepPhotoAsync(page, (await bench.NotebookAsync()).Options[0].Id);
        await page.GotoAsync($"/verdict/{question}");
        await page.Locator("h1.answer").WaitForAsync();
        await page.Locator("#show summary").ClickAsync();
        var folder = Directory.CreateTempSubdirectory("coolproof-shown-");
        try
        {
            foreach (var link in await page.Locator("#show a.file").AllAsync())
            {
                var download = await page.RunAndWaitForDownloadAsync(() => link.ClickAsync());
                await download.SaveAsAsync(Path.Combine(folder.FullName, download.SuggestedFilename));
            }
            Assert.Equal(
                ["data.zip", "picture-1080.png", "picture-1920.png", "picture.svg", "report-a4.pdf", "report-letter.pdf", "report.html"],
                folder.GetFiles().Select(file => file.Name).Order(StringComparer.Ordinal));
            await page.GetByText("The report as a page").ClickAsync();
            await page.ArriveAsync($"**/report/{question}");
            Assert.Equal("Which of the two?", await page.Locator(".kicker").InnerTextAsync());
            await page.Context.CloseAsync();
            await ReadAsync(Path.Combine(folder.FullName, "report.html"));
            foreach (var (paper, wide, high) in new[] { ("a4", 595, 842), ("letter", 612, 792) }) Printed(folder.FullName, paper, wide, high);
            foreach (var (name, wide) in new[] { ("picture-1080.png", 1080), ("picture-1920.png", 1920) })
            {
                using var picture = SKBitmap.Decode(Path.Combine(folder.FullName, name));
                Assert.Equal((wide, 1080), (picture.Width, picture.Height));
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Opened from the file with the network off: nothing is asked for, everything is there, for everybody, on a phone and on a laptop, light, dark and printed.</summary>
    async Task ReadAsync(string file)
    {
        foreach (var (wide, scheme) in new[] { (false, ColorScheme.Light), (true, ColorScheme.Dark) })
        {
            var context = await chromium.Browser.NewContextAsync(new()
            {
                Offline = true,
                ColorScheme = scheme,
                BypassCSP = true, // for the scripts of axe; the page has none
                ViewportSize = wide ? new() { Width = 1280, Height = 800 } : new() { Width = 390, Height = 844 },
            });
            var page = await context.NewPageAsync();
            List<string> asked = [], said = [];
            page.Request += (_, request) => asked.Add(request.Url);
            page.Console += (_, message) => said.Add(message.Text);
            await page.GotoAsync(new Uri(file).AbsoluteUri);
            Assert.Equal([new Uri(file).AbsoluteUri], asked.Where(url => !url.StartsWith("data:", StringComparison.Ordinal)));
            Assert.Empty(said);
            var all = await page.Locator("body").InnerTextAsync();
            Assert.All(Said, words => Assert.Contains(words, all));
            Assert.Equal(1, await page.Locator(".picture svg:visible").CountAsync());
            Assert.Equal(6, await page.Locator(".panel svg:visible").CountAsync());
            Assert.Equal(6, await page.Locator("ol.method li").CountAsync());
            Assert.True(await page.Locator(".card img").EvaluateAsync<int>("image => image.naturalWidth") > 0);
            Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") <= 0);
            var found = (await page.RunAxe()).Violations;
            Assert.True(found.Length == 0, string.Join("; ", found.Select(one => $"{one.Id}: {string.Join(" | ", one.Nodes.Take(3).Select(node => node.Html))}")));
            await page.EmulateMediaAsync(new() { Media = Media.Print, ColorScheme = scheme });
            foreach (var (what, property, wanted) in BlackOnWhite)
                Assert.Equal(wanted, await page.Locator(what).First.EvaluateAsync<string>("(element, property) => getComputedStyle(element)[property]", property));
            await context.CloseAsync();
        }
    }

    /// <summary>A print looked at page by page with Poppler's tools: size, count, words within the margins, and nothing drawn into them.</summary>
    static void Printed(string folder, string paper, int wide, int high)
    {
        const double dpi = 50, marginMm = 12;
        var pdf = Path.Combine(folder, $"report-{paper}.pdf");
        var boxes = Poppler("pdftotext", "-bbox", pdf, "-");
        var pages = boxes.Split("<page ").Skip(1).ToArray();
        Assert.InRange(pages.Length, 2, 4);
        var words = 0;
        foreach (var page in pages)
        {
            Assert.Equal((wide, high), ((int)Math.Round(Number(page, "width")), (int)Math.Round(Number(page, "height"))));
            foreach (var word in page.Split("<word ").Skip(1))
            {
                words++;
                Assert.True(Number(word, "xMin") >= marginMm * 72 / 25.4 && Number(word, "xMax") <= wide - marginMm * 72 / 25.4 && Number(word, "yMin") > 0 && Number(word, "yMax") < high, word);
            }
        }
        Assert.True(words > 300, $"{words} words");
        var text = string.Join(' ', Poppler("pdftotext", pdf, "-").Split(default(char[]), StringSplitOptions.RemoveEmptyEntries));
        foreach (var said in new[] { "Coolest first", "Take care", "random seed 1", $"1 of {pages.Length}", $"{pages.Length} of {pages.Length}" }) Assert.Contains(said, text);
        Poppler("pdftoppm", "-r", $"{dpi}", "-png", pdf, Path.Combine(folder, paper));
        var drawn = Directory.GetFiles(folder, $"{paper}-*.png").Order(StringComparer.Ordinal).ToArray();
        Assert.Equal(pages.Length, drawn.Length);
        foreach (var file in drawn)
        {
            using var picture = SKBitmap.Decode(file);
            var margin = (int)(marginMm / 25.4 * dpi);
            int ink = 0, cut = 0;
            for (var y = 0; y < picture.Height; y++)
            {
                for (var x = 0; x < picture.Width; x++)
                {
                    if (picture.GetPixel(x, y) is { Red: > 200, Green: > 200, Blue: > 200 }) continue;
                    ink++;
                    if (x < margin || x >= picture.Width - margin || y < margin) cut++;
                }
            }
            Assert.True(ink > 500, $"{file} is nearly blank: {ink}");
            Assert.True(cut == 0, $"{file} has ink in its margins: {cut}");
            File.Delete(file);
        }
    }

    static string Poppler(string tool, params string[] arguments)
    {
        using var process = System.Diagnostics.Process.Start(new System.Diagnostics.ProcessStartInfo(tool, arguments) { RedirectStandardOutput = true })!;
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        return said;
    }

    static double Number(string element, string attribute)
    {
        var from = element.IndexOf($"{attribute}=\"", StringComparison.Ordinal) + attribute.Length + 2;
        return double.Parse(element[from..element.IndexOf('"', from)], CultureInfo.InvariantCulture);
    }

    /// <summary>Two made-up evenings of two options, and a question between them.</summary>
    static async Task<Guid> NoteAsync(Bench bench)
    {
        using var csv = new MemoryStream(Encoding.UTF8.GetBytes(string.Join('\n', Table)));
        var entries = TableImport.Of(ReadingsTableReader.Read(csv).Table!, PitNotebook.Empty, "evenings.csv");
        await bench.KeepAsync(Guid.CreateVersion7(), [.. entries]);
        var question = Guid.CreateVersion7();
        var options = (await bench.NotebookAsync()).Options.Select(option => option.Id).ToArray();
        await bench.KeepAsync(Guid.CreateVersion7(), new Entry(Guid.CreateVersion7(), EntryKind.QuestionSet, NodaTime.SystemClock.Instance.GetCurrentInstant(), question, null,
            EntryBody.Of(("text", "Which of the two?"), ("sort", "which"), ("options", options))));
        return question;
    }

    static async Task KeepPhotoAsync(IPage page, Guid option)
    {
        using var surface = SKSurface.Create(new SKImageInfo(400, 300));
        surface.Canvas.Clear(SKColors.SteelBlue);
        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        await page.GotoAsync($"/option/{option}");
        await page.Locator("#photo").SetInputFilesAsync(new FilePayload { Name = "photo.png", MimeType = "image/png", Buffer = data.ToArray() });
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the photo" }).ClickAsync();
        await page.Locator("figure.photo img").WaitForAsync();
    }
}
