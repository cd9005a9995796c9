using Coolproof.Traces.Load;

namespace Coolproof.Traces.Tests.Load;

public class DriveCurrentTests
{
    // 20 A and 10 A sin over whole turns: mean 20 A, mean square 400 + 50, 6 minutes of 20 A are 2000 mAh.
    [Fact]
    public void A_current_that_swings_about_its_mean_gives_mean_root_mean_square_and_charge_as_by_hand()
    {
        (double[] at, double[] amperes) = Logged(10, t => 20 + 10 * Math.Sin(2 * Math.PI * t / 4), -30, 400);
        DriveCurrent load = DriveCurrent.Of(at, amperes, 0, 360)!;
        Assert.Equal(20, load.MeanA, 0.01);
        Assert.Equal(Math.Sqrt(450), load.RmsA, 0.05);
        Assert.Equal(2000, load.ChargeMah, 1.0);
        Assert.Equal(1, load.SeenShare, 1e-9);
    }

    [Fact]
    public void Ends_of_the_drive_between_two_rows_are_cut_there()
    {
        DriveCurrent load = DriveCurrent.Of([0, 1, 2, 3], [0, 10, 20, 30], 0.5, 2.5)!;
        Assert.Equal(15, load.MeanA, 1e-9);
        // ∫(10 t)² from 0.5 to 2.5 over 2: 100 × (15.625 − 0.125)/3/2.
        Assert.Equal(Math.Sqrt(100 * 15.5 / 6), load.RmsA, 1e-9);
        Assert.Equal(30 / 3.6, load.ChargeMah, 1e-9);
    }

    [Fact]
    public void What_is_drawn_counts_above_zero_whichever_way_round_it_is_written()
    {
        (double[] at, double[] amperes) = Logged(5, t => -15, 0, 60);
        Assert.Equal(15, DriveCurrent.Of(at, amperes, 0, 60)!.MeanA, 1e-9);
    }

    [Theory]
    [InlineData(10, true)]
    [InlineData(30, false)]
    public void A_short_gap_is_filled_with_the_mean_and_a_long_one_gives_no_charge(double gapS, bool told)
    {
        (double[] at, double[] amperes) = Logged(10, t => t > 100 && t < 100 + gapS ? double.NaN : 20, 0, 360);
        DriveCurrent? load = DriveCurrent.Of(at, amperes, 0, 360);
        Assert.Equal(told, load is not null);
        if (load is not null) Assert.Equal(2000, load.ChargeMah, 1e-6);
    }

    [Fact]
    public void A_trace_that_does_not_hold_the_drive_gives_no_charge()
    {
        (double[] at, double[] amperes) = Logged(10, t => 20, 0, 200);
        Assert.Null(DriveCurrent.Of(at, amperes, 0, 360));
        Assert.Null(DriveCurrent.Of([], [], 0, 360));
        Assert.Throws<ArgumentException>(() => DriveCurrent.Of([1], [], 0, 1));
        Assert.Throws<ArgumentException>(() => DriveCurrent.Of(at, amperes, 10, 10));
    }

    static (double[] AtS, double[] Amperes) Logged(double hertz, Func<double, double> current, double fromS, double toS)
    {
        double[] at = [.. Enumerable.Range(0, (int)((toS - fromS) * hertz) + 1).Select(i => fromS + i / hertz)];
        return (at, [.. at.Select(current)]);
    }
}
