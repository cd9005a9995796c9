using Coolproof.Live.Sources;
using MQTTnet;
using MQTTnet.Exceptions;
using MQTTnet.Protocol;

namespace Coolproof.Live.Tests;

/// <summary>Topics of a real broker, and the pit table's own.</summary>
public sealed class MqttTests : IDisposable
{
    readonly Bench bench = new();

    [Fact]
    public async Task Topics_of_a_broker_are_heard_also_after_it_was_away_and_what_it_retained_is_left_out()
    {
        var port = Child.FreePort();
        using var ending = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var source = new MqttSource(new MqttPlace("127.0.0.1", port, "bench/#", null), null, bench.Board, TimeProvider.System);
        var running = source.RunAsync(ending.Token);
        await Bench.UntilAsync(() => State() is { Alive: false, Trouble: not null }, "the missing broker is told");

        using (await Child.BrokerAsync(port, bench.File("broker.conf")))
        {
            using var sender = await SenderAsync(port);
            await PublishAsync(sender, "bench/old", "1 V", retain: true);
            await Bench.UntilAsync(() => State()?.Alive == true, "the broker is heard");
            await PublishAsync(sender, "elsewhere/can", "1 °C");
            for (var i = 0; i < 100; i++) await PublishAsync(sender, "bench/pit/can", $"{i} °C");
            await PublishAsync(sender, "bench/more", "motor 70 °C\npack 7.4 V @-1s\n");
            await PublishAsync(sender, "bench/2", "12");
            await Bench.UntilAsync(() => bench.Board.View.Channels.Count == 4, "four channels are heard");
            Assert.Equal(["can", "motor", "pack", "t2"], bench.Board.View.Channels.Select(one => one.Channel.Name));
            Assert.Equal(Enumerable.Range(0, 100).Select(one => (double)one), bench.Kept("can").Select(one => one.Value));
        }
        await Bench.UntilAsync(() => State()?.Alive == false, "the broker that went is told");
        using (await Child.BrokerAsync(port, bench.File("broker.conf")))
        {
            await Bench.UntilAsync(() => State()?.Alive == true, "the broker is heard again");
            using var sender = await SenderAsync(port);
            await PublishAsync(sender, "bench/pit/can", "300 °C");
            await Bench.UntilAsync(() => bench.Kept("can").Any(one => one.Value == 300), "the first value after it is kept");
            await ending.CancelAsync();
            await running.WaitAsync(TimeSpan.FromSeconds(5), TestContext.Current.CancellationToken);
        }
    }

    [Fact]
    public async Task What_a_broker_held_while_the_connection_was_away_counts_where_it_says_its_time()
    {
        var (port, between) = (Child.FreePort(), Child.FreePort());
        using var ending = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        using var broker = await Child.BrokerAsync(port, bench.File("broker.conf"));
        using var sender = await SenderAsync(port);
        Task running;
        using (Child.Relay(between, port))
        {
            running = new MqttSource(new MqttPlace("127.0.0.1", between, "bench/#", null), null, bench.Board, TimeProvider.System).RunAsync(ending.Token);
            await Bench.UntilAsync(() => State()?.Alive == true, "the broker is heard");
            await PublishAsync(sender, "bench/can", "1 °C");
            await Bench.UntilAsync(() => bench.Kept("can").Count == 1, "the first value is kept");
        }
        await Bench.UntilAsync(() => State()?.Alive == false, "the cut connection is noticed");
        await PublishAsync(sender, "bench/can", "2 °C");
        var then = DateTimeOffset.UtcNow;
        await PublishAsync(sender, "bench/can", $"3 °C @{then.ToUnixTimeMilliseconds()}");
        using (Child.Relay(between, port))
        {
            await Bench.UntilAsync(() => bench.Kept("can").Any(one => one.Value == 3), "what said its time is kept");
            Assert.Equal(then.ToUnixTimeMilliseconds(), bench.Kept("can").Single(one => one.Value == 3).AtMs);
            Assert.DoesNotContain(bench.Kept("can"), one => one.Value == 2);
            Assert.Contains("says no time", State()?.LastProblem?.Reason, StringComparison.Ordinal);
            await Task.Delay(1500, TestContext.Current.CancellationToken);
            await PublishAsync(sender, "bench/can", "4 °C");
            await Bench.UntilAsync(() => bench.Kept("can").Any(one => one.Value == 4), "what comes after is kept");
            await ending.CancelAsync();
            await running.WaitAsync(TimeSpan.FromSeconds(5), TestContext.Current.CancellationToken);
        }
    }

    [Fact]
    public async Task The_own_broker_takes_values_from_who_knows_its_password_and_passes_nothing_on()
    {
        var port = Child.FreePort();
        using var ending = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var running = new OwnBroker(port, lan: false, "pit-secret", bench.Board, TimeProvider.System).RunAsync(ending.Token);
        await Bench.UntilAsync(() => State()?.Alive == true, "the broker answers");
        var heard = 0;
        using var sender = await SenderAsync(port, "pit-secret");
        using var listener = await SenderAsync(port, "pit-secret");
        listener.ApplicationMessageReceivedAsync += _ => Task.FromResult(Interlocked.Increment(ref heard));
        await listener.SubscribeAsync("#", MqttQualityOfServiceLevel.AtLeastOnce, TestContext.Current.CancellationToken);
        for (var i = 0; i < 50; i++) await PublishAsync(sender, "can", $"{i} °C");
        Assert.Equal(50, bench.Kept("can").Count); // kept before it is acknowledged (QoS 1)
        Assert.Equal(0, heard);
        foreach (var wrong in new[] { null, "", "guess" })
        {
            using var client = new MqttClientFactory().CreateMqttClient();
            Assert.NotEqual(MqttClientConnectResultCode.Success, await TryAsync(client, port, wrong));
        }
        await ending.CancelAsync();
        await running.WaitAsync(TimeSpan.FromSeconds(5), TestContext.Current.CancellationToken);
    }

    [Fact]
    public async Task A_port_that_is_taken_is_said_with_what_to_do_and_had_once_it_is_free()
    {
        using var ending = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        Task running;
        using (var listener = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, 0))
        {
            listener.Start();
            running = new OwnBroker(((System.Net.IPEndPoint)listener.LocalEndpoint).Port, lan: false, "x", bench.Board, TimeProvider.System).RunAsync(ending.Token);
            await Bench.UntilAsync(() => State()?.Trouble?.Contains("--broker", StringComparison.Ordinal) == true, "the taken port is said");
        }
        await Bench.UntilAsync(() => State()?.Alive == true, "the port is had");
        await ending.CancelAsync();
        await running.WaitAsync(TimeSpan.FromSeconds(5), TestContext.Current.CancellationToken);
    }

    static async Task<MqttClientConnectResultCode?> TryAsync(IMqttClient client, int port, string? password)
    {
        try
        {
            return (await client.ConnectAsync(Options(port, password), TestContext.Current.CancellationToken)).ResultCode;
        }
        catch (MqttCommunicationException)
        {
            return null;
        }
    }

    static async Task<IMqttClient> SenderAsync(int port, string? password = null)
    {
        var client = new MqttClientFactory().CreateMqttClient();
        await client.ConnectAsync(Options(port, password), TestContext.Current.CancellationToken);
        return client;
    }

    static MqttClientOptions Options(int port, string? password)
    {
        var options = new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port);
        return (password is null ? options : options.WithCredentials("sensor", password)).Build();
    }

    static Task PublishAsync(IMqttClient sender, string topic, string text, bool retain = false) => sender.PublishAsync(
        new MqttApplicationMessageBuilder().WithTopic(topic).WithPayload(text).WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).WithRetainFlag(retain).Build(), TestContext.Current.CancellationToken);

    SourceState? State() => bench.Board.View.Sources is [var only] ? only : null;

    public void Dispose() => bench.Dispose();
}
