using System.Net;
using Coolproof.Live;
using Coolproof.Tests.Pages;

namespace Coolproof.Tests.Serving;

/// <summary>Lines of sensors over HTTP, what pages are told of them, and the traces that they leave.</summary>
public class SensorLinesTests
{
    [Fact]
    public async Task Lines_are_kept_once_however_often_they_are_sent_and_those_not_understood_are_named()
    {
        await using var pit = await PitServer.StartAsync();
        for (var time = 0; time < 2; time++)
        {
            using var answer = await PostAsync(pit, "?source=stand&session=a1&first=7", "can 64.3 °C\npack 7,4 V\n\ncan 300 F\n");
            var said = await PitServer.JsonAsync(answer);
            Assert.Equal((HttpStatusCode.OK, time == 0 ? 2 : 0, time == 0 ? 0 : 2), (answer.StatusCode, (int)said["kept"]!, (int)said["repeated"]!));
            var bad = Assert.Single(said["bad"]!.AsArray())!;
            Assert.Equal((8L, "pack 7,4 V"), ((long)bad["number"]!, (string)bad["line"]!));
            Assert.Contains("comma", (string)bad["reason"]!, StringComparison.Ordinal);
        }
        Assert.Equal(["http stand"], pit.Get<SensorBoard>().View.Sources.Select(one => one.Name));
        var traces = await pit.Paired.GetStringAsync($"/api/traces?from=0&to={48 * 3_600_000L}", TestContext.Current.CancellationToken);
        Assert.Equal("time_utc,seconds,source,channel,unit,value,mark\r\n", traces); // nothing of 1970
    }

    [Fact]
    public async Task Who_names_no_source_is_called_as_the_device_was_when_it_was_let_in()
    {
        await using var pit = await PitServer.StartAsync();
        using var answer = await PostAsync(pit, "", "can 64.3 °C");
        Assert.Equal("http test", Assert.Single(pit.Get<SensorBoard>().View.Sources).Name);
    }

    [Theory]
    [InlineData("?session=a", HttpStatusCode.BadRequest)]
    [InlineData("?first=1", HttpStatusCode.BadRequest)]
    [InlineData("?session=a&first=-1", HttpStatusCode.BadRequest)]
    [InlineData("?session=a&first=x", HttpStatusCode.BadRequest)]
    [InlineData("?source=a%20b", HttpStatusCode.BadRequest)]
    [InlineData("?source=", HttpStatusCode.BadRequest)]
    public async Task What_is_asked_wrongly_is_refused_and_nothing_is_kept(string query, HttpStatusCode status)
    {
        await using var pit = await PitServer.StartAsync();
        using var answer = await PostAsync(pit, query, "can 64.3 °C");
        Assert.Equal(status, answer.StatusCode);
        Assert.Empty(pit.Get<SensorBoard>().View.Channels);
    }

    [Fact]
    public async Task Too_much_at_once_is_refused_as_a_whole()
    {
        await using var pit = await PitServer.StartAsync();
        using var large = await PostAsync(pit, "", new string('#', 257 * 1024));
        using var many = await PostAsync(pit, "", string.Concat(Enumerable.Repeat("can 1 V\n", 5001)));
        Assert.Equal((HttpStatusCode.RequestEntityTooLarge, HttpStatusCode.RequestEntityTooLarge), (large.StatusCode, many.StatusCode));
        Assert.Empty(pit.Get<SensorBoard>().View.Channels);
    }

    [Fact]
    public async Task A_stranger_can_not_send_see_or_read_anything_of_sensors()
    {
        await using var pit = await PitServer.StartAsync();
        using var sent = await pit.Stranger.PostAsync("/api/live", new StringContent("can 1 V"), TestContext.Current.CancellationToken);
        using var read = await pit.Stranger.GetAsync("/api/traces?from=0&to=1", TestContext.Current.CancellationToken);
        using var heard = await pit.Stranger.GetAsync("/api/live?sensors", TestContext.Current.CancellationToken);
        Assert.All([sent, read, heard], answer => Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode));
        Assert.Empty(pit.Get<SensorBoard>().View.Sources);
    }

    [Fact]
    public async Task Only_who_shows_sensors_is_told_of_their_values()
    {
        await using var pit = await PitServer.StartAsync();
        using var others = await LiveEvents.OpenAsync(pit.Paired);
        using var shows = await LiveEvents.OpenAsync(pit.Paired, query: "?sensors");
        using var answer = await PostAsync(pit, "?source=stand", "can 64.3 °C");
        string[] names = [];
        for (var i = 0; i < 20 && !names.Contains("can-value"); i++)
            if (await shows.NextAsync() is { Event: "sensors" } told && told.Data.Contains("\"value\":\"64.3\"", StringComparison.Ordinal)) names = ["can-value"];
        Assert.NotEmpty(names);
        while (await others.NextAsync(seconds: 2) is { } one) Assert.NotEqual("sensors", one.Event);
    }

    [Fact]
    public async Task The_page_of_sensors_shows_values_and_what_was_not_understood_without_script()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/sensors");
        Assert.Equal("No sensor is connected", reader.Heading);
        using var answer = await PostAsync(pit, "?source=stand", "can 64.3 °C\nfan <b>hot</b> V\nesc nan C\n");
        await reader.GoAsync("/sensors");
        Assert.Equal("2 sensors are heard", reader.Heading);
        Assert.Contains("64.3 °C", reader.Text, StringComparison.Ordinal);
        Assert.Contains("fan <b>hot</b> V", reader.Text, StringComparison.Ordinal);
        Assert.Contains("Nonsense: the sensor sent", reader.Text, StringComparison.Ordinal);
        reader.Keep("coolproof-look", "theme=&units=f&mass=g&hand=right");
        await reader.GoAsync("/sensors");
        Assert.Contains("147.7 °F", reader.Text, StringComparison.Ordinal); // 64.3 × 1.8 + 32
    }

    [Fact]
    public async Task A_run_has_the_traces_of_its_time_as_a_table_and_no_others()
    {
        var start = new DateTimeOffset(2026, 6, 13, 15, 0, 0, TimeSpan.Zero);
        var clock = new SetClock(start);
        await using var pit = await PitServer.StartAsync(clock: clock);
        var (day, run) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        string At(double seconds) => start.AddSeconds(seconds).ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", System.Globalization.CultureInfo.InvariantCulture);
        await pit.SendAsync(
            PitServer.Entry("day.set", day, new() { ["name"] = "stand" }), PitServer.Entry("run.begin", run, new() { ["day"] = day.ToString(), ["number"] = 3 }, at: At(90)),
            PitServer.Entry("run.go", run, at: At(100)), PitServer.Entry("run.stop", run, at: At(160)), PitServer.Entry("run.halt", run, at: At(170)));
        for (var second = 0; second < 300; second += 5)
        {
            clock.Now = start.AddSeconds(second);
            using var answer = await PostAsync(pit, $"?source=stand&session=s&first={second}", $"can {second} °C");
        }
        using var reader = new Reader(pit);
        await reader.GoAsync($"/run/{run}");
        Assert.Contains("What the sensors told", reader.Text, StringComparison.Ordinal);
        Assert.Contains("29 values, 90.0 to 230.0 °C", reader.Text, StringComparison.Ordinal);
        var table = await pit.Paired.GetStringAsync($"/run/{run}/traces.csv", TestContext.Current.CancellationToken);
        var lines = table.Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(30, lines.Length);
        Assert.Equal("2026-06-13T15:01:30.000Z,-10.000,http stand,can,°C,90,", lines[1]);
        Assert.Equal("2026-06-13T15:03:50.000Z,130.000,http stand,can,°C,230,", lines[^1]);
        using var unknown = await pit.Paired.GetAsync($"/run/{day}/traces.csv", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
    }

    [Fact]
    public async Task The_day_that_runs_shows_sensors_and_hides_what_they_say_from_a_driver_who_hides_rounds()
    {
        await using var pit = await PitServer.StartAsync();
        var (day, run) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        var (one, other) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        await pit.SendAsync(
            PitServer.Entry("option.set", one, new() { ["name"] = "bare can" }), PitServer.Entry("option.set", other, new() { ["name"] = "clamp" }),
            PitServer.Entry("day.set", day, new() { ["date"] = DateTime.UtcNow.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), ["plan"] = new System.Text.Json.Nodes.JsonArray(one.ToString(), other.ToString()) }),
            PitServer.Entry("run.begin", run, new() { ["day"] = day.ToString(), ["option"] = one.ToString() }), PitServer.Entry("shot", Guid.CreateVersion7(), new() { ["run"] = run.ToString() })); // one of the two was driven: the round is under way
        using var answer = await PostAsync(pit, "?source=stand", "can 64.3 °C");
        using var reader = new Reader(pit);
        await reader.GoAsync($"/day/{day}");
        Assert.Contains("64.3 °C", reader.Text, StringComparison.Ordinal);
        reader.Keep("coolproof-hide", "yes");
        await reader.GoAsync($"/day/{day}");
        Assert.DoesNotContain("64.3 °C", reader.Text, StringComparison.Ordinal);
        Assert.Contains("hidden until the round is done", reader.Text, StringComparison.Ordinal);
    }

    static Task<HttpResponseMessage> PostAsync(PitServer pit, string query, string lines) => pit.Paired.PostAsync("/api/live" + query, new StringContent(lines), TestContext.Current.CancellationToken);
}
