using Coolproof.Evidence.Model;
using Coolproof.Evidence.Words;

namespace Coolproof.Evidence.Tests.Words;

public class SourceOfDoubtTests
{
    [Fact]
    public void Every_source_that_is_reckoned_with_has_words_of_its_own()
    {
        Assert.Equal(Enum.GetValues<DoubtSource>().Length, SourceOfDoubt.All.Count);
        Assert.Equal("delay", SourceOfDoubt.All[(int)DoubtSource.Delay].Name);
        Assert.Equal("gun", SourceOfDoubt.All[(int)DoubtSource.Gun].Name);
        Assert.Equal("motor constants and priors", SourceOfDoubt.All[(int)DoubtSource.MotorAndPriors].Name);
        foreach (Func<SourceOfDoubt, string> words in new Func<SourceOfDoubt, string>[] { s => s.Name, s => s.Plain, s => s.Remedy })
            Assert.Equal(SourceOfDoubt.All.Count, SourceOfDoubt.All.Select(words).Distinct().Count());
    }

    [Fact]
    public void A_source_that_is_none_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => SourceOfDoubt.Of("phase of the moon"));
}
