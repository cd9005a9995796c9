namespace Coolproof.Tests.Serving;

/// <summary>Server-sent events (HTML standard, section 9.2) as a client reads them.</summary>
sealed class LiveEvents : IDisposable
{
    readonly HttpResponseMessage answer;
    readonly StreamReader reader;

    LiveEvents(HttpResponseMessage answer, Stream stream) => (this.answer, reader) = (answer, new StreamReader(stream));

    /// <summary>Begins to listen.</summary>
    public static async Task<LiveEvents> OpenAsync(HttpClient client, string? lastEventId = null, string query = "")
    {
        var request = new HttpRequestMessage(HttpMethod.Get, "/api/live" + query);
        if (lastEventId is not null) request.Headers.Add("Last-Event-ID", lastEventId);
        var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
        Assert.Equal("text/event-stream", answer.Content.Headers.ContentType?.MediaType);
        return new LiveEvents(answer, await answer.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken));
    }

    /// <summary>The next event; null when there was only a comment within the time.</summary>
    public async Task<(string Event, string Id, string Data)?> NextAsync(double seconds = 20)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        limit.CancelAfter(TimeSpan.FromSeconds(seconds));
        var (name, id, data) = ("", "", "");
        try
        {
            while (await reader.ReadLineAsync(limit.Token) is { } line)
            {
                if (line.StartsWith("event: ", StringComparison.Ordinal)) name = line[7..];
                else if (line.StartsWith("id: ", StringComparison.Ordinal)) id = line[4..];
                else if (line.StartsWith("data: ", StringComparison.Ordinal)) data = line[6..];
                else if (line.Length == 0 && name.Length > 0) return (name, id, data);
            }
        }
        catch (OperationCanceledException) when (!TestContext.Current.CancellationToken.IsCancellationRequested)
        {
        }
        return null;
    }

    public void Dispose()
    {
        reader.Dispose();
        answer.Dispose();
    }
}
