using System.Net;
using Coolproof.Pairing;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Coolproof.Tests.Serving;

/// <summary>Who isn't connected gets the entry of a code, and nothing else, on every route that there is.</summary>
public class GateTests
{
    static readonly string[] Open = ["/health", "/connect", "/connect/here", "/connect/pair", "/connect/authority.crt"];
    static readonly string[] OpenAssets = ["css/coolproof.", "icon.", "js/connect."];

    [Fact]
    public async Task Every_route_but_those_that_connecting_needs_refuses_a_stranger()
    {
        await using var pit = await PitServer.StartAsync();
        var routes = pit.App.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().ToArray();
        Assert.True(routes.Length > 30, $"only {routes.Length} routes: the list is not the server's");
        var let = new List<string>();
        foreach (var route in routes)
        {
            var path = "/" + Filled(route.RoutePattern.RawText!).TrimStart('/');
            foreach (var method in route.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? ["GET", "POST"])
            {
                using var request = new HttpRequestMessage(new HttpMethod(method), path) { Content = method is "GET" or "HEAD" ? null : new StringContent("{}") };
                using var answer = await pit.Stranger.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
                if (answer.StatusCode != HttpStatusCode.Unauthorized) let.Add(path);
            }
        }
        Assert.DoesNotContain(let, path => !Open.Contains(path) && !OpenAssets.Any(asset => path.StartsWith("/" + asset, StringComparison.Ordinal)));
        Assert.Contains("/health", let); // else the rule could not fail
        Assert.Contains("/connect", let);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/day/0197b0c0-0000-7000-8000-000000000001")]
    [InlineData("/nowhere/at/all")]
    public async Task A_strangers_browser_is_led_to_the_entry_and_not_told_what_there_is(string path)
    {
        await using var pit = await PitServer.StartAsync();
        using var answer = await AskAsync(pit.Stranger, path);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        Assert.Equal("/connect", answer.Headers.Location?.ToString());
    }

    [Fact]
    public async Task The_entry_shows_a_stranger_nothing_of_the_notebook()
    {
        await using var pit = await PitServer.StartAsync();
        await pit.SendAsync(PitServer.Entry("day.set", Guid.CreateVersion7(), new() { ["name"] = "Secret Tuesday" }));
        var code = pit.Get<PairingCodes>().Make();
        var page = await pit.Stranger.GetStringAsync("/connect", TestContext.Current.CancellationToken);
        Assert.Contains("Connect this device", page);
        Assert.DoesNotContain("Secret Tuesday", page);
        Assert.DoesNotContain("/day/", page);
        Assert.DoesNotContain(code.Digits[..3], page);
        Assert.DoesNotContain("n.coolproof", page);
    }

    [Fact]
    public async Task A_code_lets_one_device_in_once()
    {
        await using var pit = await PitServer.StartAsync();
        var code = pit.Get<PairingCodes>().Make();
        using var first = await EnterAsync(pit, $"{code.Digits[..3]} {code.Digits[3..]}");
        Assert.Equal("/connect", first.Headers.Location?.ToString());
        var cookie = first.Headers.GetValues("Set-Cookie").Single();
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=lax", cookie, StringComparison.OrdinalIgnoreCase);
        using var client = pit.Client();
        client.DefaultRequestHeaders.Add("Cookie", cookie.Split(';')[0]);
        using var page = await AskAsync(client, "/");
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        using var second = await EnterAsync(pit, code.Digits);
        Assert.Equal("/connect?said=wrong", second.Headers.Location?.ToString());
        Assert.False(second.Headers.Contains("Set-Cookie"));
    }

    [Fact]
    public async Task The_long_code_of_a_QR_picture_is_not_used_up_by_looking()
    {
        await using var pit = await PitServer.StartAsync();
        var code = pit.Get<PairingCodes>().Make();
        for (var look = 0; look < 2; look++) // as a camera's preview does
            Assert.Contains(code.Long, await pit.Stranger.GetStringAsync($"/connect?code={code.Long}", TestContext.Current.CancellationToken));
        using var answer = await EnterAsync(pit, code.Long);
        Assert.True(answer.Headers.Contains("Set-Cookie"));
    }

    [Fact]
    public async Task Guessing_is_stopped_after_five_wrong_codes_in_a_minute_even_for_the_right_one()
    {
        await using var pit = await PitServer.StartAsync();
        var code = pit.Get<PairingCodes>().Make();
        var wrong = code.Digits == "123456" ? "654321" : "123456";
        for (var i = 0; i < 5; i++) using (await EnterAsync(pit, wrong)) { }
        using var answer = await EnterAsync(pit, code.Digits);
        Assert.Equal(HttpStatusCode.TooManyRequests, answer.StatusCode);
        Assert.False(answer.Headers.Contains("Set-Cookie"));
        Assert.NotNull(answer.Headers.RetryAfter);
    }

    [Fact]
    public async Task A_device_that_is_disconnected_is_shut_out_at_once_and_its_live_events_end()
    {
        await using var pit = await PitServer.StartAsync();
        using var phone = pit.Client();
        phone.DefaultRequestHeaders.Add("Cookie", pit.CookieOf("phone"));
        using var live = await phone.GetAsync("/api/live", HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
        var events = live.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        var device = pit.Get<PairedDevices>().All.Single(one => one.Name == "phone");
        using var form = new FormUrlEncodedContent([new("device", device.Id.ToString())]);
        using var done = await pit.Paired.PostAsync("/connect/unpair", form, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.SeeOther, done.StatusCode);
        Assert.Contains("retry:", await events.WaitAsync(TimeSpan.FromSeconds(10), TestContext.Current.CancellationToken)); // it came to an end
        using var refused = await phone.GetAsync("/api/clock", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Unauthorized, refused.StatusCode);
    }

    [Theory]
    [InlineData("Origin", "http://evil.example")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")] // another port of this machine
    public async Task What_a_foreign_page_makes_a_connected_browser_send_is_not_done(string header, string value)
    {
        await using var pit = await PitServer.StartAsync();
        using var request = new HttpRequestMessage(HttpMethod.Post, "/connect/code");
        request.Headers.Add(header, value);
        using var answer = await pit.Paired.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Null(pit.Get<PairingCodes>().Latest);
    }

    [Fact]
    public async Task The_printed_address_lets_the_browser_of_this_machine_in_and_a_wrong_key_does_not()
    {
        await using var pit = await PitServer.StartAsync();
        using var wrong = await AskAsync(pit.Stranger, "/connect/here?key=" + new string('0', 48));
        Assert.Equal("/connect?said=address", wrong.Headers.Location?.ToString());
        Assert.False(wrong.Headers.Contains("Set-Cookie"));
        using var right = await AskAsync(pit.Stranger, pit.Get<HereKey>().In(""));
        Assert.Equal("/", right.Headers.Location?.ToString());
        Assert.True(right.Headers.Contains("Set-Cookie"));
        Assert.False(pit.Get<HereKey>().Opens(pit.Get<HereKey>().Text, IPAddress.Parse("192.168.1.7")));
    }

    [Fact]
    public async Task Keys_are_kept_as_hashes_in_a_file_that_only_its_owner_reads()
    {
        await using var pit = await PitServer.StartAsync();
        var key = pit.Get<PairedDevices>().Add("phone");
        var file = Path.Combine(Path.GetDirectoryName(pit.File)!, "paired.json");
        Assert.DoesNotContain(key, await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        // Another server of the same file knows it, and knows when it is gone.
        var other = new PairedDevices(file, TimeProvider.System);
        var device = other.With(key);
        Assert.Equal("phone", device?.Name);
        pit.Get<PairedDevices>().Remove(device!.Id);
        Assert.Null(other.With(key));
    }

    [Fact]
    public async Task Every_answer_carries_headers_that_keep_foreign_scripts_out()
    {
        await using var pit = await PitServer.StartAsync();
        foreach (var path in new[] { "/connect", "/health", "/api/clock", "/nowhere" })
        {
            using var answer = await pit.Stranger.GetAsync(path, TestContext.Current.CancellationToken);
            Assert.Contains("default-src 'self'", answer.Headers.GetValues("Content-Security-Policy").Single());
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        }
    }

    static string Filled(string pattern) => string.Join('/', pattern.Split('/').Select(part => part.Contains('{', StringComparison.Ordinal)
        ? part.Contains("guid", StringComparison.Ordinal) || part.Contains("id", StringComparison.Ordinal) ? "0197b0c0-0000-7000-8000-000000000001" : part.Contains("int", StringComparison.Ordinal) ? "1" : "v1"
        : part));

    static Task<HttpResponseMessage> AskAsync(HttpClient client, string path)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.Add("Accept", "text/html");
        return client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    static async Task<HttpResponseMessage> EnterAsync(PitServer pit, string code)
    {
        using var form = new FormUrlEncodedContent([new("code", code), new("name", "phone")]);
        return await pit.Stranger.PostAsync("/connect/pair", form, TestContext.Current.CancellationToken);
    }
}
