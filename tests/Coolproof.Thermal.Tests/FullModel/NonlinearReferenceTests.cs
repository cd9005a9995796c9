using System.Globalization;
using Coolproof.Thermal.FullModel;

namespace Coolproof.Thermal.Tests.FullModel;

/// <summary>Both paths against a winding and can with radiation and motion computed by scipy's DOP853 and Radau (Data/SOURCES.md).</summary>
public class NonlinearReferenceTests(ITestOutputHelper output)
{
    const double AlphaAt20 = 0.00393, AreaM2 = 0.006;

    // Two bodies of the six; the others are cut off and the shell's air is a heat sink that nothing warms.
    static readonly MotorBody TwoNodes = new(12, 1, 1, 55, 1, 1e15, 0, 0, 0, 0, 0, WindingToCanWPerK: 1.1, 0)
    {
        CopperRisePerK = AlphaAt20 / (1 + 5 * AlphaAt20),
        IronShareRotor = 0,
        IronShareCan = 1,
    };

    static readonly CoolingOption Cooling = new(12 * AreaM2, 12 * 0.8 * AreaM2, 0, 0.9 * AreaM2, 0, 0, 0);

    [Fact]
    public void The_reference_path_agrees_to_a_millionth_of_a_kelvin() =>
        Assert.InRange(Worst((phase, t) => ReferencePath.Advance(TwoNodes, Cooling, phase, 1, t, 1e-11)), 0, 1e-6);

    [Fact]
    public void The_fast_path_agrees_to_a_hundredth_of_a_kelvin_in_steps_of_a_second() =>
        Assert.InRange(Worst((phase, t) => FastPath.Advance(TwoNodes, Cooling, phase, 1, t)), 0, 1e-2);

    double Worst(Action<Phase, double[]> second)
    {
        double[] t = [22, 22, 22, 22, 22, 22];
        double worst = 0;
        string[] lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Data", "nonlinear-2-node.csv"));
        foreach (string line in lines[1..])
        {
            double[] row = [.. line.Split(',').Select(x => double.Parse(x, CultureInfo.InvariantCulture))];
            if (row[0] > 0)
                second(At(row[0]), t);
            worst = Math.Max(worst, Math.Max(Math.Abs(row[1] - t[(int)Node.Winding]), Math.Abs(row[2] - t[(int)Node.Can])));
        }
        output.WriteLine($"worst {worst:e2} K over {lines.Length - 1} seconds");
        Assert.True(lines.Length > 900);
        return worst;
    }

    static Phase At(double endS)
    {
        double speed = endS <= 300 ? 6 : endS <= 600 ? 0 : 3;
        bool running = speed > 0;
        double copper25 = running ? 18 * 18 * 0.020 * (1 + 5 * AlphaAt20) : 0;
        return Phase.Steady(22, copper25, running ? 3 : 0, speed, 1);
    }
}
