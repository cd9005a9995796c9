using System.Globalization;
using System.Text;
using Coolproof.EndToEnd.Support;
using Coolproof.Notebook.Journal;
using Coolproof.Rehearsal;
using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Traced;

/// <summary>A made-up evening of four runs in a notebook, and the file of a logger that ran all the time.</summary>
static class LoggedEvening
{
    static SimulatedDay Driven { get; } = Rehearse.Day(new RehearsalSettings(4, [new("bare can", HasFan: false), new("rear blower")]) { Traced = true });

    /// <summary>How many runs it has.</summary>
    public static int Runs => Driven.Truth.Runs.Count;

    /// <summary>The file: seconds from the logger's start, can, pack; one cell is nonsense.</summary>
    public static FilePayload File { get; } = new() { Name = "evening-log.csv", MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(Text()) };

    /// <summary>A file that is no logger's.</summary>
    public static FilePayload Nonsense { get; } = new() { Name = "shopping.csv", MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes("nothing but words\nand more of them\n") };

    /// <summary>Notes the evening.</summary>
    /// <returns>Its day.</returns>
    public static async Task<Guid> NoteAsync(Bench bench)
    {
        var entries = TableImport.Of(Driven.Table);
        await bench.KeepAsync(Guid.CreateVersion7(), [.. entries]);
        return entries.First(entry => entry.Kind == EntryKind.DaySet).About;
    }

    /// <summary>Opens a page of it: the server follows a moment later what another program noted.</summary>
    public static async Task ToAsync(IPage page, string path)
    {
        do await page.GotoAsync(path);
        while ((await page.Locator("h1").InnerTextAsync()).StartsWith("There is no such", StringComparison.Ordinal));
    }

    /// <summary>Brings a file in on the page of traces.</summary>
    public static async Task BringAsync(IPage page, FilePayload file)
    {
        await page.Locator("#trace-file").SetInputFilesAsync(file);
        await page.GetByRole(AriaRole.Button, new() { Name = "Bring it in" }).ClickAsync();
    }

    static string Text()
    {
        var text = new StringBuilder("Logger, made up\n\ntime [s],can [°C],pack [V]\n");
        foreach (var ((atS, readC), i) in TrueProbe.Drawn(4).Logged(Driven, 0).Select((row, i) => (row, i)))
            text.Append(CultureInfo.InvariantCulture, $"{atS + 5000:0.0},{(i == 300 ? -127 : readC):0.00},{8.4 - (0.0001 * i):0.000}\n");
        return text.ToString();
    }
}
