using System.Diagnostics;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Support;

/// <summary>Waits until a window is at an address and its page has loaded. Playwright's own wait for an address now and then misses the event that it
/// waits for, and then waits for good (microsoft/playwright-dotnet, issue 3364); this one asks the page. After a link within the pages the address changes
/// before the content does: wait for something of the new page too.</summary>
static class Arrivals
{
    /// <summary>Waits until the address is one of the pattern and the page is wholly loaded.</summary>
    /// <param name="page">The window.</param>
    /// <param name="pattern">The whole address: * for anything within a part of the path, ** for anything.</param>
    /// <exception cref="TimeoutException">It didn't come there while the tests have patience.</exception>
    internal static async Task ArriveAsync(this IPage page, string pattern)
    {
        var there = new Regex($"^{Regex.Escape(pattern).Replace(@"\*\*", ".*", StringComparison.Ordinal).Replace(@"\*", "[^/]*", StringComparison.Ordinal)}$");
        var since = Stopwatch.StartNew();
        while (true)
        {
            var place = await PlaceAsync(page);
            if (place is [var address, "complete"] && there.IsMatch(address)) return;
            if (since.ElapsedMilliseconds > Patience.Ms) throw new TimeoutException($"The window is at {place?[0] ?? page.Url}, {place?[1] ?? "between two pages"}; {pattern} was to come.");
            await Task.Delay(30);
        }
    }

    /// <summary>The address, and how far the page has loaded; null between two pages.</summary>
    static async Task<string[]?> PlaceAsync(IPage page)
    {
        try
        {
            return await page.EvaluateAsync<string[]>("() => [location.href, document.readyState]");
        }
        catch (PlaywrightException between) when (!page.IsClosed && (between.Message.Contains("context was destroyed", StringComparison.Ordinal) || between.Message.Contains("navigat", StringComparison.Ordinal)))
        {
            return null;
        }
    }
}
