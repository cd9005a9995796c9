using Coolproof.Evidence.Causes;

namespace Coolproof.Evidence.Tests.Causes;

/// <summary>A long run that was cut short goes on where it stopped, with the same parts to the last bit.</summary>
public sealed class CauseFileTests : IDisposable
{
    private readonly string _path = Path.Combine(Path.GetTempPath(), $"coolproof-causes-{Guid.NewGuid():N}");

    [Fact]
    public void A_day_that_was_kept_is_not_judged_again_and_one_that_was_cut_short_is()
    {
        CauseFile first = new(_path);
        CausePartFound[] one = first.Of(1, Found);
        Assert.Empty(first.Of(2, _ => []));
        first.Of(3, Found);
        File.WriteAllText(_path, File.ReadAllText(_path)[..^20]);

        CauseFile again = new(_path);
        Assert.Equal(one, again.Of(1, _ => throw new InvalidOperationException("judged again")));
        Assert.Empty(again.Of(2, _ => throw new InvalidOperationException("judged again")));
        int judged = 0;
        again.Of(3, day => { judged++; return Found(day); });
        Assert.Equal(1, judged);
        Assert.Equal(4, File.ReadAllLines(_path).Length);
    }

    [Fact]
    public void Days_of_another_build_are_refused()
    {
        File.WriteAllText(_path, "another build\n");
        Assert.Contains("another build", Assert.Throws<InvalidDataException>(() => new CauseFile(_path)).Message);
    }

    public void Dispose() => File.Delete(_path);

    private static CausePartFound[] Found(long day) => [new(day, Cause.Air, new(1.0 / 3, 0.1, -0.1, 0.2, 0.3, 0.4, Math.PI), 0.1 + 0.2)];
}
