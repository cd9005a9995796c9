using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using Coolproof.Notebook.Journal;
using Coolproof.Store;
using Coolproof.Store.Tests;

namespace Coolproof.Tests.Serving;

/// <summary>
/// The whole server, as a process, killed at any moment (SIGKILL, as a dead battery does) while fifty phones tap. What it acknowledged is there afterwards, each tap once, and
/// what it didn't comes through by sending again.
/// </summary>
public sealed class ServerKillTests(PostgresServer postgres, ITestOutputHelper output) : IDisposable
{
    const int Phones = 50;
    readonly string home = Directory.CreateTempSubdirectory("coolproof-").FullName;

    static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(home, recursive: true);

    [Theory, InlineData("sqlite", 20), InlineData("postgres", 20)]
    public Task Killed_twenty_times_under_fifty_tapping_phones_it_loses_nothing_that_it_acknowledged(string engine, int kills) => KillAsync(engine, kills);

    [Theory, InlineData("sqlite", 200), InlineData("postgres", 200)]
    [Trait("Suite", "long")]
    public Task Killed_two_hundred_times_under_fifty_tapping_phones_it_loses_nothing_that_it_acknowledged(string engine, int kills) => KillAsync(engine, kills);

    async Task KillAsync(string engine, int kills)
    {
        var watch = Stopwatch.StartNew();
        var place = engine == "sqlite" ? Path.Combine(home, "n.coolproof") : await postgres.FreshAsync();
        var (tapped, acknowledged) = (new ConcurrentDictionary<Guid, byte>(), new ConcurrentDictionary<Guid, byte>());
        var chance = new Random(kills);
        string? cookie = null;
        var phones = Enumerable.Range(0, Phones).Select(number => new Phone(number, tapped, acknowledged)).ToArray();
        for (var kill = 0; kill < kills; kill++)
        {
            using var served = await ServedProgram.StartAsync(home, "serve", "--port", "0", "--store", place);
            cookie ??= await CookieAsync(served.Address); // it is let in once, and stays so over every kill
            var before = acknowledged.Count;
            using var gone = new CancellationTokenSource();
            var tapping = phones.Select(phone => phone.TapAsync(served.Address, cookie, gone.Token)).ToArray();
            // By the number of acknowledgements, so that a busy machine makes as many as an idle one; then a moment by chance.
            var wanted = before + chance.Next(0, 4 * Phones);
            while (acknowledged.Count < wanted) await Task.Delay(1, Cancel);
            await Task.Delay(chance.Next(0, 25), Cancel);
            served.Kill();
            await gone.CancelAsync();
            await Task.WhenAll(tapping);
        }
        // What no answer came for is sent again, and so all of it arrives.
        using (var served = await ServedProgram.StartAsync(home, "serve", "--port", "0", "--store", place))
        {
            await Task.WhenAll(phones.Select(phone => phone.SendRestAsync(served.Address, cookie!)));
            Assert.Equal(0, await served.InterruptAsync());
        }
        await using var store = await JournalStore.OpenAsync(place, cancel: Cancel);
        await store.CheckAsync(Cancel);
        var held = new List<Guid>();
        await foreach (var entry in store.ReadAllAsync(0, Cancel)) held.Add(entry.Id);
        Assert.Equal(held.Count, held.Distinct().Count());
        Assert.Equal(tapped.Keys.Order(), held.Order());
        Assert.Empty(acknowledged.Keys.Except(held));
        Assert.True(acknowledged.Count > kills * Phones, $"only {acknowledged.Count} taps: the test shows little");
        output.WriteLine($"{engine}: {kills} kills, {Phones} phones, {tapped.Count} taps, {watch.Elapsed.TotalSeconds:0} s");
    }

    static async Task<string> CookieAsync(Uri address)
    {
        using var client = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false });
        using var answer = await client.GetAsync(address, Cancel);
        return answer.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
    }

    /// <summary>A phone: an entry leaves its outbox only when an answer lists its id.</summary>
    sealed class Phone(int number, ConcurrentDictionary<Guid, byte> tapped, ConcurrentDictionary<Guid, byte> acknowledged)
    {
        readonly Guid device = Guid.CreateVersion7();
        readonly Guid run = Guid.CreateVersion7();
        readonly List<Guid> outbox = [];

        public async Task TapAsync(Uri address, string cookie, CancellationToken gone)
        {
            using var client = Client(address, cookie);
            while (!gone.IsCancellationRequested)
            {
                for (var i = 0; i <= number % 3; i++)
                {
                    var id = Guid.CreateVersion7();
                    tapped[id] = 0;
                    outbox.Add(id);
                }
                if (!await SendAsync(client)) return;
            }
        }

        public async Task SendRestAsync(Uri address, string cookie)
        {
            using var client = Client(address, cookie);
            Assert.True(outbox.Count == 0 || await SendAsync(client));
            Assert.Empty(outbox);
        }

        async Task<bool> SendAsync(HttpClient client)
        {
            try
            {
                var entries = outbox.Select(id => PitServer.Entry(EntryKind.RunLap, run, id: id)).ToArray();
                var batch = PitServer.Batch([.. entries]);
                batch["device"] = device.ToString();
                using var answer = await client.PostAsJsonAsync("/api/entries", batch, Cancel);
                if (answer.StatusCode != HttpStatusCode.OK) return false;
                foreach (var id in (await PitServer.JsonAsync(answer))["kept"]!.AsArray().Select(id => Guid.Parse((string)id!)))
                {
                    acknowledged[id] = 0;
                    outbox.Remove(id);
                }
                return true;
            }
            catch (Exception cause) when (cause is HttpRequestException or IOException or System.Text.Json.JsonException)
            {
                return false; // it is dead; the outbox keeps what has no answer
            }
        }

        static HttpClient Client(Uri address, string cookie)
        {
            var client = new HttpClient(new SocketsHttpHandler { UseCookies = false }) { BaseAddress = new Uri(address, "/") };
            client.DefaultRequestHeaders.Add("Cookie", cookie);
            return client;
        }
    }
}
