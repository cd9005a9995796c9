using System.Xml.Linq;
using Coolproof.Evidence.Causes;

namespace Coolproof.Pictures.Tests;

public sealed class WhyPictureTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static string[] Read(RunDifference difference) =>
        [.. XElement.Parse(WhyPicture.Of("run 5", "run 2", difference).Svg()).Elements(Svg + "text").Select(t => t.Value.Replace('\u00a0', ' '))];

    [Fact]
    public void Both_readings_and_every_cause_stand_in_it_largest_first_and_what_is_not_explained_last()
    {
        string[] read = Read(Differences.Of());
        string[] rows = [.. read.Where(t => t is "run 2" or "run 5" or "cooling option" or "air" or "load of the run" or "not explained")];
        Assert.Equal(["run 2", "cooling option", "air", "load of the run", "not explained", "run 5"], rows);
        Assert.Contains("read 68.4 °C", read);
        Assert.Contains(read, t => t.StartsWith("−7.2 °C (", StringComparison.Ordinal));
        Assert.Contains(read, t => t.StartsWith("Run 5 read 0.9 °C more than run 2: cooling option −7.2 °C, air +3.1 °C", StringComparison.Ordinal));
    }

    [Fact]
    public void A_difference_of_nothing_is_drawn_too() =>
        Assert.Contains("not explained", Read(new(60, 60, [new(Cause.Rest, Samples.Normal(0, 0))])));
}
