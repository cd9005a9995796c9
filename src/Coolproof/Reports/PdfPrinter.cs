using System.ComponentModel;
using System.Diagnostics;
using System.Text;

namespace Coolproof.Reports;

/// <summary>A sheet of paper.</summary>
/// <param name="Name">Its name in file names: a4, letter.</param>
/// <param name="CssSize">Its name in CSS Paged Media.</param>
internal sealed record Paper(string Name, string CssSize)
{
    /// <summary>A4 (ISO 216) and Letter (ANSI/ASME Y14.1).</summary>
    public static IReadOnlyList<Paper> All { get; } = [new("a4", "A4"), new("letter", "letter")];
}

/// <summary>A page that could not be made a PDF.</summary>
/// <param name="Reason">What happened.</param>
/// <param name="Remedy">What to do.</param>
internal sealed class PdfException(string Reason, string Remedy) : Exception($"{Reason} {Remedy}")
{
    /// <summary>What happened.</summary>
    public string Reason { get; } = Reason;

    /// <summary>What to do.</summary>
    public string Remedy { get; } = Remedy;
}

/// <summary>Prints a page that needs no network as PDF, by this machine's own browser.</summary>
internal static class PdfPrinter
{
    const string InAnyBrowser = "Open report.html in any browser and print it there, to paper or as PDF.";

    // The one without windows first: it prints the same in half the time.
    static readonly string[] Browsers = ["chromium-headless-shell", "chromium", "chromium-browser", "google-chrome"];
    static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    // Whoever asks for two papers at once would start two browsers.
    static readonly SemaphoreSlim Turn = new(1);

    /// <summary>Prints.</summary>
    /// <param name="html">The page; its own style says the size of the paper.</param>
    /// <param name="variable">Reads an environment variable.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="PdfException">There is no browser that can, or it failed.</exception>
    public static async Task<byte[]> PrintAsync(string html, Func<string, string?> variable, CancellationToken cancel)
    {
        var browser = Find(variable) ?? throw new PdfException("No PDF was made: there is no Chromium on this machine.", $"Install it (on Debian: apt-get install chromium). Or: {InAnyBrowser}");
        await Turn.WaitAsync(cancel);
        var folder = Directory.CreateTempSubdirectory("coolproof-pdf-");
        try
        {
            var (page, pdf) = (Path.Combine(folder.FullName, "report.html"), Path.Combine(folder.FullName, "report.pdf"));
            await File.WriteAllTextAsync(page, html, new UTF8Encoding(false), cancel);
            var said = await RunAsync(browser, page, pdf, folder.FullName, cancel);
            return File.Exists(pdf) && await File.ReadAllBytesAsync(pdf, cancel) is { Length: > 0 } bytes
                ? bytes
                : throw new PdfException($"No PDF was made: {browser} ended without one{(said.Length > 0 ? $" and said: {said}" : "")}.", InAnyBrowser);
        }
        finally
        {
            Turn.Release();
            Forget(folder);
        }
    }

    /// <summary>The browser, by preference; null where there is none on the PATH.</summary>
    internal static string? Find(Func<string, string?> variable) =>
        Browsers.SelectMany(name => (variable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries).Select(folder => Path.Combine(folder, name))).FirstOrDefault(File.Exists);

    static async Task<string> RunAsync(string browser, string page, string pdf, string folder, CancellationToken cancel)
    {
        var start = new ProcessStartInfo(browser,
        [
            "--headless", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--host-resolver-rules=MAP * ~NOTFOUND",
            $"--user-data-dir={Path.Combine(folder, "profile")}", "--no-pdf-header-footer", $"--print-to-pdf={pdf}",
            // Its sandbox refuses to work for root; the page is our own and has no script.
            .. Environment.UserName == "root" ? ["--no-sandbox"] : Array.Empty<string>(), new Uri(page).AbsoluteUri,
        ])
        { RedirectStandardOutput = true, RedirectStandardError = true };
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        limit.CancelAfter(Longest);
        try
        {
            using var process = Process.Start(start)!;
            try
            {
                var (_, error) = (process.StandardOutput.ReadToEndAsync(limit.Token), process.StandardError.ReadToEndAsync(limit.Token));
                await process.WaitForExitAsync(limit.Token);
                return (await error).Split('\n', StringSplitOptions.RemoveEmptyEntries).LastOrDefault() ?? "";
            }
            catch (OperationCanceledException)
            {
                process.Kill(entireProcessTree: true);
                if (cancel.IsCancellationRequested) throw;
                throw new PdfException($"No PDF was made: {browser} took longer than {Longest.TotalSeconds:0} s.", InAnyBrowser);
            }
        }
        catch (Win32Exception cause)
        {
            throw new PdfException($"No PDF was made: {browser} can't be started: {cause.Message}.", InAnyBrowser);
        }
    }

    static void Forget(DirectoryInfo folder)
    {
        try
        {
            folder.Delete(recursive: true);
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException)
        {
            // The browser may still be putting its profile away; temporary files are swept by the machine.
        }
    }
}
