using System.Diagnostics;
using System.Net;
using Coolproof.Board;
using Coolproof.Notebook.Journal;
using Coolproof.Store;

namespace Coolproof.Tests.Serving;

/// <summary>A full disk and a damaged notebook are said to phones and to people, and what was acknowledged before is there.</summary>
public class TroublesTests
{
    static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task On_a_full_disk_taps_are_refused_with_what_to_do_pages_go_on_and_room_mends_it()
    {
        Assert.SkipUnless(Environment.UserName == "root" && File.Exists("/usr/bin/mount"), "a disk that is really full takes the right to mount one");
        var disk = Directory.CreateTempSubdirectory("coolproof-disk-").FullName;
        await DoAsync("mount", "-t", "tmpfs", "-o", "size=1m", "tmpfs", disk);
        try
        {
            var ballast = Path.Combine(disk, "ballast");
            await using (var pit = await PitServer.StartAsync(place: Path.Combine(disk, "n.coolproof")))
            {
                using var kept = await pit.SendAsync(PitServer.Entry("day.set", Guid.CreateVersion7(), new() { ["name"] = "before" }));
                Assert.Equal(HttpStatusCode.OK, kept.StatusCode);
                await pit.Get<NotebookBoard>().ReachAsync(1, Cancel);
                var fill = Fill(ballast);
                Assert.True(fill > 100_000);
                HttpResponseMessage? full = null;
                for (var i = 0; i < 200 && full is null; i++) // what room there is in the last pages is used first
                {
                    var answer = await pit.SendAsync(PitServer.Entry("day.set", Guid.CreateVersion7(), new() { ["note"] = new string('x', 4000) }));
                    if (answer.StatusCode != HttpStatusCode.OK) full = answer;
                }
                Assert.Equal(HttpStatusCode.InsufficientStorage, full!.StatusCode);
                var problem = await PitServer.JsonAsync(full);
                Assert.Equal("disk-full", (string)problem["fault"]!);
                Assert.Contains("Make room", (string)problem["detail"]!);
                Assert.Contains("before", await PageAsync(pit, "/"));
                File.Delete(ballast);
                using var again = await pit.SendAsync(PitServer.Entry("run.lap", Guid.CreateVersion7()));
                Assert.Equal(HttpStatusCode.OK, again.StatusCode);
            }
            await using var store = await JournalStore.OpenAsync(Path.Combine(disk, "n.coolproof"), cancel: Cancel);
            await store.CheckAsync(Cancel);
        }
        finally
        {
            await DoAsync("umount", disk);
            Directory.Delete(disk);
        }
    }

    [Fact]
    public async Task A_damaged_notebook_is_said_in_problem_details_and_on_a_page_without_a_trace()
    {
        var folder = Directory.CreateTempSubdirectory("coolproof-").FullName;
        try
        {
            await DamagedAsync(Path.Combine(folder, "n.coolproof"));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    static async Task DamagedAsync(string file)
    {
        await using (var store = await JournalStore.OpenAsync(file, cancel: Cancel))
            await store.AppendAsync(PitServer.Device, [.. Enumerable.Range(0, 3000).Select(_ => new Entry(
                Guid.CreateVersion7(), EntryKind.RunLap, NodaTime.Instant.FromUtc(2026, 6, 13, 15, 0), Guid.CreateVersion7(), null, EntryBody.Empty))], Cancel);
        await using (var bytes = new FileStream(file, FileMode.Open, FileAccess.ReadWrite))
        {
            bytes.Position = bytes.Length / 2;
            bytes.Write([.. Enumerable.Repeat((byte)0x5A, 100_000)]);
        }
        await using var pit = await PitServer.StartAsync(place: file, ready: false);
        using var answer = await pit.Paired.GetAsync("/api/entries?limit=10000", Cancel);
        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        var problem = await PitServer.JsonAsync(answer);
        Assert.Equal("damaged", (string)problem["fault"]!);
        Assert.Contains("restore", (string)problem["detail"]!);
        using var health = await pit.Stranger.GetAsync("/health", Cancel);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, health.StatusCode);
        for (var i = 0; i < 100 && pit.Get<NotebookBoard>().Trouble is null; i++) await Task.Delay(50, Cancel);
        Assert.Contains("is damaged", await PageAsync(pit, "/"));
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/../photo-page") { Headers = { { "Accept", "text/html" } } };
        using var missing = await pit.Paired.SendAsync(request, Cancel);
        Assert.Equal(HttpStatusCode.NotFound, missing.StatusCode);
        Assert.Contains("There is no such page", await missing.Content.ReadAsStringAsync(Cancel));
    }

    [Fact]
    public async Task A_page_that_fails_says_so_in_words()
    {
        await using var pit = await PitServer.StartAsync(change: settings => settings, place: null);
        using var form = new FormUrlEncodedContent([new("device", "no id")]);
        using var request = new HttpRequestMessage(HttpMethod.Post, "/connect/unpair") { Content = form, Headers = { { "Accept", "text/html" } } };
        using var answer = await pit.Paired.SendAsync(request, Cancel);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var page = await answer.Content.ReadAsStringAsync(Cancel);
        Assert.Contains("<h1>", page);
        Assert.DoesNotContain("   at ", page);
    }

    static async Task<string> PageAsync(PitServer pit, string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path) { Headers = { { "Accept", "text/html" } } };
        using var answer = await pit.Paired.SendAsync(request, Cancel);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync(Cancel);
    }

    static long Fill(string path)
    {
        using var file = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
        try
        {
            while (true) file.Write(new byte[1024]);
        }
        catch (IOException)
        {
            return file.Length;
        }
    }

    static async Task DoAsync(string program, params string[] arguments)
    {
        using var process = Process.Start(program, arguments);
        await process.WaitForExitAsync(Cancel);
        Assert.Equal(0, process.ExitCode);
    }
}
