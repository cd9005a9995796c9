namespace Coolproof.Store.Tests;

/// <summary>Runs the tests; or, as a child of one of them, appends until it is killed.</summary>
internal static class EntryPoint
{
    public static async Task<int> Main(string[] arguments)
    {
        if (arguments is [Appender.Word, var place, var seed]) return await Appender.RunAsync(place, int.Parse(seed, System.Globalization.CultureInfo.InvariantCulture));
        if (arguments is [VersionOne.Word, var file])
        {
            VersionOne.Make(file);
            return 0;
        }

        if (arguments.Any(argument => argument is "-automated" or "@@")) return await Xunit.Runner.InProc.SystemConsole.ConsoleRunner.Run(arguments);
        return await Xunit.MicrosoftTestingPlatform.TestPlatformTestFramework.RunAsync(arguments, SelfRegisteredExtensions.AddSelfRegisteredExtensions);
    }
}
