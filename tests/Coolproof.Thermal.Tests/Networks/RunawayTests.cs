namespace Coolproof.Thermal.Tests;

public class RunawayTests
{
    // Own construction: with no way out, all heat stays, so the mean by capacity rises by P t / ΣC and the rest settles.
    [Theory]
    [InlineData(1e-6)]
    [InlineData(1.0)]
    [InlineData(3600.0)]
    public void An_insulated_pair_of_nodes_warms_exactly_with_its_heat(double seconds)
    {
        Network network = new([50, 40], [new(0, 1, 3)], [0, 0]);
        Stepper stepper = network.Prepare();
        Assert.Equal(0, stepper.Rates[1]);
        double[] state = [60, 30];
        stepper.Step(state, network.Heat(25, 30, 10), seconds, state);

        double settle = 3.0 / 50 + 3.0 / 40, gap = (30.0 / 50 - 10.0 / 40) / settle;
        double difference = gap + (30 - gap) * Math.Exp(-settle * seconds);
        double mean = (50 * 60 + 40 * 30 + 40 * seconds) / 90;
        Close.Relative(mean + difference * 40 / 90, state[0], 1e-13);
        Close.Relative(mean - difference * 50 / 90, state[1], 1e-13);
    }

    [Fact]
    public void An_insulated_ladder_of_four_warms_exactly_with_its_heat()
    {
        Network network = new([8, 40, 60, 25], [new(0, 1, 1.25), new(1, 2, 0.8), new(2, 3, 2)], [0, 0, 0, 0]);
        double[] state = [25, 25, 25, 25];
        network.Prepare().Step(state, network.Heat(25, 25, 0, 0, 0), 1000, state);
        double held = 8 * (state[0] - 25) + 40 * (state[1] - 25) + 60 * (state[2] - 25) + 25 * (state[3] - 25);
        Close.Relative(25_000, held, 1e-12);
    }

    // MODEL: no steady state where a ≥ G_cc G/(G_cc + G). At equality one rate is exactly zero; a hair to either side it changes sign.
    [Theory]
    [InlineData(0.999, 1)]
    [InlineData(1.001, -1)]
    public void Copper_feedback_runs_away_just_where_theory_says(double share, int sign)
    {
        double g = 3, air = 1, limit = g * air / (g + air);
        Network network = new([50, 40], [new(0, 1, g)], [0, air], [share * limit, 0]);
        double slowest = network.Prepare().Rates.ToArray().Min();
        Assert.Equal(sign, Math.Sign(slowest));
    }

    [Fact]
    public void At_the_very_edge_of_runaway_one_rate_is_exactly_zero_and_the_answer_is_finite_and_right()
    {
        Network network = new([50, 40], [new(0, 1, 3)], [0, 1], [0.75, 0]);
        Stepper stepper = network.Prepare();
        Assert.Equal(0, stepper.Rates.ToArray().MinBy(Math.Abs));
        CompareWithTinySteps(network, stepper, [25, 25], network.Heat(25, 20, 15), 300);
    }

    [Fact]
    public void A_winding_that_runs_away_has_an_exact_answer_after_a_finite_time()
    {
        Network network = new([50, 40], [new(0, 1, 3)], [0, 0.3], [0.9, 0]);
        Stepper stepper = network.Prepare();
        Assert.True(stepper.Rates.ToArray().Min() < 0);
        CompareWithTinySteps(network, stepper, [25, 25], network.Heat(25, 40, 20), 300);
    }

    [Fact]
    public void A_ladder_that_runs_away_has_an_exact_answer_after_a_finite_time()
    {
        Network network = new([8, 40, 60, 25], [new(0, 1, 1.25), new(1, 2, 0.8), new(2, 3, 2)], [0, 0, 0.1, 0.1], [0.5, 0, 0, 0]);
        Stepper stepper = network.Prepare();
        Assert.True(stepper.Rates.ToArray().Min() < 0);
        CompareWithTinySteps(network, stepper, [25, 25, 25, 25], network.Heat(25, 20, 0, 0, 5), 120);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 0)]
    public void A_node_that_nothing_touches_stays_as_it_is_beside_one_that_runs_away(int quiet, int wild)
    {
        double[] capacities = [20, 20], feedback = new double[2], state = new double[2], power = new double[2];
        feedback[wild] = 3;
        state[quiet] = 40;
        Network network = new(capacities, [], [0, 0], feedback);
        network.Prepare().Step(state, network.Heat(25, power), 300, state);
        Close.Within(40, state[quiet], 1e-12);
        Assert.Equal(0, state[wild]);
        state[wild] = 1;
        network.Prepare().Step(state, network.Heat(25, power), 100, state);
        Close.Relative(Math.Exp(15), state[wild], 1e-13);
        Close.Within(40, state[quiet], 1e-12);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(1e-300)]
    [InlineData(1e-12)]
    [InlineData(-1e-9)]
    [InlineData(1e-4)]
    [InlineData(0.02)]
    [InlineData(-0.02)]
    public void The_integrals_of_an_exponential_are_smooth_through_zero_rate(double rate)
    {
        // Reference: Taylor series, summed from its smallest term; x = 30 × rate stays below 1.
        double x = 30 * rate, once = 0, twice = 0;
        for (int k = 24; k >= 0; k--)
        {
            once = 1.0 / (k + 1) * (1 - x * once);
            twice = 1.0 / (k + 2) * (1 - x * twice);
        }
        Close.Relative(30 * once, Phi.Once(rate, 30), 4e-16 * 2);
        Close.Relative(900 * twice, Phi.Twice(rate, 30), 4e-15);
    }

    /// <summary>Fourth-order Taylor steps of 1 ms: an error of about 1e-14 per step that owes nothing to the code under test.</summary>
    static void CompareWithTinySteps(Network network, Stepper stepper, double[] start, double[] heat, double seconds)
    {
        int n = network.Nodes;
        double[] exact = new double[n], state = [.. start], rate = new double[n], next = new double[n], zero = new double[n];
        stepper.Step(start, heat, seconds, exact);
        const double Step = 0.001;
        for (int k = 0; k < seconds / Step; k++)
        {
            network.FillRates(state, heat, rate);
            double factor = Step;
            for (int order = 2; order <= 5; order++)
            {
                for (int i = 0; i < n; i++) state[i] += factor * rate[i];
                network.FillRates(rate, zero, next);
                (rate, next) = (next, rate);
                factor *= Step / order;
            }
        }
        for (int i = 0; i < n; i++) Close.Relative(state[i], exact[i], 1e-9, $"node {i}");
    }
}
