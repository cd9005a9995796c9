namespace Coolproof.Thermal.Tests;

public class IntegratorTests
{
    // Source: nonlinear-2-node.csv, two high-order integrators that agree to 6e-13 K (Data/SOURCES.md).
    [Theory]
    [InlineData("explicit")]
    [InlineData("implicit")]
    public void Winding_and_can_with_radiation_and_copper_feedback_agree_with_the_reference_to_a_millionth(string method)
    {
        List<string[]> table = Table.Rows("nonlinear-2-node.csv");
        double[] state = [22, 22];
        double speed = 6, current = 18;
        HeatFlow flow = (_, t, rate) =>
        {
            double winding = current * current * 0.020 * (1 + 0.00393 * (t[0] - 20)), can = current > 0 ? 3 : 0;
            double film = 12 * (1 + 0.8 * Math.Pow(speed, 0.6)) * 0.006 * (t[1] - 22);
            double radiation = 0.9 * PhysicalConstants.StefanBoltzmann * 0.006 * (Math.Pow(t[1] + 273.15, 4) - Math.Pow(22 + 273.15, 4));
            rate[0] = (winding - 1.1 * (t[0] - t[1])) / 12;
            rate[1] = (can + 1.1 * (t[0] - t[1]) - film - radiation) / 55;
        };
        DormandPrince explicitOne = new(2, flow);
        Rosenbrock implicitOne = new(2, flow);
        double[] rows = new double[600];
        foreach ((double v, double i, int from) in new[] { (6.0, 18.0, 0), (0.0, 0.0, 300), (3.0, 18.0, 600) })
        {
            (speed, current) = (v, i);
            if (method == "explicit") explicitOne.Sample(state, from, 1, rows, Tolerance.Usual);
            else
                for (int k = 0; k < 300; k++)
                {
                    implicitOne.Run(state, from + k, from + k + 1, Tolerance.Usual);
                    state.CopyTo(rows, 2 * k);
                }
            for (int k = 1; k <= 300; k++)
                for (int node = 0; node < 2; node++)
                    Close.Within(Table.Number(table[from + k][node + 1]), rows[2 * (k - 1) + node], 1e-6, $"{from + k} s");
        }
    }

    [Fact]
    public void Every_integrator_agrees_with_exact_stepping_on_a_linear_network()
    {
        Network network = Ladder.Network();
        HeatInterval[] schedule = Ladder.Schedule(network);
        double[] exact = [.. Ladder.Start], one = [.. Ladder.Start], two = [.. Ladder.Start], rows = new double[300 * 4], sampled = new double[300 * 4];
        double at = 0;
        foreach (HeatInterval part in schedule)
        {
            HeatFlow flow = (_, t, rate) => network.FillRates(t, part.HeatW, rate);
            network.Prepare().Sample(exact, part.HeatW, 1, 1, rows);
            new DormandPrince(4, flow).Sample(one, at, 1, sampled, Tolerance.Usual);
            new Rosenbrock(4, flow).Run(two, at, at + part.Seconds, Tolerance.Usual);
            Close.Within(rows, sampled, 1e-6);
            network.Prepare().Step(exact, part.HeatW, part.Seconds, exact);
            Close.Within(exact, one, 1e-6);
            Close.Within(exact, two, 1e-6);
            at += part.Seconds;
        }
    }

    // Source for the orders: Dormand and Prince 1980 (5); Hairer and Wanner, section IV.7 (4).
    [Theory]
    [InlineData("explicit", 5)]
    [InlineData("implicit", 4)]
    public void Halving_a_fixed_step_divides_the_error_by_two_to_the_order(string method, int order)
    {
        double Error(int steps)
        {
            double[] state = [.. Swing.Start];
            if (method == "explicit") new DormandPrince(2, Swing.Flow).RunFixed(state, 0, 6, steps);
            else new Rosenbrock(2, Swing.Flow).RunFixed(state, 0, 6, steps);
            return Swing.Miss(state, 6);
        }
        AssertOrder(order, Error(80), Error(160), Error(320));
    }

    [Fact]
    public void Output_between_steps_has_order_four_at_least()
    {
        // The tolerance is so loose that the step control settles on long steps; what counts is the error between them.
        double Error(double relative)
        {
            double[] state = [.. Swing.Start], rows = new double[2 * 600];
            IntegrationRecord record = new DormandPrince(2, Swing.Flow).Sample(state, 0, 0.01, rows, new(relative, relative));
            double worst = 0;
            for (int k = 0; k < 600; k++) worst = Math.Max(worst, Swing.Miss(rows.AsSpan(2 * k, 2), (k + 1) * 0.01));
            return worst * Math.Pow(record.Steps, 4);
        }
        double loose = Error(1e-6), tight = Error(1e-10);
        Assert.InRange(tight / loose, 0, 2);
    }

    [Theory]
    [InlineData("explicit", 1.0)]
    [InlineData("implicit", 1.0)]
    [InlineData("sampled", 1.0)]
    public void The_error_of_a_controlled_run_falls_with_its_tolerance(string method, double power)
    {
        double Error(double tolerance)
        {
            double[] state = [.. Swing.Start];
            Tolerance asked = new(tolerance, tolerance);
            if (method == "explicit") new DormandPrince(2, Swing.Flow).Run(state, 0, 6, asked);
            else if (method == "implicit") new Rosenbrock(2, Swing.Flow).Run(state, 0, 6, asked);
            else new DormandPrince(2, Swing.Flow).Sample(state, 0, 0.5, new double[24], asked);
            return Swing.Miss(state, 6);
        }
        double slope = Math.Log10(Error(1e-4) / Error(1e-8)) / 4;
        Assert.InRange(slope, 0.7 * power, 1.3 * power);
        Assert.InRange(Error(1e-8), 0, 1e-6);
    }

    [Fact]
    public void A_light_node_tied_to_a_heavy_one_is_called_stiff_and_the_implicit_integrator_takes_it_in_few_steps()
    {
        // 0.01 J/K behind 20 W/K: half a millisecond against minutes.
        Network network = new([0.01, 60], [new(0, 1, 20)], [0, 0.5]);
        double[] heat = network.Heat(25, 10, 0), exact = [25, 25], one = [25, 25], two = [25, 25];
        HeatFlow flow = (_, t, rate) => network.FillRates(t, heat, rate);
        Tolerance tolerance = new(1e-7, 1e-7);
        IntegrationRecord explicitRun = new DormandPrince(2, flow).Run(one, 0, 20, tolerance);
        IntegrationRecord implicitRun = new Rosenbrock(2, flow).Run(two, 0, 20, tolerance);
        network.Prepare().Step(exact, heat, 20, exact);
        Assert.True(explicitRun.LooksStiff);
        Assert.True(implicitRun.Steps * 20 < explicitRun.Steps, $"{implicitRun} against {explicitRun}");
        Close.Within(exact, one, 1e-4);
        Close.Within(exact, two, 1e-4);
    }

    [Fact]
    public void An_easy_run_is_not_called_stiff()
    {
        double[] state = [.. Swing.Start];
        Assert.False(new DormandPrince(2, Swing.Flow).Run(state, 0, 6, Tolerance.Usual).LooksStiff);
    }

    [Fact]
    public void A_flow_that_is_not_finite_ends_with_a_word_on_where()
    {
        HeatFlow broken = (time, t, rate) => rate[0] = time < 1 ? 1 : double.NaN;
        InvalidOperationException end = Assert.Throws<InvalidOperationException>(() => new DormandPrince(1, broken).Run(new double[1], 0, 2, Tolerance.Usual));
        Assert.Contains("past 0.99", end.Message);
        Assert.Throws<InvalidOperationException>(() => new Rosenbrock(1, broken).Run(new double[1], 0, 2, Tolerance.Usual));
    }

    [Fact]
    public void No_time_changes_nothing_and_time_does_not_run_backwards()
    {
        double[] state = [3, 4];
        Assert.Equal(default, new DormandPrince(2, Swing.Flow).Run(state, 2, 2, Tolerance.Usual));
        Assert.Equal(default, new Rosenbrock(2, Swing.Flow).Run(state, 2, 2, Tolerance.Usual));
        Assert.Equal([3, 4], state);
        Assert.Throws<ArgumentOutOfRangeException>(() => new DormandPrince(2, Swing.Flow).Run(state, 2, 1, Tolerance.Usual));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Rosenbrock(2, Swing.Flow).Run(state, 2, 1, Tolerance.Usual));
    }

    static void AssertOrder(int order, double coarse, double middle, double fine)
    {
        Assert.InRange(Math.Log2(coarse / middle), order - 0.35, order + 0.8);
        Assert.InRange(Math.Log2(middle / fine), order - 0.35, order + 0.6);
    }

    /// <summary>
    /// A nonlinear flow with a known answer: T = 2 + sin t and 1/(1 + t), each driven by time and by both temperatures. Own construction.
    /// </summary>
    static class Swing
    {
        public static readonly double[] Start = [2, 1];

        public static void Flow(double t, ReadOnlySpan<double> y, Span<double> rate)
        {
            double a = 2 + Math.Sin(t), b = 1 / (1 + t);
            rate[0] = Math.Cos(t) - 0.5 * (Math.Pow(y[0], 4) / Math.Pow(a, 3) - a) + 0.3 * (y[1] - b);
            rate[1] = -y[1] * y[1] - 0.4 * (y[0] * y[1] - a * b);
        }

        public static double Miss(ReadOnlySpan<double> y, double t) =>
            Math.Max(Math.Abs(y[0] - 2 - Math.Sin(t)), Math.Abs(y[1] - 1 / (1 + t)));
    }
}
