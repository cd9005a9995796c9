using Coolproof.Notebook;

namespace Coolproof.Pictures.Tests;

/// <summary>Every picture at both widths in all themes, left beside the tests (folder gallery) for human eyes.</summary>
public sealed class GalleryTests
{
    private static readonly (string Name, Func<PictureStyle, Picture> Draw)[] Pictures =
    [
        ("verdict-six", s => VerdictPicture.Of(Samples.Six(), s)),
        ("verdict-two", s => VerdictPicture.Of(Samples.Two(), s)),
        ("verdict-one", s => VerdictPicture.Of(Samples.One(), s)),
        ("verdict-none", s => VerdictPicture.Of(Samples.None(), s)),
        ("verdict-forty", s => VerdictPicture.Of(Samples.Forty(), s)),
        ("verdict-fahrenheit", s => VerdictPicture.Of(Samples.Six(), s with { Units = TemperatureUnitChoice.Fahrenheit })),
        ("verdict-odd-names", s => VerdictPicture.Of(Samples.Named(OddNames.All), s)),
        ("day", s => RunPicture.OfDay(Samples.Six(), "Tuesday evening", s)),
        ("run", s => RunPicture.OfRun(Samples.Six(), Samples.Six().Runs[4], s)),
        ("run-without-readings", s => RunPicture.OfRun(Samples.Six(), Samples.Run("Bare can", 90, "3", 0), s)),
        ("run-read-on-the-winding", s => RunPicture.OfRun(Samples.Six(), Samples.ReadOnTheWinding(0), s)),
        ("run-read-on-can-and-winding", s => RunPicture.OfRun(Samples.Six(), Samples.ReadOnTheWinding(2), s)),
        ("forecast-one-race", s => ForecastPicture.Of(Races.Of(1, 78, 120), Races.Day(1), 2, s)),
        ("forecast-twelve-races-limits-alike", s => ForecastPicture.Of(Races.Of(12, 121, 120), Races.Day(12), 2, s)),
        ("forecast-with-its-map", s => ForecastPicture.Of(Races.Of(1, 78, 120), Races.Day(1), 2, s, Races.Map())),
        ("forecast-fahrenheit", s => ForecastPicture.Of(Races.Of(3, 78, 155), Races.Day(3), 2, s with { Units = TemperatureUnitChoice.Fahrenheit })),
        ("why-two-runs", s => WhyPicture.Of("run 5", "run 2", Differences.Of(), s)),
        ("why-days-fahrenheit", s => WhyPicture.Of(OddNames.All[0], "Tuesday evening", Differences.Of(), s with { Units = TemperatureUnitChoice.Fahrenheit })),
        ("mounts-of-every-kind", s => MountPicture.Of(MountSheets.All(), [.. MountSheets.All().Mounts.Select(_ => "0.61 watts per °C (0.39 to 1.01)")], s)),
        ("mount-with-a-long-name", s => MountPicture.Of(MountSheets.Sheet(MountSheets.All().Mounts[1] with { Name = OddNames.All[0] }), null, s)),
        ("gears", s => GearPicture.Of(Gears.Six(), Gears.Limit(85), "In a race of 6 min the quickest is a pinion of 25.", s)),
        ("gears-none-accepted-one-pinion", s => GearPicture.Of(Gears.Hot(), Gears.Limit(60), "No pinion stays under every limit.", s with { Units = TemperatureUnitChoice.Fahrenheit })),
        ("spend", s => SpendPicture.Of(Stairs.Four(), Stairs.Others(), (40, "budget 40 €"), Stairs.Beyond(), "Within 40 €: two fans in a duct.", s)),
        ("spend-nothing", s => SpendPicture.Of([Stairs.Four()[0]], [], null, null, "Whatever it costs nothing that fits makes the can cooler.", s)),
        ("doubt", s => DoubtPicture.Of(Samples.Six(), s)),
    ];

    public static TheoryData<string> Names => [.. Pictures.Select(p => p.Name)];

    internal static Picture Draw(string name, PictureStyle style) => Pictures.Single(p => p.Name == name).Draw(style);

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_picture_is_drawn_at_both_widths_in_all_themes(string name)
    {
        string folder = Path.Combine(AppContext.BaseDirectory, "gallery");
        Directory.CreateDirectory(folder);
        foreach (int width in new[] { PictureStyle.PhoneWidthPx, PictureStyle.PageWidthPx })
        {
            foreach (Theme theme in Enum.GetValues<Theme>())
            {
                Picture picture = Draw(name, new(width, theme, Note: "Made-up readings."));
                string path = Path.Combine(folder, $"{name}-{width}-{theme}".ToLowerInvariant());
                picture.Save(path + ".svg");
                picture.Save(path + ".png");
                Assert.True(new FileInfo(path + ".svg").Length > 500);
                Assert.True(new FileInfo(path + ".png").Length > 500);
            }
        }
    }
}
