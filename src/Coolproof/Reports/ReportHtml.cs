using Coolproof.Pictures;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.Logging.Abstractions;

namespace Coolproof.Reports;

/// <summary>The page of a report as one file that needs nothing else: no network and no script.</summary>
internal static class ReportHtml
{
    static readonly Lazy<string> Css = new(() =>
    {
        using var stream = typeof(ReportHtml).Assembly.GetManifestResourceStream("report.css")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    });

    /// <summary>The page.</summary>
    /// <param name="report">The report.</param>
    /// <param name="paper">The paper it is to be printed on; null: as whoever prints it chooses.</param>
    public static async Task<string> OfAsync(Report report, Paper? paper = null)
    {
        await using var services = new ServiceCollection().BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        // On paper the typeface goes with it, so that lines break the same on every machine; a page to open is spared its weight.
        var style = Css.Value + (paper is null ? "" : $"@page {{ size: {paper.CssSize}; }}\n{PageTypeface.Css}");
        return await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<ReportDocument>(
            ParameterView.FromDictionary(new Dictionary<string, object?> { ["Report"] = report, ["Css"] = style }))).ToHtmlString());
    }
}
