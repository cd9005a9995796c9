using CsCheck;

namespace Coolproof.Thermal.Tests;

public class NetworkPropertyTests
{
    sealed record Case(double[] Capacities, Link[] Links, double[] ToAir, double[] Feedback, AirStream[] Streams, double[] Powers, double[] Start)
    {
        public int Nodes => Capacities.Length;
        public Network Network(double factor = 1) => new(
            [.. Capacities.Select(c => c * factor)], [.. Links.Select(l => l with { WattsPerKelvin = l.WattsPerKelvin * factor })],
            [.. ToAir.Select(g => g * factor)], [.. Feedback.Select(a => a * factor)],
            [.. Streams.Select(s => s with { WattsPerKelvin = s.WattsPerKelvin * factor })]);
    }

    static Gen<Case> Cases(bool streams) =>
        from n in Gen.Int[1, 6]
        from capacities in Gen.Double[4, 200].Array[n]
        from links in Gen.Select(Gen.Int[0, n - 1], Gen.Int[0, n - 1], Gen.Double[0, 5]).Array[0, 8]
        from toAir in Gen.Double[0, 2].Array[n]
            // A runaway of at most e¹⁵ in 600 s: it blows up round-off by as much as it blows up temperatures.
        from feedback in Gen.Double[0, 0.1].Array[n]
        from passing in Gen.Select(Gen.Int[0, n - 1], Gen.Int[0, n - 1], Gen.Double[0, 3]).Array[0, streams ? 4 : 0]
        from powers in Gen.Double[0, 60].Array[n]
        from start in Gen.Double[0, 90].Array[n]
        select new Case(
            capacities, [.. links.Where(l => l.Item1 != l.Item2).Select(l => new Link(l.Item1, l.Item2, l.Item3))], toAir, feedback,
            [.. passing.Where(l => l.Item1 != l.Item2).Select(l => new AirStream(l.Item1, l.Item2, l.Item3))], powers, start);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Multiplying_every_capacity_conductance_and_heat_leaves_temperatures_unchanged(bool streams) =>
        Gen.Select(Cases(streams), Gen.Double[0.01, 100], Gen.Double[0, 600]).Sample((@case, factor, seconds) =>
        {
            double[] plain = new double[@case.Nodes], scaled = new double[@case.Nodes];
            Network network = @case.Network(), larger = @case.Network(factor);
            network.Prepare().Step(@case.Start, network.Heat(25, @case.Powers), seconds, plain);
            larger.Prepare().Step(@case.Start, larger.Heat(25, [.. @case.Powers.Select(p => p * factor)]), seconds, scaled);
            AssertSame(plain, scaled);
        }, iter: 300);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void One_long_step_is_two_short_ones(bool streams) =>
        Gen.Select(Cases(streams), Gen.Double[0, 300], Gen.Double[0, 300]).Sample((@case, one, two) =>
        {
            double[] whole = new double[@case.Nodes], parts = new double[@case.Nodes];
            Network network = @case.Network();
            Stepper stepper = network.Prepare();
            double[] heat = network.Heat(25, @case.Powers);
            stepper.Step(@case.Start, heat, one + two, whole);
            stepper.Step(@case.Start, heat, one, parts);
            stepper.Over(two).Apply(parts, heat, parts);
            AssertSame(whole, parts);
        }, iter: 300);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Numbering_the_nodes_otherwise_changes_no_temperature(bool streams) =>
        Gen.Select(Cases(streams), Gen.Double[0, 600], Gen.Int[0, 1000]).Sample((@case, seconds, shuffle) =>
        {
            int n = @case.Nodes;
            int[] place = [.. Enumerable.Range(0, n)];
            new Random(shuffle).Shuffle(place);
            double[] Moved(double[] values)
            {
                double[] moved = new double[n];
                for (int i = 0; i < n; i++) moved[place[i]] = values[i];
                return moved;
            }
            Case other = new(
                Moved(@case.Capacities), [.. @case.Links.Select(l => l with { A = place[l.A], B = place[l.B] })], Moved(@case.ToAir),
                Moved(@case.Feedback), [.. @case.Streams.Select(s => s with { From = place[s.From], To = place[s.To] })],
                Moved(@case.Powers), Moved(@case.Start));
            double[] one = new double[n], two = new double[n];
            Network first = @case.Network(), second = other.Network();
            first.Prepare().Step(@case.Start, first.Heat(25, @case.Powers), seconds, one);
            second.Prepare().Step(other.Start, second.Heat(25, other.Powers), seconds, two);
            AssertSame(Moved(one), two);
        }, iter: 300);

    [Fact]
    public void Heat_in_is_heat_held_plus_heat_shed_to_a_billionth() =>
        Gen.Select(Cases(false), Gen.Double[0.01, 600]).Sample((@case, seconds) =>
        {
            double[] end = new double[@case.Nodes], integral = new double[@case.Nodes];
            Network network = @case.Network();
            Stepper stepper = network.Prepare();
            double[] heat = network.Heat(25, @case.Powers);
            stepper.Step(@case.Start, heat, seconds, end);
            stepper.Integral(@case.Start, heat, seconds, integral);
            double balance = 0, size = 1; // Below a joule in all, round-off of the temperatures themselves shows.
            for (int i = 0; i < @case.Nodes; i++)
            {
                double held = @case.Capacities[i] * (end[i] - @case.Start[i]), shed = network.SurplusWK[i] * integral[i];
                balance += heat[i] * seconds - held - shed;
                size += heat[i] * seconds + Math.Abs(held) + Math.Abs(shed);
            }
            Assert.True(Math.Abs(balance) <= 1e-9 * size, $"{balance} J of {size} J");
        }, iter: 1000);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_integral_is_what_a_fine_quadrature_of_the_steps_gives(bool streams) =>
        Gen.Select(Cases(streams), Gen.Double[0.1, 10]).Sample((@case, seconds) =>
        {
            int n = @case.Nodes;
            double[] integral = new double[n], rows = new double[401 * n];
            Network network = @case.Network();
            Stepper stepper = network.Prepare();
            double[] heat = network.Heat(25, @case.Powers);
            stepper.Integral(@case.Start, heat, seconds, integral);
            stepper.Sample(@case.Start, heat, 0, seconds / 400, rows);
            for (int i = 0; i < n; i++)
            {
                double simpson = 0;
                for (int k = 0; k <= 400; k++) simpson += rows[k * n + i] * (k is 0 or 400 ? 1 : k % 2 == 1 ? 4 : 2);
                Close.Within(simpson * seconds / 1200, integral[i], 1e-4 * (Math.Abs(integral[i]) + seconds), $"node {i}");
            }
        }, iter: 100);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_grid_of_rows_is_the_single_steps_one_by_one(bool streams) =>
        Gen.Select(Cases(streams), Gen.Int[0, 9000], Gen.Double[0, 3]).Sample((@case, count, first) =>
        {
            int n = @case.Nodes;
            double[] rows = new double[count * n], exact = new double[n];
            Network network = @case.Network();
            Stepper stepper = network.Prepare();
            double[] heat = network.Heat(25, @case.Powers);
            stepper.Sample(@case.Start, heat, first, 0.02, rows);
            for (int k = 0; k < count; k += 1 + count / 7)
            {
                stepper.Step(@case.Start, heat, first + k * 0.02, exact);
                AssertSame(exact, rows.AsSpan(k * n, n));
            }
        }, iter: 60);

    /// <summary>Within 1e-10 of the largest temperature: a runaway within 600 s may reach thousands of degrees.</summary>
    static void AssertSame(ReadOnlySpan<double> expected, ReadOnlySpan<double> actual)
    {
        double size = 100;
        foreach (double value in expected) size = Math.Max(size, Math.Abs(value));
        Close.Within(expected, actual, 1e-11 * size);
    }
}
