using Coolproof.Evidence.Model;

namespace Coolproof.Evidence.Tests.Model;

public class HalfNormalTableTests
{
    [Fact]
    public void Agrees_with_the_exact_function_and_its_slope()
    {
        for (double u = -9; u < 9; u += 0.0137)
        {
            (double x, double logSlope) = HalfNormal.At(u);
            (double value, double slope) = HalfNormalTable.At(u);
            Assert.Equal(x, value, 1e-12);
            Assert.Equal(x * logSlope, slope, 1e-10);
        }
    }

    [Fact]
    public void Gives_a_half_normal_its_quartiles()
    {
        // Quartiles of |N(0, 1)|: 0.3186, 0.6745, 1.1503 (tables of the normal distribution, from memory).
        Assert.Equal(0.3186, HalfNormalTable.At(-0.67449).X, 1e-4);
        Assert.Equal(0.6745, HalfNormalTable.At(0).X, 1e-4);
        Assert.Equal(1.1503, HalfNormalTable.At(0.67449).X, 1e-4);
    }
}
