using Coolproof.Advice.Instruments;
using Coolproof.Notebook;
using Coolproof.Sampling.Uncertainty;
using Coolproof.Thermal;

namespace Coolproof.Advice.Tests.Instruments;

/// <summary>The worked examples of docs/instruments.md, line by line. The first was reckoned a second time outside the project, by Simpson's rule on Planck's law and differences.</summary>
public class WorkedExampleTests
{
    [Fact]
    public void Three_shots_each_at_ice_and_boiling_water()
    {
        double boilsC = Water.BoilingPointC(Air.PressureAtPa(300));
        GunCheckLine line = GunCheckLine.Of([new(CheckedAgainst.Ice, [0.9, 0.7, 1.0], 0), new(CheckedAgainst.Boiling, [95.1, 95.6, 95.0], boilsC)], 0.95, 22);
        LawOfPropagation law = line.ByLaw;
        Assert.Equal(98.977478, boilsC, 1e-4); // water-saturation.csv of the reference
        Assert.Equal(-0.2614619864, Gun.Usual.ReadingC(0, 0.95, 0.96, 22), 1e-6);
        Assert.Equal(99.6156678868, Gun.Usual.ReadingC(98.977478, 0.95, 0.96, 22), 1e-6);
        Assert.Equal([0.2, 0.2, 0.3, 0.7], line.Inputs.Take(4).Select(i => i.StandardUncertainty), (a, b) => Math.Abs(a - b) < 1e-12);
        double[] gain = [0.00200246, 0.00200246, 0.0028764, 0.00666885, 0.00143015, 0.00347965], offset = [0.07932881, 0.12067119, 0.11395031, 0.40187464, 0.05665632, 0.20968897];
        for (int i = 0; i < 6; i++)
        {
            Assert.Equal(gain[i], law.Component(0, i, line.Inputs), 2e-7);
            Assert.Equal(offset[i], law.Component(1, i, line.Inputs), 2e-5);
        }
        Assert.Equal(0.94482758, law.Values[0], 1e-6);
        Assert.Equal(-2.19664219, law.Values[1], 1e-4);
        Assert.Equal(0.00865565, law.StandardUncertainty(0), 1e-6);
        Assert.Equal(0.49246512, law.StandardUncertainty(1), 1e-5);
        Assert.Equal(0.7234262980607186, law.Correlation(0, 1), 1e-4);
        Assert.Equal(62.32491328561671, line.PutRight(60).C, 1e-4);
        Assert.Equal(0.5368317042894886, line.PutRight(60).StandardUncertaintyK, 1e-4);
        Assert.Equal(83.49279669216173, line.PutRight(80).C, 1e-4);
        Assert.Equal(0.6930338397213658, line.PutRight(80).StandardUncertaintyK, 1e-4);
        Assert.Equal(law.StandardUncertainty(0), line.ByChance.StandardUncertainty(0), 0.0002);
        Assert.Equal(law.StandardUncertainty(1), line.ByChance.StandardUncertainty(1), 0.02);
    }

    [Fact]
    public void A_winding_of_61_2_milliohms_against_50_cold()
    {
        WindingByResistance hot = WindingByResistance.Of(new(61.2, 8), 50, 23, 0.5, new());
        double[] slopes = [5.16, -6.31584, 1.224, 0.224], parts = [0.3491598305418308, 0.3646451924158607, 0.612, 0.06466323014923808];
        for (int i = 0; i < 4; i++)
        {
            Assert.Equal(slopes[i], hot.ByLaw.Sensitivities[0, i], 1e-9);
            Assert.Equal(parts[i], hot.ByLaw.Component(0, i, hot.Inputs), 1e-9);
        }
        Assert.Equal(80.792, hot.C, 9);
        Assert.Equal(0.7959924854854683, hot.StandardUncertaintyK, 9);
        Assert.Equal(hot.StandardUncertaintyK, hot.ByChance.StandardUncertainty(), 0.01);
    }
}
