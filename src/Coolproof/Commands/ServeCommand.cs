using System.CommandLine;
using Coolproof.Screen;
using Coolproof.Web;

namespace Coolproof.Commands;

/// <summary>`coolproof serve` as it is typed.</summary>
internal static class ServeCommand
{
    /// <summary>The command.</summary>
    public static Command On(Terminal terminal)
    {
        var port = QuantityOption.Whole("--port", $"Where it answers; 0 for any free port. Otherwise {WebSettings.UsualPort}, or any free one where that is taken.", 0, 65535);
        var https = QuantityOption.Whole("--https-port", "Where it answers encrypted, with --lan or --certificate. Otherwise the port after --port.", 0, 65535);
        var lan = new Option<bool>("--lan") { Description = "Lets phones on the same network connect, once each has been let in. Otherwise only this machine." };
        var store = StoreOption.Make();
        var certificate = new Option<string?>("--certificate") { HelpName = "FILE.pfx|FILE.pem", Description = "Certificate and private key for HTTPS. Otherwise, with --lan, one that this machine makes and keeps." };
        var password = new Option<string?>("--certificate-password") { HelpName = "WORD", Description = "Its password, if it has one." };
        var sensors = new SensorOptions();
        var command = new Command("serve", "Serves the pit table to the browser of this machine, and with --lan to phones that were let in.")
        {
            port.Option, https.Option, lan, store, certificate, password, sensors.Serial, sensors.Mqtt, sensors.Broker.Option,
        };
        command.SetAction((parsed, cancel) => new Serving(terminal).RunAsync(
            new ServeRequest(
                (int?)port.In(parsed), (int?)https.In(parsed), parsed.GetValue(lan), parsed.GetValue(store), parsed.GetValue(certificate), parsed.GetValue(password),
                OpenBrowser: false)
            {
                Sensors = sensors.In(parsed, Environment.GetEnvironmentVariable),
            },
            cancel));
        return command;
    }
}
