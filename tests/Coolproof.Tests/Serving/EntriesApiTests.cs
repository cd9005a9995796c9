using System.Net;
using System.Net.Http.Json;
using System.Text;
using Coolproof.Board;
using Coolproof.Notebook.Journal;
using Json.Schema;

namespace Coolproof.Tests.Serving;

/// <summary>Entries over HTTP, by docs/formats/entries.md.</summary>
public class EntriesApiTests
{
    static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_batch_is_kept_answered_with_its_ids_and_stands_in_the_notebook_and_in_the_list()
    {
        await using var pit = await PitServer.StartAsync();
        var (run, day) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        var entries = new[] { PitServer.Entry("run.begin", run, new() { ["day"] = day.ToString(), ["number"] = 1 }), PitServer.Entry("run.go", run) };
        var answer = await PitServer.JsonAsync(await pit.SendAsync([.. entries.Select(entry => entry.DeepClone())]));
        Assert.Equal(entries.Select(entry => (string)entry["id"]!), answer["kept"]!.AsArray().Select(id => (string)id!));
        Assert.Equal(2, (long)answer["cursor"]!);
        Assert.Matches(@"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$", (string)answer["serverAt"]!);
        var page = await PitServer.JsonAsync(await pit.Paired.GetAsync("/api/entries?after=1&limit=5", Cancel));
        var only = Assert.Single(page["entries"]!.AsArray());
        Assert.Equal("run.go", (string)only!["kind"]!);
        Assert.Equal(PitServer.Device.ToString(), (string)only["device"]!);
        Assert.Equal(2, (long)only["seq"]!);
        Assert.False((bool)page["more"]!);
        await pit.Get<NotebookBoard>().ReachAsync(2, Cancel);
        Assert.NotNull(pit.Get<NotebookBoard>().Notebook.Find<NotedRun>(run)!.Go);
    }

    [Fact]
    public async Task The_same_batch_again_is_answered_the_same_and_changes_nothing()
    {
        await using var pit = await PitServer.StartAsync();
        var entry = PitServer.Entry("run.lap", Guid.CreateVersion7());
        using var first = await pit.SendAsync(entry.DeepClone());
        using var second = await pit.SendAsync(entry.DeepClone());
        Assert.Equal(HttpStatusCode.OK, second.StatusCode);
        Assert.Equal((string)entry["id"]!, (string)(await PitServer.JsonAsync(second))["kept"]![0]!);
        Assert.Equal(1, await pit.Store.CursorAsync(Cancel));
    }

    [Fact]
    public async Task A_batch_with_any_fault_is_refused_whole_and_says_where_and_what_to_do()
    {
        await using var pit = await PitServer.StartAsync();
        var bad = PitServer.Entry("run.countdown", Guid.CreateVersion7(), new() { ["seconds"] = -3, ["driveS"] = 360 });
        using var answer = await pit.SendAsync(PitServer.Entry("run.go", Guid.CreateVersion7()), bad.DeepClone());
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        var problem = await PitServer.JsonAsync(answer);
        var error = Assert.Single(problem["errors"]!.AsArray())!;
        Assert.Equal((string)bad["id"]!, (string)error["entry"]!);
        Assert.Equal("body.seconds", (string)error["field"]!);
        Assert.NotEmpty((string)error["reason"]!);
        Assert.NotEmpty((string)error["remedy"]!);
        Assert.Equal(0, await pit.Store.CursorAsync(Cancel));
    }

    [Theory]
    [InlineData("", "application/json", HttpStatusCode.BadRequest)]
    [InlineData("nonsense", "application/json", HttpStatusCode.BadRequest)]
    [InlineData("[]", "application/json", HttpStatusCode.BadRequest)]
    [InlineData("{}", "text/plain", HttpStatusCode.UnsupportedMediaType)] // what a foreign form can send
    public async Task What_is_no_batch_is_refused_with_problem_details(string text, string type, HttpStatusCode status)
    {
        await using var pit = await PitServer.StartAsync();
        using var answer = await pit.Paired.PostAsync("/api/entries", new StringContent(text, Encoding.UTF8, type), Cancel);
        Assert.Equal(status, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        Assert.NotEmpty((string)(await PitServer.JsonAsync(answer))["title"]!);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_batch_that_is_too_large_is_refused_whether_it_says_its_size_or_not(bool saysSize)
    {
        await using var pit = await PitServer.StartAsync();
        var bytes = Encoding.UTF8.GetBytes(new string(' ', EntryReader.LargestBatchBytes + 1));
        using HttpContent content = saysSize ? new ByteArrayContent(bytes) : new StreamContent(new Unsized(bytes));
        content.Headers.ContentType = new("application/json");
        using var answer = await pit.Paired.PostAsync("/api/entries", content, Cancel);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [Theory]
    [InlineData("after=-1")]
    [InlineData("limit=0")]
    [InlineData("limit=10001")]
    [InlineData("after=many")]
    public async Task A_cursor_or_limit_that_makes_no_sense_is_refused(string query)
    {
        await using var pit = await PitServer.StartAsync();
        using var answer = await pit.Paired.GetAsync($"/api/entries?{query}", Cancel);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task The_clock_is_the_servers_and_is_never_stored_on_the_way()
    {
        await using var pit = await PitServer.StartAsync();
        using var answer = await pit.Paired.GetAsync("/api/clock", Cancel);
        Assert.True(answer.Headers.CacheControl!.NoStore);
        var said = DateTimeOffset.Parse((string)(await PitServer.JsonAsync(answer))["serverAt"]!, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(DateTimeOffset.UtcNow - said, TimeSpan.FromSeconds(-1), TimeSpan.FromSeconds(10));
    }

    [Fact]
    public async Task What_is_sent_and_answered_is_as_the_published_schema_says()
    {
        await using var pit = await PitServer.StartAsync();
        var schema = JsonSchema.FromText(await File.ReadAllTextAsync(TestFiles.Of("docs", "formats", "entries.schema.json"), Cancel));
        var batch = PitServer.Batch(PitServer.Entry("run.begin", Guid.CreateVersion7(), new() { ["day"] = Guid.CreateVersion7().ToString() }));
        Assert.True(schema.Evaluate(System.Text.Json.JsonSerializer.SerializeToElement(batch)).IsValid);
        using var answer = await pit.Paired.PostAsJsonAsync("/api/entries", batch, Cancel);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        // What comes back, without what the server added, can be sent again.
        var page = await PitServer.JsonAsync(await pit.Paired.GetAsync("/api/entries", Cancel));
        var entry = page["entries"]![0]!.DeepClone().AsObject();
        foreach (var added in new[] { "device", "seq", "kept" }) entry.Remove(added);
        Assert.True(schema.Evaluate(System.Text.Json.JsonSerializer.SerializeToElement(PitServer.Batch(entry))).IsValid);
    }

    [Fact]
    public async Task The_description_of_the_API_names_its_addresses()
    {
        await using var pit = await PitServer.StartAsync();
        var description = await PitServer.JsonAsync(await pit.Paired.GetAsync("/openapi/v1.json", Cancel));
        var paths = description["paths"]!.AsObject().Select(path => path.Key).ToArray();
        foreach (var path in new[] { "/health", "/api/entries", "/api/clock", "/api/live", "/api/photos/{id}", "/api/verdicts/{about}" }) Assert.Contains(path, paths);
        Assert.DoesNotContain(paths, path => path.StartsWith("/connect", StringComparison.Ordinal));
    }

    sealed class Unsized(byte[] bytes) : MemoryStream(bytes)
    {
        public override bool CanSeek => false;
    }
}
