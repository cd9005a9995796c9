using System.Net;

namespace Coolproof.Tests.Serving;

/// <summary>`coolproof serve`, and `coolproof` alone, as a process.</summary>
public sealed class ServeCommandTests : IDisposable
{
    readonly string home = Directory.CreateTempSubdirectory("coolproof-").FullName;

    public void Dispose() => Directory.Delete(home, recursive: true);

    [Theory]
    [InlineData]
    [InlineData("serve", "--port", "0")]
    public async Task It_says_where_it_answers_is_ready_and_ends_well_when_interrupted(params string[] arguments)
    {
        using var served = await ServedProgram.StartAsync(home, arguments);
        using var client = new HttpClient();
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync(new Uri(served.Address, "/health"), TestContext.Current.CancellationToken)).StatusCode);
        Assert.True(served.Address.IsLoopback);
        Assert.Contains(Path.Combine(home, "coolproof", "notebook.coolproof"), served.Said);
        Assert.Equal(0, await served.InterruptAsync());
    }

    [Fact]
    public void A_port_or_store_that_makes_no_sense_is_bad_input_and_a_folder_that_is_not_there_a_failure()
    {
        Assert.Equal(2, ProgramRun.Of("serve", "--port", "70000").ExitCode);
        Assert.Equal(2, ProgramRun.Of("serve", "--store", "mysql://somewhere").ExitCode);
        var run = ProgramRun.Of("serve", "--port", "0", "--store", Path.Combine(home, "nix", "n.coolproof"));
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("is not there", run.Error);
    }

    [Theory]
    [InlineData("--serial", "ttyUSB0", "/dev/ttyUSB0@115200")]
    [InlineData("--mqtt", "pit.local", "names no topic")]
    [InlineData("--mqtt", "kim:secret@pit/a", "COOLPROOF_MQTT_PASSWORD")]
    [InlineData("--broker", "0", "--broker 0")]
    public void A_source_of_sensors_that_makes_no_sense_is_bad_input_with_what_would_be_right(string option, string typed, string says)
    {
        var run = ProgramRun.Of("serve", option, typed);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(says, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_port_that_is_taken_is_said_with_the_way_round_it()
    {
        using var served = await ServedProgram.StartAsync(home, "serve", "--port", "0");
        var run = ProgramRun.Of("serve", "--port", $"{served.Address.Port}", "--store", Path.Combine(home, "other.coolproof"));
        Assert.Equal(1, run.ExitCode);
        Assert.Contains($"127.0.0.1:{served.Address.Port}", run.Error);
        Assert.Contains("--port 0", run.Error);
    }
}
