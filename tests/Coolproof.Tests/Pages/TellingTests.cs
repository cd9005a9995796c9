using Coolproof.Advice.HowMany;
using Coolproof.Board;
using Coolproof.Evidence;
using Coolproof.Rehearsal;

namespace Coolproof.Tests.Pages;

/// <summary>How progress is passed on, and under which key a plan's simulated days are held.</summary>
public class TellingTests
{
    [Fact]
    public void Progress_is_told_at_once_and_then_only_so_often()
    {
        Stopwatch clock = new();
        List<int> told = [];
        Telling<int> telling = new(clock, TimeSpan.FromMilliseconds(200), told.Add);
        telling.Report(1);
        telling.Report(2);
        clock.Ms = 199;
        telling.Report(3);
        clock.Ms = 200;
        telling.Report(4);
        Assert.Equal([1, 4], told);
    }

    [Fact]
    public void Plans_for_which_other_things_are_known_have_other_keys()
    {
        HowManySettings plain = new([new RehearsalOption("bare can", HasFan: false), new RehearsalOption("rear blower")], [0, 1, 1, 0]);
        string[] keys = [.. new[] { plain, plain with { Known = Known("rear blower", 0.01) }, plain with { Known = Known("rear blower", 0.011) }, plain with { Known = Known("bare can", 0.01) } }.Select(RoundsTask.Key)];
        Assert.Distinct(keys);
        Assert.Equal(keys[1], RoundsTask.Key(plain with { Known = Known("rear blower", 0.01), Threads = 1 }));
    }

    static QuickVerdict Known(string option, double conductance) => new(new FairConditions(25, 360), [option], [[60.0]], [new MotorDraw(0.5, 0.02, 0.2, 8, 0.6, 0.2, 0.5, [conductance])], Rough: false);

    sealed class Stopwatch : TimeProvider
    {
        public long Ms { get; set; } = 0;

        public override long TimestampFrequency => 1000;

        public override long GetTimestamp() => Ms;
    }
}
