using Coolproof.Evidence.Causes;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Tests.Causes;

public class RunsNamedTests
{
    private static readonly ReadingsTable Table = InventedDays.Rich();

    [Fact]
    public void A_run_and_a_day_are_found_by_name()
    {
        Assert.Equal([7], RunsNamed.Find(Table, "first 8").Found!.Runs);
        Assert.Equal([7], RunsNamed.Find(Table, "8").Found!.Runs);
        Assert.Equal(9, RunsNamed.Find(Table, "Second").Found!.Runs.Count);
    }

    [Theory]
    [InlineData("99", "no such run or day")]
    [InlineData("first 3", "no test or race run")]
    public void What_cannot_be_explained_is_one_clear_error(string text, string said) => Assert.Contains(said, RunsNamed.Find(Table, text).Problem);

    [Fact]
    public void A_run_that_two_days_have_needs_its_day()
    {
        ReadingsTable twice = Table with { Runs = [.. Table.Runs, Table.Runs[7] with { Day = "second" }] };
        Assert.Contains("write the day before it", RunsNamed.Find(twice, "8").Problem);
    }
}
