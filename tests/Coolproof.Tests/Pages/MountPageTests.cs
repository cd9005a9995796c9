using System.Net;
using Coolproof.Board;
using Coolproof.Tests.Serving;

namespace Coolproof.Tests.Pages;

/// <summary>The page of a mount: by ruler and fan alone, beside a verdict, and with what can't be right.</summary>
public class MountPageTests
{
    const string Readings = "option,run,drive_min,ambient_c,read_c,stop_to_read_s\nbare can,1,6,27,79.8,9\nbare can,1,,,78.9,18\nblower,2,6,27,61,10\nbare can,3,6,27,80.1,9\n";

    [Fact]
    public async Task It_starts_as_the_demos_fan_and_says_what_the_command_says()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/mount?name=clamp&in=c&size=25&hub=13&flow=4.5&stall=30&rated=5&supplied=6&gap=8&shell=24&hole=0&grille=100&fins=60&clamp=35&from=shell");
        Assert.Equal(HttpStatusCode.OK, reader.Status);
        // The demo's clamp, with its numbers from demo/mounts.json, is the same mount as the command's.
        var sheet = Notebook.MountSheetReader.Read(await File.ReadAllTextAsync(TestFiles.Of("demo", "mounts.json"), TestContext.Current.CancellationToken)).Asked!;
        var alone = Advice.Mounts.MountPredictions.Of(sheet with { Mounts = [sheet.Mounts[1]] }, 1);
        Assert.Contains(Words.MountPage.PerDegree(alone.Mounts[0].WattsPerKelvin, new(Notebook.TemperatureUnitChoice.Celsius)), Plain(reader.Heading));
        Assert.Contains($"{3600 * alone.Mounts[0].Middle.Flow.FlowM3S:0.0} m³/h of {3600 * alone.Mounts[0].Middle.Flow.FreeM3S:0.0} free", Plain(reader.Text));
        Assert.Contains("Outside correlation", reader.Text);
        Assert.NotEmpty(reader.Page.QuerySelectorAll("#mount-drawing svg"));
        Assert.Contains("A fan on more than its rated voltage wears sooner", reader.Text);
        Assert.Contains("fingers off fan and gears", reader.Text);
        Assert.Null(reader.Page.QuerySelector("#mount-driven table"));

        await reader.GoAsync("/mount");
        var start = Advice.Mounts.MountPredictions.Of(sheet with { Mounts = [sheet.Mounts[2]] }, 1);
        Assert.Contains(Words.MountPage.PerDegree(start.Mounts[0].WattsPerKelvin, new(Notebook.TemperatureUnitChoice.Celsius)), Plain(reader.Heading));
    }

    [Fact]
    public async Task Everything_that_cant_be_right_is_named_in_the_forms_words_with_its_remedy()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/mount?in=c&fans=behind&gap=20&shell=24&flow=900&angle=75&clearance=100&shroud=yes&speed=fast&can=20");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, reader.Status);
        Assert.Equal("This mount can’t be right", reader.Heading);
        string[] faults = [.. reader.Page.QuerySelectorAll("#mount-head .wrong").Select(one => Plain(one.TextContent))];
        Assert.All(
            ["Mean speed of the car: expected a number", "Free flow: found 900 m³/h; expected a number from 0.05 to 400 m³/h", "Angle off straight at the can: found 75 °", "From can to shell: found 24 mm; expected more than 40 mm", "Between can and shroud: found 100 mm", "The can at: found 20 °C; expected a can at least 5 K warmer"],
            said => Assert.Contains(faults, fault => fault.StartsWith(said, StringComparison.Ordinal)));
        Assert.DoesNotContain(faults, fault => fault.Contains("mounts[", StringComparison.Ordinal) || fault.Contains("Mm", StringComparison.Ordinal) || fault.Contains("Kmh", StringComparison.Ordinal));
        Assert.Equal("75", reader.Page.QuerySelector("#mount-form [name=angle]")!.GetAttribute("value")); // so that it can be put right
        await reader.GoAsync("/mount/answer?fans=none&duct=elsewhere");
        Assert.Equal(HttpStatusCode.OK, reader.Status); // a slider on its way passes what can't be
        Assert.Contains("Duct: found a duct without flow", Plain(reader.Page.QuerySelector("#mount-head")!.TextContent));
        Assert.Contains("turn its mouth forward", reader.Page.QuerySelector("#mount-head")!.TextContent);
    }

    [Fact]
    public async Task Degrees_of_the_person_are_kept_and_a_link_in_others_gives_the_same()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/mount?in=c&air=30&can=70");
        var celsius = reader.Heading;
        await reader.GoAsync("/mount?in=f&air=86&can=158");
        Assert.Equal(celsius, reader.Heading);
        reader.Keep("coolproof-look", "theme=light&units=f&mass=g&hand=right");
        await reader.GoAsync("/mount?in=c&air=30&can=70");
        Assert.Equal(("86", "158"), (reader.Page.QuerySelector("#mount-form [name=air]")!.GetAttribute("value"), reader.Page.QuerySelector("#mount-form [name=can]")!.GetAttribute("value")));
        Assert.Contains("watts per °F", Plain(reader.Heading));
        await reader.GoAsync("/mount?in=f&air=200");
        Assert.Contains("Air: found 200 °F; expected a number from -40 to 140 °F", Plain(reader.Text));
    }

    [Fact]
    public async Task Beside_a_verdict_it_tells_kelvin_and_what_it_predicted_of_a_mount_that_was_driven()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/paper");
        await reader.SendAsync("Look through it", ("table", Readings));
        await reader.SendAsync("Keep these readings");
        var day = reader.Notebook.Days.Single().Id;
        for (var tries = 0; tries < 600 && pit.Get<VerdictBoard>().Of(day).Judgement is not Evidence.Judged; tries++) await Task.Delay(200, TestContext.Current.CancellationToken);
        await reader.GoAsync($"/verdict/{day}?show=1");
        Assert.Contains(reader.Page.QuerySelectorAll("a"), link => link.GetAttribute("href") == $"/mount/{day}");
        await reader.GoAsync($"/mount/{day}");
        Assert.Contains("than with the blower", Plain(reader.Heading));
        Assert.Equal(3, reader.Page.QuerySelectorAll("#mount-driven tbody tr").Length);
        await reader.GoAsync($"/mount/{day}?name=bare+can&fans=none&over=open&grille=100");
        Assert.Contains("Predicted against found, bare can", reader.Text);
        Assert.Equal(2, reader.Page.QuerySelectorAll("#mount-driven tbody tr").Length);
        reader.Keep("coolproof-hide", "yes");
        await reader.GoAsync($"/mount/{day}");
        Assert.Equal("Hidden until the round is done", reader.Heading);
        Assert.Null(reader.Page.QuerySelector("#mount-form, #mount-driven, svg.picture"));
        await reader.GoAsync($"/mount/{day}/answer");
        Assert.Equal(HttpStatusCode.NoContent, reader.Status);
        await reader.GoAsync($"/mount/{Guid.CreateVersion7()}");
        Assert.Equal("There is no such day or question here", reader.Heading);
    }

    static string Plain(string text) => text.Replace('\u00a0', ' ').Replace('\u202f', ' ');
}
