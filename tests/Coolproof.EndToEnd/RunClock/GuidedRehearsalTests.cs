using Coolproof.EndToEnd.Pages;
using Coolproof.EndToEnd.Support;
using Coolproof.Notebook.Journal;
using Microsoft.Playwright;
using NodaTime;

namespace Coolproof.EndToEnd.RunClock;

/// <summary>A made-up motor driven on the run clock itself: time flies while it drives and cools, the gun shows a number at each shot, and the truth stands beside the verdict.</summary>
public sealed class GuidedRehearsalTests(Chromium chromium)
{
    [Fact]
    public async Task An_evening_is_driven_in_minutes_and_its_truth_is_shown_beside_the_verdict()
    {
        await using var bench = await Bench.StartAsync();
        var page = await PitTable.OpenAsync(chromium, bench, "light", wide: true);
        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Button, new() { Name = "Drive a rehearsal yourself" }).ClickAsync();
        await page.ArriveAsync("**/clock/*");
        var day = Guid.Parse(page.Url.Split('/')[^1]);
        var ordinary = await Evening.NoteAsync(bench, driveS: 5);

        await using var phone = await Phone.OpenAsync(chromium, bench, day);
        await phone.Page.Locator("#rehearsal:not([hidden])").WaitForAsync();
        for (var run = 0; run < 3; run++)
        {
            await phone.PressAsync("go-now");
            var pressed = SystemClock.Instance.GetCurrentInstant();
            await phone.StepAsync("Rolling");
            Assert.InRange((SystemClock.Instance.GetCurrentInstant() - pressed).TotalSeconds, 3, 40); // six minutes of it
            await phone.PressAsync("halt");
            await phone.StepAsync("Halted");
            for (var shot = 0; shot < 2; shot++)
            {
                await phone.PressAsync("shot");
                await phone.Shots.Nth(shot).GetByText("°C").WaitForAsync();
            }
            await phone.PressAsync("next-run");
            await phone.PressAsync("cooling");
            await phone.PressAsync("pick-pit-fan");
            await phone.Page.GetByText("times as fast").WaitForAsync();
            await Task.Delay(5_000, TestContext.Current.CancellationToken);
            await phone.PressAsync("cooling-end");
            if (run == 1) await phone.ReloadAsync(); // its clock goes on from where it was
        }
        await phone.SentAsync();
        // Another day on the same phone has the true time.
        await phone.ToClockAsync(ordinary.Day);
        Assert.True(await phone.Page.Locator("#rehearsal").IsHiddenAsync());
        await phone.PressAsync("go-now");
        await phone.StepAsync("Driving");
        var went = phone.Pressed["go-now"];
        await phone.SentAsync();

        var notebook = await bench.NotebookAsync();
        AloneTests.Near(went, Assert.Single(notebook.RunsOf(ordinary.Day)).Go!.At);
        var runs = notebook.RunsOf(day);
        Assert.Equal(notebook.Find<NotedDay>(day)!.Plan.Take(3), runs.Take(3).Select(run => run.Option!.Value));
        foreach (var run in runs.Take(3))
        {
            Assert.Equal(360, run.DriveS!.Value, 2.0);
            Assert.InRange(RunAir.Of(run, notebook.Find<NotedDay>(day))!.AirC, 20, 32); // noted as by a thermometer, at the time of the run
            Assert.InRange(run.StopToReadS(run.Shots[0])!.Value, 0, 30); // by hand, at the true speed
            Assert.All(run.Shots, shot => Assert.InRange(shot.ReadC!.Value, 25, 160));
        }
        Assert.True(runs[2].Halt!.At < SystemClock.Instance.GetCurrentInstant()); // no stamp lies in the bench's future
        Assert.InRange((runs[1].Go!.At - runs[0].Halt!.At).TotalMinutes, 4, 30);
        Assert.All(runs.Zip(runs.Skip(1)), pair => Assert.True(pair.Second.Since > pair.First.Since));

        await page.GotoAsync($"/verdict/{day}");
        await page.Locator("h1.answer").WaitForAsync();
        await page.Locator("#lesson summary").ClickAsync();
        var lesson = await page.Locator("#lesson").InnerTextAsync();
        Assert.All(["Truly coolest: the ", "First reading minus air", "Delay.", "Cooling.", "Order.", "no motor was driven"], words => Assert.Contains(words, lesson));
        Assert.Equal(3, await page.Locator("#lesson tbody tr").CountAsync());
        await page.Context.CloseAsync();
    }
}
