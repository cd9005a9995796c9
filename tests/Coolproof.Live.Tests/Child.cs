using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace Coolproof.Live.Tests;

/// <summary>A program that a test starts and ends.</summary>
sealed class Child : IDisposable
{
    readonly Process process;

    public Child(string program, params string[] arguments) => process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true, RedirectStandardOutput = true })
        ?? throw new InvalidOperationException($"{program} can't be started");

    /// <summary>A pair of connected serial ports: what is written to one is read from the other.</summary>
    public static Child SerialPair(string one, string other) => new("socat", $"pty,raw,echo=0,link={one}", $"pty,raw,echo=0,link={other}");

    /// <summary>A broker that lets everybody in, on this machine only.</summary>
    public static async Task<Child> BrokerAsync(int port, string settings)
    {
        await File.WriteAllTextAsync(settings, $"listener {port} 127.0.0.1\nallow_anonymous true\npersistence false\nuser root\n", TestContext.Current.CancellationToken);
        var child = new Child(File.Exists("/usr/sbin/mosquitto") ? "/usr/sbin/mosquitto" : "mosquitto", "-c", settings);
        await Bench.UntilAsync(() => Answers(port), $"a broker answers on port {port}");
        return child;
    }

    /// <summary>A cable between two ports of this machine, which is cut when it is disposed.</summary>
    public static Child Relay(int from, int to) => new("socat", $"TCP-LISTEN:{from},bind=127.0.0.1,reuseaddr,fork", $"TCP:127.0.0.1:{to}");

    /// <summary>A port that nobody has.</summary>
    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    static bool Answers(int port)
    {
        try
        {
            using var client = new TcpClient();
            client.Connect(IPAddress.Loopback, port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    public void Dispose()
    {
        if (!process.HasExited)
        {
            process.Kill(entireProcessTree: true);
            process.WaitForExit();
        }
        process.Dispose();
    }
}
