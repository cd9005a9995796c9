using Coolproof.EndToEnd.Support;
using Microsoft.Playwright;

namespace Coolproof.EndToEnd.RunClock;

/// <summary>What made a newcomer hesitate on the run clock: docs/newcomer.md, second walk.</summary>
public sealed class SecondWalkTests(Chromium chromium)
{
    [Fact]
    public async Task On_a_phone_fan_and_number_fit_beside_the_shot_a_wrong_number_is_refused_in_sight_and_two_numbers_are_typed_in_a_row()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 60);
        await using var phone = await Phone.OpenAsync(chromium, bench, evening.Day);
        await phone.Page.Locator("#here").GetByText("All saved").WaitForAsync();
        await phone.PressAsync("option");
        await phone.PressAsync($"pick-{evening.Fan:D}");
        await phone.PressAsync("fan-before-yes");
        await phone.PressAsync("role-alone");
        await phone.Act("role-say").WaitForAsync(new() { State = WaitForSelectorState.Detached });
        await phone.PressAsync("go-now");
        await phone.StepAsync("Driving");
        await phone.PressAsync("stop");
        await phone.StepAsync("Rolling");
        await phone.PressAsync("halt");
        await phone.StepAsync("Halted");
        await phone.Act("fan-after-yes").WaitForAsync();
        Assert.Equal("", await OutOfSightAsync(phone, "fan-after-yes", "fan-after-no", "fan-after-unseen", "take-back", "shot"));
        await phone.PressAsync("shot");
        await phone.StepAsync("Shooting");
        await phone.Page.Locator("#shots button[data-accent]").WaitForAsync();
        var first = await phone.Shots.First.GetAttributeAsync("data-act") ?? "";
        Assert.Equal("", await OutOfSightAsync(phone, first, "fan-after-yes", "fan-after-no", "fan-after-unseen", "shot"));
        await phone.PressAsync("shot");

        await phone.PressShotAsync(0);
        foreach (var key in "999") await phone.Page.Locator(".key").GetByText($"{key}", new() { Exact = true }).ClickAsync();
        await phone.PressAsync("pad-save");
        var refused = phone.Page.Locator("#sheet .refused");
        await refused.GetByText("Not saved: 999").WaitForAsync();
        var place = await refused.BoundingBoxAsync() ?? throw new InvalidOperationException("nothing is said");
        Assert.InRange(place.Y, 0, 844 - place.Height);
        for (var digit = 0; digit < 3; digit++) await phone.Page.Locator(".key").GetByText("\u232b").ClickAsync();
        await phone.TypeAsync("66.5");
        await phone.PressShotAsync(1);
        await phone.TypeAsync("65.4");
        await phone.Page.Locator("#shots button[data-accent]").WaitForAsync(new() { State = WaitForSelectorState.Detached });
        var shots = await phone.Page.Locator("#shots").InnerTextAsync();
        Assert.Contains("66.5", shots, StringComparison.Ordinal);
        Assert.Contains("65.4", shots, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_length_of_driving_is_one_of_the_usual_ones_or_typed_as_minutes_and_seconds()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 360);
        await using var phone = await Phone.OpenAsync(chromium, bench, evening.Day);
        await phone.Act("this-run").GetByText("Drive 6:00").WaitForAsync();
        await phone.PressAsync("this-run");
        await phone.PressAsync("pick-drive-3");
        await phone.Act("this-run").GetByText("Drive 3:00").WaitForAsync();
        await phone.PressAsync("this-run");
        await phone.PressAsync("pick-drive");
        await phone.TypeAsync("530");
        await phone.Act("this-run").GetByText("Drive 5:30").WaitForAsync();
        Assert.Equal("5:30", await phone.Page.Locator("#digits").InnerTextAsync());
    }

    // Which of the buttons are not wholly in the window, or covered there by something else.
    static Task<string> OutOfSightAsync(Phone phone, params string[] acts) => phone.Page.EvaluateAsync<string>("""
        acts => acts.filter(act => {
            const button = document.querySelector(`button[data-act="${act}"]`);
            const box = button?.getBoundingClientRect();
            const at = (x, y) => document.elementFromPoint(x, y)?.closest("button") === button;
            return !box || !at(box.left + box.width / 2, box.top + 3) || !at(box.left + box.width / 2, box.bottom - 3);
        }).join(" ")
        """, acts);
}
