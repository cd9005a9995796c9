using System.Diagnostics;
using System.Globalization;
using System.Net.Sockets;
using System.Text;
using MQTTnet;
using MQTTnet.Protocol;

namespace Coolproof.EndToEnd.Sensors;

/// <summary>A stand with three made-up sensors: one at a serial port, one at a broker, one that posts. Each remembers all that it sent.</summary>
sealed class Stand : IAsyncDisposable
{
    readonly string ours, theirs;
    readonly Process broker;
    readonly HttpClient http;
    readonly List<(string Line, double Value)> unanswered = [];
    IMqttClient? publisher;
    Process? cable;
    FileStream? port;
    long number;

    Stand(Support.Bench bench, int brokerPort, HttpClient http)
    {
        (ours, theirs, this.http) = (bench.File("ours"), bench.File("theirs"), http);
        var settings = bench.File("broker.conf");
        System.IO.File.WriteAllText(settings, $"listener {brokerPort} 127.0.0.1\nallow_anonymous true\npersistence false\nuser root\n");
        broker = Start(System.IO.File.Exists("/usr/sbin/mosquitto") ? "/usr/sbin/mosquitto" : "mosquitto", "-c", settings);
    }

    /// <summary>Values that were sent, by channel, in their order.</summary>
    public Dictionary<string, List<double>> Sent { get; } = new() { ["can"] = [], ["air"] = [], ["pack"] = [] };

    /// <summary>Whether the serial sensor is plugged in.</summary>
    public bool Plugged => cable is not null;

    /// <summary>Sets it up: the broker runs, the cable is plugged in.</summary>
    /// <param name="bench">The bench that listens.</param>
    /// <param name="brokerPort">Port of the broker.</param>
    /// <param name="key">The cookie of the device that posts.</param>
    public static async Task<Stand> SetUpAsync(Support.Bench bench, int brokerPort, string key)
    {
        var http = new HttpClient(new SocketsHttpHandler { UseCookies = false }) { BaseAddress = new Uri(bench.Origin), Timeout = TimeSpan.FromSeconds(10) };
        http.DefaultRequestHeaders.Add("Cookie", key);
        var stand = new Stand(bench, brokerPort, http);
        await UntilAsync(() => Answers(brokerPort));
        stand.publisher = new MqttClientFactory().CreateMqttClient();
        await stand.publisher.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", brokerPort).Build());
        return stand;
    }

    /// <summary>Plugs the serial sensor in.</summary>
    public async Task PlugInAsync()
    {
        // A cable that was pulled leaves its links behind; should the new one get the old one's number they would lead somewhere before they are made anew.
        System.IO.File.Delete(ours);
        System.IO.File.Delete(theirs);
        cable = Start("socat", $"pty,raw,echo=0,link={ours}", $"pty,raw,echo=0,link={theirs}");
        await UntilAsync(() => System.IO.File.Exists(ours) && System.IO.File.Exists(theirs));
        port = new FileStream(theirs, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
    }

    /// <summary>Ends what the serial sensor had begun before anybody listened: the next line is whole.</summary>
    public void BeginLine() => port!.Write("\n"u8);

    /// <summary>Pulls its cable.</summary>
    public void Unplug()
    {
        port?.Dispose();
        cable!.Kill();
        cable.WaitForExit();
        cable.Dispose();
        (cable, port) = (null, null);
    }

    /// <summary>Each sensor that is plugged in sends a value.</summary>
    public async Task SendAsync(double can, double air, double pack)
    {
        if (Plugged)
        {
            port!.Write(Encoding.UTF8.GetBytes($"can {Text(can)} °C\r\n"));
            Sent["can"].Add(can);
        }
        await publisher!.PublishAsync(new MqttApplicationMessageBuilder().WithTopic("stand/air").WithPayload($"{Text(air)} °C").WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).Build());
        Sent["air"].Add(air);
        unanswered.Add(($"pack {Text(pack)} V", pack));
        Sent["pack"].Add(pack);
        await PostAsync();
    }

    /// <summary>Posts what has no answer yet; a bench that doesn't answer gets it again next time.</summary>
    /// <returns>Whether nothing is left.</returns>
    public async Task<bool> PostAsync()
    {
        try
        {
            using var answer = await http.PostAsync($"/api/live?source=stand&session=evening&first={number}", new StringContent(string.Join('\n', unanswered.Select(one => one.Line))));
            if (!answer.IsSuccessStatusCode) return false;
            number += unanswered.Count;
            unanswered.Clear();
            return true;
        }
        catch (Exception cause) when (cause is HttpRequestException or TaskCanceledException)
        {
            return false;
        }
    }

    /// <summary>Waits until something holds.</summary>
    public static async Task UntilAsync(Func<bool> holds)
    {
        for (var end = DateTime.UtcNow.AddSeconds(60); !holds(); await Task.Delay(50))
            if (DateTime.UtcNow > end) throw new TimeoutException("It did not come to pass within a minute.");
    }

    static string Text(double value) => value.ToString("0.0##", CultureInfo.InvariantCulture);

    static Process Start(string program, params string[] arguments) => Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true, RedirectStandardOutput = true })!;

    static bool Answers(int port)
    {
        try
        {
            using var client = new TcpClient("127.0.0.1", port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    public ValueTask DisposeAsync()
    {
        if (Plugged) Unplug();
        publisher?.Dispose();
        http.Dispose();
        broker.Kill();
        broker.WaitForExit();
        broker.Dispose();
        return ValueTask.CompletedTask;
    }
}
