using Coolproof.Thermal.FullModel;
using CsCheck;
using static Coolproof.Thermal.Tests.FullModel.A_motor;

namespace Coolproof.Thermal.Tests.FullModel;

public class HeatFlowsTests
{
    static readonly Gen<double[]> States = Gen.Double[-10, 160].Array[HeatFlows.Nodes];

    static readonly Gen<Phase> Phases = Gen.Select(
        Gen.Double[-5, 40], Gen.Double[0, 80], Gen.Double[0, 60], Gen.Double[0, 15], Gen.Double[0, 1], Gen.Double[0, 4], Gen.Bool,
        (air, copper, iron, speed, fan, pit, off) => Phase.Steady(air, copper, iron, speed, fan) with { PitFanWPerK = pit, ShellOff = off });

    static readonly Gen<MotorBody> Bodies = Gen.Bool.Select(weaken => weaken ? Weakening : Body);

    [Fact]
    public void What_comes_in_is_stored_or_leaves_in_every_state() =>
        Gen.Select(States, Phases, Bodies).Sample((t, phase, body) =>
        {
            double[] rate = new double[HeatFlows.Nodes];
            HeatFlows.Rates(body, FanOption, phase, t, rate);
            double stored = HeatFlows.StoredJ(body, rate);
            double balance = HeatFlows.HeatInW(body, phase, t) - HeatFlows.HeatOutW(FanOption, phase, t) - stored;
            return Math.Abs(balance) < 1e-9;
        });

    [Fact]
    public void The_jacobian_agrees_with_central_differences_in_every_state() =>
        Gen.Select(States.Where(Apart), Phases, Bodies).Sample((t, phase, body) =>
        {
            const int N = HeatFlows.Nodes;
            const double H = 1e-4;
            double[] jacobian = new double[N * N], up = new double[N], down = new double[N];
            HeatFlows.Jacobian(body, FanOption, phase, t, jacobian);
            for (int j = 0; j < N; j++)
            {
                double[] shifted = [.. t];
                shifted[j] = t[j] + H;
                HeatFlows.Rates(body, FanOption, phase, shifted, up);
                shifted[j] = t[j] - H;
                HeatFlows.Rates(body, FanOption, phase, shifted, down);
                for (int i = 0; i < N; i++)
                {
                    if (Math.Abs(jacobian[i * N + j] - (up[i] - down[i]) / (2 * H)) > 2e-6)
                        return false;
                }
            }
            return true;
        });

    // Where can and air are equally warm natural convection has no second derivative, and differences say nothing.
    static bool Apart(double[] t) => Math.Abs(t[(int)Node.Can] - t[(int)Node.ShellAir]) > 1 && Math.Abs(t[(int)Node.Endbell] - t[(int)Node.ShellAir]) > 1;

    [Fact]
    public void A_rotor_40_K_warmer_takes_a_tenth_more_copper_heat_for_the_same_torque()
    {
        Phase phase = Phase.Steady(25, 20, 0, 5, 1);
        // 0.12 % of the strength a kelvin (public grade tables): 1/(1 - 0.048)² by hand.
        double[] warm = At(25);
        warm[(int)Node.Rotor] = 65;
        Assert.Equal(20 * 1.103383, HeatFlows.HeatInW(Weakening, phase, warm), 1e-4);
        Assert.Equal(20, HeatFlows.HeatInW(Weakening, phase, At(25)), 1e-12);
        Assert.Equal(20, HeatFlows.HeatInW(Body, phase, warm), 1e-12);
    }

    [Fact]
    public void Over_a_whole_run_heat_in_less_heat_out_is_heat_stored()
    {
        foreach ((Phase phase, double seconds) in Run(27, fanAfterStop: true).Where(p => p.Seconds > 10))
        {
            double[] t = At(40);
            double before = HeatFlows.StoredJ(Body, t);
            // The shell's air settles within seconds, so the first ten get the finer rule.
            double net = Integral(phase, t, 10, 4000) + Integral(phase, t, seconds - 10, 6000);
            double throughput = 40 * seconds;
            Assert.Equal(0, (HeatFlows.StoredJ(Body, t) - before - net) / throughput, 1e-5);
        }

        static double Integral(in Phase phase, double[] t, double seconds, int steps)
        {
            double h = seconds / steps, sum = Net(phase, t) / 2;
            for (int i = 1; i <= steps; i++)
            {
                ReferencePath.Advance(Body, FanOption, phase, h, t, 1e-10);
                sum += (i == steps ? 0.5 : 1) * Net(phase, t);
            }
            return sum * h;
        }

        static double Net(in Phase phase, double[] t) => HeatFlows.HeatInW(Body, phase, t) - HeatFlows.HeatOutW(FanOption, phase, t);
    }

    [Fact]
    public void At_air_temperature_and_without_heat_nothing_moves()
    {
        double[] rate = new double[HeatFlows.Nodes];
        HeatFlows.Rates(Body, FanOption, Phase.Steady(23, 0, 0, 5, 1), At(23), rate);
        Assert.All(rate, r => Assert.Equal(0, r, 1e-12));
    }
}
