using Coolproof.Thermal;

namespace Coolproof.Evidence.Forecasts;

/// <summary>Limits, and the odds of passing any of them that the person accepts.</summary>
/// <param name="Limits">Limits.</param>
/// <param name="AcceptedOdds">0 to 1.</param>
public sealed record RaceDemand(IReadOnlyList<RaceLimit> Limits, double AcceptedOdds = 0.1)
{
    private const string CautiousClass = "E", CautiousGrade = "M";

    /// <summary>The limits of a motor as far as they are known; what is unknown is taken with caution, and says so.</summary>
    /// <param name="canLimitC">The person's limit on the can, °C.</param>
    /// <param name="thermalClass">Letter of the winding's thermal class (IEC 60085); null: unknown.</param>
    /// <param name="magnetGrade">Letters of the magnet's grade; null: unknown.</param>
    /// <param name="acceptedOdds">0 to 1.</param>
    /// <exception cref="ArgumentException">No such class or grade.</exception>
    public static RaceDemand Of(double canLimitC, string? thermalClass, string? magnetGrade, double acceptedOdds)
    {
        ThermalClass insulation = ThermalClass.Find(thermalClass ?? CautiousClass) ?? throw new ArgumentException($"There is no thermal class {thermalClass}.", nameof(thermalClass));
        MagnetGrade magnet = MagnetGrade.Find(magnetGrade ?? CautiousGrade) ?? throw new ArgumentException($"There is no magnet grade {magnetGrade}.", nameof(magnetGrade));
        return new(
        [
            new(LimitedPart.Can, canLimitC, "your limit"),
            new(LimitedPart.Winding, insulation.LimitC, thermalClass is null ? $"class unknown: {insulation.Letter} assumed" : $"class {insulation.Letter}"),
            new(LimitedPart.Magnet, magnet.LimitC, magnetGrade is null ? $"grade unknown: {magnet.Suffix} assumed" : $"grade {magnet.Suffix}"),
        ], acceptedOdds);
    }

    /// <summary>The same with another limit of one part.</summary>
    /// <param name="limit">It takes the place of the part's.</param>
    public RaceDemand With(RaceLimit limit) => this with { Limits = [.. Limits.Select(one => one.Part == limit.Part ? limit : one)] };
}
