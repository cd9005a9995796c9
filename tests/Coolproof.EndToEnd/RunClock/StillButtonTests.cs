using Coolproof.EndToEnd.Support;

namespace Coolproof.EndToEnd.RunClock;

/// <summary>Nothing that time brings moves a button away from under the finger.</summary>
public sealed class StillButtonTests(Chromium chromium)
{
    [Theory]
    [InlineData(390, 844)]
    [InlineData(360, 640)]
    [InlineData(844, 390)]
    public async Task The_buttons_of_a_car_that_rolls_in_stay_where_they_are(int width, int height)
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 60, air: false);
        await using var phone = await Phone.OpenAsync(chromium, bench, evening.Day);
        await phone.Page.SetViewportSizeAsync(width, height);
        await phone.RoleAsync("any");
        await phone.PressAsync("go-now");
        await phone.StepAsync("Driving");
        await phone.PressAsync("stop");
        await phone.StepAsync("Rolling");
        string[] there = ["halt", "shot", "no-stop"];
        var first = await PlacesAsync(phone, there);
        foreach (var later in (string[])["halt-10", "halt-20", "halt-30"])
        {
            await phone.Act(later).WaitForAsync();
            Assert.Equal(first, await PlacesAsync(phone, there));
        }
        await Looked.AtAsync(phone.Page, $"rolling-{width}", width > height, "light");
    }

    static async Task<string> PlacesAsync(Phone phone, string[] acts)
    {
        var places = await Task.WhenAll(acts.Select(act => phone.Act(act).BoundingBoxAsync()));
        return string.Join("; ", acts.Zip(places, (act, place) => $"{act} {place?.X:0},{place?.Y:0}"));
    }
}
