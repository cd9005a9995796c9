namespace Coolproof.Evidence.Model;

/// <summary>From one choice of coordinates of a model to another: the same physical quantities, other centring weights or levels.</summary>
internal static class Coordinates
{
    /// <summary>The same point in <paramref name="to"/>'s coordinates. Both densities are visited.</summary>
    /// <param name="from">Density in the coordinates of <paramref name="u"/>.</param>
    /// <param name="u">Parameters there.</param>
    /// <param name="to">Density of the same table in other coordinates.</param>
    public static double[] Carry(DayDensity from, ReadOnlySpan<double> u, DayDensity to)
    {
        double[] v = u.ToArray();
        from.Visit(u);
        to.Visit(v);
        double[] deviations = new double[v.Length];
        from.WriteDeviations(deviations);
        to.SeatMembers(v, deviations);
        to.VisitMotor(v);
        v[Global.Heat] = to.HeatParameter(v, from.Motor.LogHeat);
        // What mountings are asked for may go with mean heat.
        to.SeatMembers(v, deviations);
        to.VisitWithHeats(v, [.. from.States.ToArray().Select(s => s.Deviation)]);
        return v;
    }
}
