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
        var port = QuantityOption.Whole("--port", $"Where it answers; 0 for any free port. Otherwise {WebSettings.UsualPort}.", 0, 65535);
        var lan = new Option<bool>("--lan") { Description = "Lets phones on the same network connect, once each is paired. Otherwise only this machine." };
        var store = new Option<string?>("--store") { HelpName = "FILE|postgres://…", Description = "The notebook. Otherwise one in your own data folder." };
        var command = new Command("serve", "Serves the pit table to the browser of this machine, and with --lan to paired phones.") { port.Option, lan, store };
        command.SetAction((parsed, cancel) => new Serving(terminal).RunAsync(
            new ServeRequest((int)(port.In(parsed) ?? WebSettings.UsualPort), parsed.GetValue(lan), parsed.GetValue(store), OpenBrowser: false), cancel));
        return command;
    }
}
