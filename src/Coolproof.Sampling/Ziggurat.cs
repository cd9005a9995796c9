namespace Coolproof.Sampling;

/// <summary>
/// Standard normal numbers by the ziggurat of Marsaglia and Tsang (2000, J. Stat. Softw. 5(8)) with 256 layers, in the form of Doornik (2005):
/// layer and abscissa come from different bits of one 64-bit word.
/// </summary>
static class Ziggurat
{
    const int Layers = 256;

    /// <summary>Where the tail begins and the area of each layer, for 256 layers (Marsaglia and Tsang 2000).</summary>
    const double TailStart = 3.6541528853610088;
    const double LayerArea = 0.00492867323399;

    /// <summary>Right edges of the layers, outermost first; [0] is the width the base layer would have as a rectangle.</summary>
    static readonly double[] Edge = Edges();

    /// <summary>exp(−x²/2) at each edge.</summary>
    static readonly double[] Height = Array.ConvertAll(Edge, x => Math.Exp(-0.5 * x * x));

    public static double Next(RandomStream random)
    {
        while (true)
        {
            ulong bits = random.NextBits();
            int layer = (int)(bits & (Layers - 1));
            // The upper 54 bits, as a signed fraction in [−1, 1).
            double u = ((long)bits >> 10) * (1.0 / (1L << 53));
            double x = u * Edge[layer];
            if (Math.Abs(x) < Edge[layer + 1])
                return x;
            if (layer == 0)
                return Math.CopySign(Tail(random), u);
            double y = Height[layer] + random.NextUniform() * (Height[layer + 1] - Height[layer]);
            if (y < Math.Exp(-0.5 * x * x))
                return x;
        }
    }

    /// <summary>Beyond the last edge: Marsaglia's (1964) exact method.</summary>
    static double Tail(RandomStream random)
    {
        while (true)
        {
            double x = -Math.Log(1 - random.NextUniform()) / TailStart;
            double y = -Math.Log(1 - random.NextUniform());
            if (2 * y > x * x)
                return TailStart + x;
        }
    }

    static double[] Edges()
    {
        double[] edge = new double[Layers + 1];
        double height = Math.Exp(-0.5 * TailStart * TailStart);
        edge[0] = LayerArea / height;
        edge[1] = TailStart;
        for (int i = 2; i < Layers; i++)
        {
            height += LayerArea / edge[i - 1];
            edge[i] = Math.Sqrt(-2 * Math.Log(height));
        }

        edge[Layers] = 0;
        return edge;
    }
}
