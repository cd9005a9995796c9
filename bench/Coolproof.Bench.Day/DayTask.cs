using Coolproof.Evidence.Model;

namespace Coolproof.Bench.Day;

/// <summary>A day model in one choice of coordinates, with a place to look about.</summary>
/// <param name="Model">The model.</param>
/// <param name="Fit">How the program prepares it.</param>
internal sealed record DayTask(DayModel Model, DayFit Fit)
{
    /// <summary>The model of a table.</summary>
    /// <param name="table">Path of the table.</param>
    /// <param name="coordinates">"plain": every deviation non-centred; "levelled": as the program samples it.</param>
    /// <exception cref="ArgumentException">Another word.</exception>
    public static DayTask Of(string table, string coordinates)
    {
        DayModel plain = DayModelBuilder.Build(BenchTable.Read(table));
        DayFit fit = DayFit.Of(plain);
        return coordinates switch
        {
            "plain" => new(plain, fit),
            "levelled" => new(fit.Model, fit),
            _ => throw new ArgumentException($"'{coordinates}' is neither plain nor levelled."),
        };
    }
}
