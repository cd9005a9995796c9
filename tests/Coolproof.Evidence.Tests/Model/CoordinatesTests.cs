using Coolproof.Evidence.Model;
using Coolproof.Rehearsal;
using Coolproof.Sampling.Diagnostics;
using Coolproof.Sampling.Hamiltonian;
using Coolproof.Sampling.Laplace;

namespace Coolproof.Evidence.Tests.Model;

public class CoordinatesTests(ITestOutputHelper output)
{
    // Draws enough for means to a few hundredths of an sd.
    private const int Draws = 1000;

    [Theory]
    [InlineData(2, false)]
    [InlineData(2, true)]
    [InlineData(3, false)]
    [InlineData(3, true)]
    [InlineData(6, false)]
    [InlineData(6, true)]
    [Trait("Suite", "long")]
    public void Another_choice_of_coordinates_gives_the_same_conductances(int options, bool identical)
    {
        RehearsalOption[] entered = [.. Enumerable.Range(0, options).Select(i => new RehearsalOption("option " + i))];
        RehearsalSettings settings = new(identical ? 21 : 22, entered, 2) { DelaysNoted = 1, ReadingsPerRun = 2 };
        Notebook.ReadingsTable table = Rehearse.Day(settings).Table;
        if (identical)
            table = OneTruth(settings, options);
        DayModel model = DayModelBuilder.Build(table);
        DayFit fitted = DayFit.Of(model);
        DayModel other = model.Centred([.. model.Groups.Select(_ => 0.5)]);
        double[] centre = Coordinates.Carry(new(fitted.Model), fitted.Centre, new(other));
        ArrowHessian hessian = ArrowHessian.At(new DayDensity(other).Evaluate, other.Layout, centre);
        double[] precision = [.. centre.Select(_ => 1.0)];
        DayFit plain = fitted with { Model = other, Centre = centre, Factor = ArrowFactor.Of(hessian, precision, 0.2) };
        (double Mean, double Error)[] first = Conductances(fitted), second = Conductances(plain);
        for (int k = 0; k < options; k++)
        {
            double z = (first[k].Mean - second[k].Mean) / Math.Sqrt(first[k].Error * first[k].Error + second[k].Error * second[k].Error);
            output.WriteLine($"option {k}: {first[k].Mean:F4} and {second[k].Mean:F4}, {z:F2} standard errors apart");
            Assert.InRange(z, -4, 4);
        }
    }

    [Fact]
    [Trait("Suite", "long")]
    public void A_day_with_charge_noted_converges()
    {
        Notebook.ReadingsTable table = DayGenerator.Day(16).Table;
        Assert.NotNull(DayModelBuilder.Build(table).Charge);
        SamplerRecord sampler = Assert.IsType<Judged>(Judge.Of(table, new JudgeSettings())).Verdict.Sampler;
        output.WriteLine($"{sampler.Draws} draws a chain, {sampler.Divergences} divergences");
        Assert.InRange(sampler.Draws, 1, 2500);
    }

    // The same option under several names: every run of a day of one option gets a name in turn.
    private static Notebook.ReadingsTable OneTruth(RehearsalSettings settings, int options)
    {
        Notebook.ReadingsTable one = Rehearse.Day(settings with { Options = [settings.Options[0]], RunsPerOption = 2 * options }).Table;
        return one with { Runs = [.. one.Runs.Select((r, i) => r with { Option = "option " + i % options, Remounted = true })] };
    }

    private static NutsResult Sample(DayFit fit, int draws)
    {
        int n = fit.Model.Dimension;
        NutsSettings settings = new(WarmUp: 500, Draws: draws, TargetAcceptance: 0.9, Metric: MetricKind.LeadingBlock, LeadingBlock: fit.Model.Layout.Globals);
        return Nuts.Sample(n, fit.Whitened(), (_, stream) =>
        {
            double[] z = new double[n];
            stream.FillNormal(z);
            return [.. z.Select(x => 0.5 * x)];
        }, settings, 1, 2);
    }

    private static (double Mean, double Error)[] Conductances(DayFit fit)
    {
        NutsResult sample = Sample(fit, Draws);
        ArrowWhitening whitening = new(fit.Centre, fit.Factor);
        DayDensity density = new(fit.Model);
        double[] u = new double[fit.Model.Dimension];
        int options = fit.Model.Options.Count;
        double[][] logs = sample.Derive(options, (draw, values) =>
        {
            whitening.ToPosition(draw, u);
            density.Visit(u);
            for (int k = 0; k < options; k++)
                values[k] = density.Motor.LogConductance + density.Deviation(fit.Model.OptionEffect[k]);
        });
        ConvergenceDiagnostics diagnostics = new(4, sample.Draws);
        return [.. logs.Select(x =>
        {
            double mean = x.Average(), sd = Math.Sqrt(x.Average(v => (v - mean) * (v - mean)));
            return (mean, sd / Math.Sqrt(diagnostics.Assess(x).BulkSampleSize));
        })];
    }
}
