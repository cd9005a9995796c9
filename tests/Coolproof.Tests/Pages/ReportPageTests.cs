using Coolproof.Tests.Serving;

namespace Coolproof.Tests.Pages;

/// <summary>Where there is nothing to report, the verdict's page says why.</summary>
public class ReportPageTests
{
    [Fact]
    public async Task Without_a_verdict_a_report_leads_to_the_page_that_says_why_there_is_none()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var nowhere = Guid.CreateVersion7();
        await reader.GoAsync($"/report/{nowhere}");
        Assert.Equal($"/verdict/{nowhere}", reader.Path);
        await reader.GoAsync("/");
        await reader.SendAsync("Ask", ("text", "which?"));
        var question = reader.Notebook.Questions.Single().Id;
        foreach (var file in new[] { "", "/report.html", "/data.zip" })
        {
            await reader.GoAsync($"/report/{question}{file}");
            Assert.Equal($"/verdict/{question}", reader.Path);
        }
    }
}
