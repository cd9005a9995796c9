namespace Coolproof.Thermal.FullModel;

/// <summary>The full model's heat balance: how fast each body warms, and how that changes with each temperature.</summary>
public static class HeatFlows
{
    /// <summary>Number of bodies.</summary>
    public const int Nodes = 6;

    const int W = (int)Node.Winding, L = (int)Node.Laminations, R = (int)Node.Rotor, C = (int)Node.Can, E = (int)Node.Endbell, A = (int)Node.ShellAir;

    /// <summary>Warming rates, K/s.</summary>
    /// <param name="body">The motor.</param>
    /// <param name="cooling">The option fitted.</param>
    /// <param name="phase">The conditions.</param>
    /// <param name="t">Six temperatures, °C.</param>
    /// <param name="rate">Receives six rates, K/s.</param>
    public static void Rates(MotorBody body, CoolingOption cooling, in Phase phase, ReadOnlySpan<double> t, Span<double> rate)
    {
        double copper = CopperW(body, phase, t[W], t[R]);
        double slot = body.SlotWPerK * (t[W] - t[L]);
        double coreCan = body.CoreToCanWPerK * (t[L] - t[C]);
        double gap = body.RotorToLaminationsWPerK * (t[R] - t[L]);
        double canEndbell = body.CanToEndbellWPerK * (t[C] - t[E]);
        double windingEndbell = body.WindingToEndbellWPerK * (t[W] - t[E]);
        double windingCan = body.WindingToCanWPerK * (t[W] - t[C]);
        double shaft = body.RotorToEndbellWPerK * (t[R] - t[E]);
        double forced = cooling.ForcedWPerK(phase);
        double onCan = 1 - cooling.EndbellShare, onEndbell = cooling.EndbellShare;
        double canAir = onCan * (forced * (t[C] - t[A]) + NaturalW(cooling.NaturalWPerK125, t[C] - t[A]));
        double endbellAir = onEndbell * (forced * (t[E] - t[A]) + NaturalW(cooling.NaturalWPerK125, t[E] - t[A]));
        double canRadiated = onCan * RadiatedW(cooling.RadiatingAreaM2, t[C], phase.AirC);
        double endbellRadiated = onEndbell * RadiatedW(cooling.RadiatingAreaM2, t[E], phase.AirC);
        double exchanged = cooling.ExchangeWPerK(phase) * (t[A] - phase.AirC);
        double ironLaminations = (1 - body.IronShareRotor - body.IronShareCan) * phase.IronW;

        rate[W] = (copper - slot - windingEndbell - windingCan) / body.WindingJPerK;
        rate[L] = (ironLaminations + slot + gap - coreCan) / body.LaminationsJPerK;
        rate[R] = (body.IronShareRotor * phase.IronW - gap - shaft) / body.RotorJPerK;
        rate[C] = (body.IronShareCan * phase.IronW + coreCan + windingCan - canEndbell - canAir - canRadiated) / body.CanJPerK;
        rate[E] = (canEndbell + windingEndbell + shaft - endbellAir - endbellRadiated) / body.EndbellJPerK;
        rate[A] = (canAir + endbellAir - exchanged) / body.ShellAirJPerK;
    }

    /// <summary>Jacobian of <see cref="Rates"/>, 1/s: row i, column j is how the rate of body i changes with temperature j.</summary>
    /// <param name="body">The motor.</param>
    /// <param name="cooling">The option fitted.</param>
    /// <param name="phase">The conditions.</param>
    /// <param name="t">Six temperatures, °C.</param>
    /// <param name="jacobian">Receives 36 numbers, row by row.</param>
    public static void Jacobian(MotorBody body, CoolingOption cooling, in Phase phase, ReadOnlySpan<double> t, Span<double> jacobian)
    {
        jacobian.Clear();
        double strength = MagnetStrength(body, t[R]);
        jacobian[W * Nodes + W] = body.CopperRisePerK * phase.CopperW25 / (strength * strength);
        jacobian[W * Nodes + R] = 2 * body.MagnetLossPerK / strength * CopperW(body, phase, t[W], t[R]);
        Link(jacobian, W, L, body.SlotWPerK);
        Link(jacobian, L, C, body.CoreToCanWPerK);
        Link(jacobian, R, L, body.RotorToLaminationsWPerK);
        Link(jacobian, C, E, body.CanToEndbellWPerK);
        Link(jacobian, W, E, body.WindingToEndbellWPerK);
        Link(jacobian, W, C, body.WindingToCanWPerK);
        Link(jacobian, R, E, body.RotorToEndbellWPerK);
        double forced = cooling.ForcedWPerK(phase);
        double onCan = 1 - cooling.EndbellShare, onEndbell = cooling.EndbellShare;
        Link(jacobian, C, A, onCan * (forced + NaturalSlope(cooling.NaturalWPerK125, t[C] - t[A])));
        Link(jacobian, E, A, onEndbell * (forced + NaturalSlope(cooling.NaturalWPerK125, t[E] - t[A])));
        jacobian[C * Nodes + C] -= onCan * RadiatedSlope(cooling.RadiatingAreaM2, t[C]);
        jacobian[E * Nodes + E] -= onEndbell * RadiatedSlope(cooling.RadiatingAreaM2, t[E]);
        jacobian[A * Nodes + A] -= cooling.ExchangeWPerK(phase);
        for (int i = 0; i < Nodes; i++)
        {
            double perCapacity = 1 / body.CapacityJPerK((Node)i);
            for (int j = 0; j < Nodes; j++)
                jacobian[i * Nodes + j] *= perCapacity;
        }
    }

    /// <summary>Heat coming in from copper and iron, W.</summary>
    /// <param name="body">The motor.</param>
    /// <param name="phase">The conditions.</param>
    /// <param name="t">Six temperatures, °C.</param>
    public static double HeatInW(MotorBody body, in Phase phase, ReadOnlySpan<double> t) => CopperW(body, phase, t[W], t[R]) + phase.IronW;

    /// <summary>Heat leaving to the free air and by radiation, W.</summary>
    /// <param name="cooling">The option fitted.</param>
    /// <param name="phase">The conditions.</param>
    /// <param name="t">Six temperatures, °C.</param>
    public static double HeatOutW(CoolingOption cooling, in Phase phase, ReadOnlySpan<double> t) =>
        cooling.ExchangeWPerK(phase) * (t[A] - phase.AirC)
        + (1 - cooling.EndbellShare) * RadiatedW(cooling.RadiatingAreaM2, t[C], phase.AirC)
        + cooling.EndbellShare * RadiatedW(cooling.RadiatingAreaM2, t[E], phase.AirC);

    /// <summary>Heat stored above 0 °C, J.</summary>
    /// <param name="body">The motor.</param>
    /// <param name="t">Six temperatures, °C.</param>
    public static double StoredJ(MotorBody body, ReadOnlySpan<double> t)
    {
        double sum = 0;
        for (int i = 0; i < Nodes; i++)
            sum += body.CapacityJPerK((Node)i) * t[i];
        return sum;
    }

    /// <summary>Heat radiated by a surface to surroundings that enclose it, W.</summary>
    /// <param name="areaM2">Surface times emissivity, m².</param>
    /// <param name="surfaceC">Surface, °C.</param>
    /// <param name="surroundingsC">Surroundings, °C.</param>
    public static double RadiatedW(double areaM2, double surfaceC, double surroundingsC)
    {
        double hot = surfaceC + PhysicalConstants.ZeroCelsiusK, cold = surroundingsC + PhysicalConstants.ZeroCelsiusK;
        return areaM2 * PhysicalConstants.StefanBoltzmann * (hot * hot + cold * cold) * (hot + cold) * (hot - cold);
    }

    static double RadiatedSlope(double areaM2, double surfaceC)
    {
        double hot = surfaceC + PhysicalConstants.ZeroCelsiusK;
        return 4 * areaM2 * PhysicalConstants.StefanBoltzmann * hot * hot * hot;
    }

    static double CopperW(MotorBody body, in Phase phase, double windingC, double rotorC)
    {
        double strength = MagnetStrength(body, rotorC);
        return phase.CopperW25 * (1 + body.CopperRisePerK * (windingC - 25)) / (strength * strength);
    }

    static double MagnetStrength(MotorBody body, double rotorC) => 1 - body.MagnetLossPerK * (rotorC - 25);

    // |d|^(1/4) by two square roots: these stand in the innermost loop.
    static double NaturalW(double coefficient, double differenceK) => coefficient * differenceK * Math.Sqrt(Math.Sqrt(Math.Abs(differenceK)));

    static double NaturalSlope(double coefficient, double differenceK) =>
        CoolingOption.NaturalExponent * coefficient * Math.Sqrt(Math.Sqrt(Math.Abs(differenceK)));

    static void Link(Span<double> k, int i, int j, double wPerK)
    {
        k[i * Nodes + i] -= wPerK;
        k[j * Nodes + j] -= wPerK;
        k[i * Nodes + j] += wPerK;
        k[j * Nodes + i] += wPerK;
    }
}
