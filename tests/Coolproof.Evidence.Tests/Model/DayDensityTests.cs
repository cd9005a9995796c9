using Coolproof.Evidence.Model;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Tests.Model;

public class DayDensityTests(ITestOutputHelper output)
{
    public static TheoryData<string, bool> Tables => new(
        from name in new[] { "plain", "plain clocked", "plain without delays", "clocked without delays", "rich", "rich by a checked gun", "many days" }
        from levelled in new[] { false, true }
        select (name, levelled));

    private static ReadingsTable Table(string name) => name switch
    {
        "plain" => InventedDays.Plain(3, 4),
        "plain clocked" => InventedDays.Plain(3, 4, clock: true),
        "plain without delays" => InventedDays.Plain(3, 4, delays: false),
        "many days" => InventedDays.ManyDays(14),
        "clocked without delays" => InventedDays.Plain(2, 3, clock: true, delays: false),
        "rich by a checked gun" => InventedDays.Rich() with { GunChecks = [new("gun", CheckedAgainst.Ice, 2.5, 0), new("gun", CheckedAgainst.BesideTape, 64, 61)] },
        _ => InventedDays.Rich(),
    };

    private static MemberEvidence Evidence(DayModel model, int member)
    {
        bool mounting = model.Groups.First(g => g.Spread == Global.MountingSpread).Members.Contains(member);
        return new(1 + 0.002 * member, 0.01 * (member % 5), 0.002 + 1e-5 * member, member % 3 == 0 ? 0 : 900, member % 2)
        {
            Follows = mounting
                ? [new(model.OptionEffect[0], -0.4, true), new(model.Days[0].Heat, 0.3, true), new(Global.Heat, 0.02, false), new(model.Runs[0].Air, 0.01, false)]
                : [],
        };
    }

    [Theory]
    [MemberData(nameof(Tables))]
    public void The_gradient_agrees_with_differences_at_random_points(string name, bool levelled)
    {
        DayModel model = DayModelBuilder.Build(Table(name)).Centred([0.3, 0.7, 0.5, 0.8]);
        DayDensity first = new(model);
        double[] middle = [.. model.Parameters.Select(Start)];
        first.Visit(middle);
        if (levelled)
            model = model.Levelled(RunLevel.Of(first), MeanLevel.Of(first)).Informed(m => Evidence(model, m));
        DayDensity density = new(model);
        int n = model.Dimension;
        Random random = new(5);
        double worst = 0;
        string at = "";
        for (int trial = 0; trial < 5; trial++)
        {
            double[] u = [.. model.Parameters.Select(p => Start(p) + 0.5 * (random.NextDouble() * 2 - 1))];
            double[] g = new double[n], ignored = new double[n];
            density.Evaluate(u, g);
            double scale = Math.Sqrt(g.Sum(x => x * x) / n);
            for (int i = 0; i < n; i++)
            {
                double difference = Richardson(h => At(i, h) - At(i, -h));
                double error = Math.Abs(difference - g[i]) / Math.Max(Math.Abs(g[i]), 0.01 * scale);
                if (error > worst)
                    (worst, at) = (error, $"{model.Parameters[i].Name}: {g[i]} against {difference}");
            }
            double At(int i, double h)
            {
                double keep = u[i];
                u[i] += h;
                double value = density.Evaluate(u, ignored);
                u[i] = keep;
                return value;
            }
        }
        output.WriteLine($"{name}: {n} parameters, worst relative error {worst:E2} at {at}");
        Assert.True(worst < 1e-6, $"{worst} at {at}");
    }

    /// <summary>Winding, laminations and can as three bodies with the same constants, in steps of a hundredth of a second from the end of the drive: what the model has of a winding that is read after the stop.</summary>
    [Fact]
    public void A_winding_read_after_the_stop_lags_behind_the_laminations_as_three_bodies_do()
    {
        double[] delays = [5, 10, 15, 20, 30, 45, 60];
        ReadingsTable table = InventedDays.Plain(1, 1);
        Run run = table.Runs[0] with { RollInS = 8, Readings = [.. delays.Select((s, k) => new Reading(2 + k, null, s) { Winding = new(61, s, 50, 25, null) })] };
        DayModel model = DayModelBuilder.Build(table with { Runs = [run] });
        DayDensity density = new(model);
        density.Visit([.. model.Parameters.Select(Start)]);
        Constants c = density.Motor;
        RunState s = density.States[0];
        double[] ratios = [.. model.Ratios.Select(r => r.Log([.. model.Parameters.Select(Start)]))];
        double x = s.End1 + s.EndExcess, core = s.End1, can = s.End2, worst = 0, without = 0;
        const double h = 0.01;
        for (double at = -8; at < delays[^1] - h / 2; at += h)
        {
            double g = Math.Exp(s.LogG + (at < -h / 2 ? ratios[model.RollInRatio] : ratios[model.Runs[0].RatioEntry])), slot = (x - core) / c.Slot;
            (x, core, can) = (x - h * slot / c.Share, core + h * (slot - c.Kappa * (core - can)) / (1 - c.Share), can + h * c.Rho * (c.Kappa * (core - can) - g * can));
            int reading = Array.FindIndex(delays, d => Math.Abs(d - at - h) < h / 2);
            if (reading < 0)
                continue;
            ReadingState seen = density.Seen[reading];
            output.WriteLine($"{delays[reading],2:0} s: three bodies {x:f2}, model {seen.Winding:f2}; core {core:f2}, model {seen.Core:f2}; can {can:f2}, model {seen.Can:f2}");
            (worst, without) = (Math.Max(worst, Math.Abs(seen.Winding - x)), Math.Max(without, Math.Abs(seen.Core + s.HaltExcess * Math.Exp(-c.Nu * delays[reading]) - x)));
        }
        // A winding by resistance is good to 1.5 K.
        Assert.True(worst < 0.15, $"{worst}");
        Assert.True(without > 1.5, $"{without}");
    }

    private static double Start(Parameter p) => p.Prior switch
    {
        PriorKind.LogGamma => Math.Log(p.B),
        _ => 0,
    };

    // Central differences of two steps combined: error of fourth order.
    private static double Richardson(Func<double, double> difference)
    {
        const double h = 1e-3;
        double wide = difference(h) / (2 * h), narrow = difference(h / 2) / h;
        return (4 * narrow - wide) / 3;
    }
}
