namespace Coolproof.Thermal.Tests;

public class ExactSteppingTests
{
    // Source: rc-ladder-4.csv, a 40-digit matrix exponential (Data/SOURCES.md).
    [Fact]
    public void The_ladder_agrees_with_forty_digits_to_a_billionth_at_every_second()
    {
        Network network = Ladder.Network();
        double[] rows = new double[900 * 4];
        network.Prepare().Sample(Ladder.Start, Ladder.Schedule(network), 1, rows);
        List<string[]> table = Table.Rows("rc-ladder-4.csv");
        Assert.Equal(901, table.Count);
        for (int k = 1; k <= 900; k++)
            for (int i = 0; i < 4; i++)
                Close.Within(Table.Number(table[k][i + 1]), rows[(k - 1) * 4 + i], 1e-10, $"node {i + 1} at {k} s");
    }

    // Source: the same table at its 1 s marks; the other 99 rows of each second against single exact steps.
    [Fact]
    public void Ninety_thousand_rows_every_ten_milliseconds_hold_no_more_than_a_ten_billionth_of_round_off()
    {
        Network network = Ladder.Network();
        Stepper stepper = network.Prepare();
        HeatInterval[] schedule = Ladder.Schedule(network);
        double[] rows = new double[90_000 * 4], state = [.. Ladder.Start], exact = new double[4];
        stepper.Sample(Ladder.Start, schedule, 0.01, rows);
        List<string[]> table = Table.Rows("rc-ladder-4.csv");
        for (int s = 1; s <= 900; s++)
            for (int i = 0; i < 4; i++) Close.Within(Table.Number(table[s][i + 1]), rows[(s * 100 - 1) * 4 + i], 1e-10, $"{s} s");
        for (int part = 0; part < 3; part++)
        {
            for (int k = 1; k <= 30_000; k += 37)
            {
                stepper.Step(state, schedule[part].HeatW, k * 0.01, exact);
                Close.Within(exact, rows.AsSpan((part * 30_000 + k - 1) * 4, 4), 1e-10, $"row {k} of part {part}");
            }
            stepper.Step(state, schedule[part].HeatW, 300, state);
        }
    }

    // Source: time constants and steady state given beside rc-ladder-4.csv, to 17 digits.
    [Fact]
    public void The_ladders_time_constants_and_steady_state_are_the_published_ones()
    {
        Network network = Ladder.Network();
        Stepper stepper = network.Prepare();
        double[] constants = [.. stepper.Rates.ToArray().Select(rate => 1 / rate).Order()];
        double[] expected = [5.2130034410789154, 7.9506662088856185, 35.829657224430881, 354.6257207446522];
        for (int i = 0; i < 4; i++) Close.Relative(expected[i], constants[i], 1e-13);

        double[] state = new double[4];
        stepper.Step(Ladder.Start, network.Heat(25, 25, 0, 0, 0), 40_000, state);
        Close.Within([139.28571428571429, 119.28571428571429, 89.285714285714286, 82.142857142857143], state, 1e-10);
    }

    [Fact]
    public void A_schedule_whose_events_fall_between_rows_gives_what_single_steps_give()
    {
        Network network = Ladder.Network();
        Stepper stepper = network.Prepare();
        double[] on = network.Heat(25, 25, 0, 0, 0), off = network.Heat(25, 0, 0, 0, 0);
        HeatInterval[] schedule = [new(1.234, on), new(0.001, off), new(0.002, on), new(5, off)];
        double[] rows = new double[60 * 4], exact = new double[4];
        stepper.Sample(Ladder.Start, schedule, 0.1, rows);
        for (int k = 1; k <= 60; k++)
        {
            double left = k * 0.1;
            Ladder.Start.CopyTo(exact, 0);
            foreach (HeatInterval part in schedule)
            {
                double take = Math.Min(left, part.Seconds);
                stepper.Step(exact, part.HeatW, take, exact);
                left -= take;
            }
            Close.Within(exact, rows.AsSpan((k - 1) * 4, 4), 1e-11, $"row {k}");
        }
    }

    [Fact]
    public void Rows_beyond_the_schedule_are_refused()
    {
        Network network = Ladder.Network();
        Stepper stepper = network.Prepare();
        HeatInterval[] schedule = [new(1, network.Heat(25, 25, 0, 0, 0))];
        stepper.Sample(Ladder.Start, schedule, 0.1, new double[40]);
        Assert.Throws<ArgumentException>(() => stepper.Sample(Ladder.Start, schedule, 0.1, new double[44]));
        Assert.Throws<ArgumentException>(() => stepper.Sample(Ladder.Start, schedule[0].HeatW, 0, 0.1, new double[42]));
    }

    // Source: textbook solution of one lumped body, T = T_air + (T0 − T_air) exp(−t G/C).
    [Fact]
    public void One_node_cools_by_a_single_exponential()
    {
        Network network = new([90], [], [0.6]);
        double[] state = [80.0];
        network.Prepare().Step(state, network.Heat(25, 0), 120, state);
        Close.Within(25 + 55 * Math.Exp(-120 * 0.6 / 90), state[0], 1e-12);
    }

    [Fact]
    public void Two_nodes_in_closed_form_agree_with_scaling_and_squaring_and_with_eigenvectors()
    {
        // The same two nodes three ways: closed form; with a third node that touches nothing (eigen-decomposition); with a
        // vanishing air stream to the third (scaling and squaring).
        Link[] link = [new(0, 1, 3)];
        double[] three = [50, 40, 30], toAir = [0, 0.8, 0.5], feedback = [0.1, 0, 0];
        Network two = new([50, 40], link, [0, 0.8], [0.1, 0]);
        Network many = new(three, link, toAir, feedback);
        Network stream = new(three, link, toAir, feedback, [new(0, 2, 0.4)]);
        foreach (double seconds in new[] { 0, 1e-3, 1, 30, 360, 5000 })
        {
            double[] a = [40, 30], b = [40, 30, 20], c = [40, 30, 20];
            two.Prepare().Step(a, two.Heat(25, 20, 10), seconds, a);
            many.Prepare().Step(b, many.Heat(25, 20, 10, 0), seconds, b);
            stream.Prepare().Step(c, stream.Heat(25, 20, 10, 0), seconds, c);
            Close.Within(a, b.AsSpan(0, 2), 1e-10, $"{seconds} s");
            Close.Within(a, c.AsSpan(0, 2), 1e-10, $"{seconds} s");
        }
    }

    [Fact]
    public void Air_that_passes_one_node_after_another_reaches_the_balance_that_hand_calculation_gives()
    {
        // Intake at the air's temperature over node 0 (through its conductance to the air), then node 1: 20 W into 2 W/K, then 10 W into 4 W/K.
        Network network = new([5, 5], [], [2, 0], streams: [new(0, 1, 4)]);
        Assert.False(network.IsSymmetric);
        double[] state = [25, 25];
        network.Prepare().Step(state, network.Heat(25, 20, 10), 500, state);
        Close.Within([35, 37.5], state, 1e-10);
    }

    [Fact]
    public void Magnets_that_weaken_with_warmth_and_draw_more_current_reach_the_balance_that_hand_calculation_gives()
    {
        // Rotor warmer by 5 W / 0.5 W/K than the can; winding's heat 20 W + 0.1 W/K × rotor; all of it through 1 W/K to air of 20 °C.
        Network network = new([8, 15, 40], [new(0, 2, 2), new(1, 2, 0.5)], [0, 0, 1], responses: [new(0, 1, 0.1)]);
        Assert.False(network.IsSymmetric);
        double[] state = [20, 20, 20];
        network.Prepare().Step(state, network.Heat(20, 20, 5, 0), 5000, state);
        double can = (20 + 20 + 5 + 0.1 * 10) / 0.9, rotor = can + 10;
        Close.Within([can + (20 + 0.1 * rotor) / 2, rotor, can], state, 1e-9);
    }

    [Fact]
    public void A_prepared_step_allocates_nothing()
    {
        Network network = Ladder.Network();
        Stepper stepper = network.Prepare();
        Propagator propagator = stepper.Over(0.5);
        double[] state = [.. Ladder.Start], heat = network.Heat(25, 25, 0, 0, 0);
        stepper.Step(state, heat, 1, state);
        propagator.Apply(state, heat, state);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 1000; i++)
        {
            stepper.Step(state, heat, 1, state);
            propagator.Apply(state, heat, state);
        }
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-3.0)]
    [InlineData(double.NaN)]
    public void A_heat_capacity_that_no_body_has_is_refused_by_name(double capacity)
    {
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => new Network([40, capacity], [], [1, 1]));
        Assert.Contains("Node 1", refusal.Message);
    }

    [Fact]
    public void A_link_to_a_node_that_is_not_there_and_a_negative_conductance_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new Network([40, 50], [new(0, 2, 1)], [1, 1]));
        Assert.Throws<ArgumentException>(() => new Network([40, 50], [new(1, 1, 1)], [1, 1]));
        Assert.Throws<ArgumentException>(() => new Network([40, 50], [new(0, 1, -1)], [1, 1]));
        Assert.Throws<ArgumentException>(() => new Network([40, 50], [], [1, -1]));
        Assert.Throws<ArgumentException>(() => new Network([40, 50], [], [1]));
        Assert.Throws<ArgumentException>(() => new Network([40, 50], [], [1, 1], responses: [new(0, 0, 1)]));
        Assert.Throws<ArgumentException>(() => new Network([40, 50], [], [1, 1]).Heat(25, 30));
    }
}
