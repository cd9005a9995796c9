namespace Coolproof.Thermal;

/// <summary>
/// A thermal network with constant coefficients: C dT/dt = −K T + b, with K = L + diag(G_air) − diag(a). Copper feedback a = α P_cu
/// makes a winding warm itself the more the hotter it is; where it outweighs the cooling there is no steady state, and the answers
/// over a finite time are exact all the same.
/// </summary>
public sealed class Network
{
    readonly double[] capacities;
    readonly double[] toAir;
    readonly double[] surplus;
    readonly double[] matrix;

    /// <summary>Builds a network and checks it.</summary>
    /// <param name="capacitiesJK">Heat capacity of each node, J/K, above zero; its length is the number of nodes.</param>
    /// <param name="links">Conductances between nodes.</param>
    /// <param name="toAirWK">Conductance of each node to the air, W/K, not negative.</param>
    /// <param name="copperFeedbackWK">Growth of each node's heat with its temperature, W/K; empty for none.</param>
    /// <param name="streams">Air that passes one node after another; empty for none.</param>
    /// <param name="responses">Heat that follows another node's temperature; empty for none.</param>
    /// <exception cref="ArgumentException">A length, an index or a value is wrong; the message names it.</exception>
    public Network(
        ReadOnlySpan<double> capacitiesJK, ReadOnlySpan<Link> links, ReadOnlySpan<double> toAirWK,
        ReadOnlySpan<double> copperFeedbackWK = default, ReadOnlySpan<AirStream> streams = default,
        ReadOnlySpan<HeatResponse> responses = default)
    {
        int n = capacitiesJK.Length;
        if (n == 0) throw new ArgumentException("A network needs at least one node.", nameof(capacitiesJK));
        if (toAirWK.Length != n) throw new ArgumentException($"Has {toAirWK.Length} values for {n} nodes.", nameof(toAirWK));
        if (!copperFeedbackWK.IsEmpty && copperFeedbackWK.Length != n)
            throw new ArgumentException($"Has {copperFeedbackWK.Length} values for {n} nodes.", nameof(copperFeedbackWK));

        capacities = capacitiesJK.ToArray();
        toAir = toAirWK.ToArray();
        surplus = toAirWK.ToArray();
        matrix = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            if (!(double.IsFinite(capacities[i]) && capacities[i] > 0))
                throw new ArgumentException($"Node {i} has a heat capacity of {capacities[i]} J/K.", nameof(capacitiesJK));
            RefuseNegative(toAir[i], $"Node {i} to the air", nameof(toAirWK));
            if (!copperFeedbackWK.IsEmpty)
            {
                if (!double.IsFinite(copperFeedbackWK[i]))
                    throw new ArgumentException($"Node {i} has a feedback of {copperFeedbackWK[i]} W/K.", nameof(copperFeedbackWK));
                surplus[i] -= copperFeedbackWK[i];
            }
        }
        foreach (Link link in links) Add(link);
        foreach (AirStream stream in streams) Add(stream);
        foreach (HeatResponse response in responses) Add(response);
        for (int i = 0; i < n; i++) matrix[i * n + i] += surplus[i];
    }

    /// <summary>Number of nodes.</summary>
    public int Nodes => capacities.Length;

    /// <summary>Heat capacity of each node, J/K.</summary>
    public ReadOnlySpan<double> CapacitiesJK => capacities;

    /// <summary>Conductance of each node to the air, W/K.</summary>
    public ReadOnlySpan<double> ToAirWK => toAir;

    /// <summary>Conductance to the air less copper feedback of each node, W/K: what a node loses per degree of its own.</summary>
    public ReadOnlySpan<double> SurplusWK => surplus;

    /// <summary>The matrix K, W/K, row by row.</summary>
    public ReadOnlySpan<double> Matrix => matrix;

    /// <summary>Whether K is symmetric, so that neither air streams nor responses of one node to another are in it.</summary>
    public bool IsSymmetric { get; private set; } = true;

    /// <summary>Writes b = G_air T_air + P.</summary>
    /// <param name="airC">Air, °C.</param>
    /// <param name="powersW">
    /// Heat set free in each node, W; for a node with copper feedback the copper heat extrapolated to 0 °C
    /// (<see cref="Winding.CopperHeatAtZeroW"/>).
    /// </param>
    /// <param name="heatW">Receives b, W.</param>
    public void FillHeat(double airC, ReadOnlySpan<double> powersW, Span<double> heatW)
    {
        if (powersW.Length != Nodes) throw new ArgumentException($"Has {powersW.Length} values for {Nodes} nodes.", nameof(powersW));
        for (int i = 0; i < capacities.Length; i++) heatW[i] = toAir[i] * airC + powersW[i];
    }

    /// <summary>b = G_air T_air + P, W, in a new array; see <see cref="FillHeat"/>.</summary>
    public double[] Heat(double airC, params ReadOnlySpan<double> powersW)
    {
        double[] heat = new double[Nodes];
        FillHeat(airC, powersW, heat);
        return heat;
    }

    /// <summary>Writes dT/dt, K/s, for temperatures and b.</summary>
    public void FillRates(ReadOnlySpan<double> temperatures, ReadOnlySpan<double> heatW, Span<double> ratesKPerS)
    {
        int n = Nodes;
        for (int i = 0; i < n; i++)
        {
            double flow = heatW[i];
            for (int j = 0; j < n; j++) flow -= matrix[i * n + j] * temperatures[j];
            ratesKPerS[i] = flow / capacities[i];
        }
    }

    /// <summary>Decomposes the network once, for any number of exact steps.</summary>
    public Stepper Prepare() => new(this);

    void Add(Link link)
    {
        (int a, int b, double g) = link;
        RefuseIndex(a, b, "links");
        RefuseNegative(g, $"Link {a}-{b}", "links");
        int n = Nodes;
        matrix[a * n + a] += g;
        matrix[b * n + b] += g;
        matrix[a * n + b] -= g;
        matrix[b * n + a] -= g;
    }

    void Add(AirStream stream)
    {
        (int from, int to, double g) = stream;
        RefuseIndex(from, to, "streams");
        RefuseNegative(g, $"Stream {from}-{to}", "streams");
        matrix[to * Nodes + to] += g;
        matrix[to * Nodes + from] -= g;
        IsSymmetric &= g == 0;
    }

    void Add(HeatResponse response)
    {
        (int of, int to, double growth) = response;
        RefuseIndex(of, to, "responses");
        if (!double.IsFinite(growth)) throw new ArgumentException($"Response {of}-{to} has a growth of {growth} W/K.", "responses");
        matrix[of * Nodes + to] -= growth;
        IsSymmetric &= growth == 0;
    }

    void RefuseIndex(int a, int b, string argument)
    {
        if ((uint)a >= (uint)Nodes || (uint)b >= (uint)Nodes || a == b)
            throw new ArgumentException($"{a}-{b} is not a pair of different nodes below {Nodes}.", argument);
    }

    static void RefuseNegative(double wattsPerKelvin, string what, string argument)
    {
        if (!(double.IsFinite(wattsPerKelvin) && wattsPerKelvin >= 0))
            throw new ArgumentException($"{what} has a conductance of {wattsPerKelvin} W/K.", argument);
    }
}
