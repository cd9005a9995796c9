using Coolproof.Sampling.Laplace;

namespace Coolproof.Evidence.Model;

/// <summary>
/// What the evidence says of each option, mounting and day, measured once at the typical point, in coordinates where a member is its deviation in sds of its
/// group and a run's heat follows its readings.
/// </summary>
/// <param name="density">Density in those coordinates, just visited at <paramref name="typical"/>.</param>
/// <param name="typical">The typical point.</param>
/// <param name="hessian">Curvature there.</param>
/// <param name="variances">Variance of each coordinate by that curvature, all else free.</param>
internal sealed class GroupEvidence(DayDensity density, double[] typical, ArrowHessian hessian, double[] variances)
{
    // Couplings below this correlation are left to the whitening. It is small: what is left out adds up over all mountings, and where heat varies little and mountings
    // much, everything that all mountings should follow and don't is held that much tighter.
    private const double LeastCoupling = 0.002;
    private const double LeastInformation = 0.01;

    // A can that rises in proportion to the heat and against what is shed tells at most 1 of a mounting, in units of what stands between. What tells more is the way it
    // cools, whose precision does not go with the heat: from twice as much on, what all readings leave free says more of the right scale.
    private const double MostInformation = 2;
    private readonly DayModel _model = density.Model;
    private readonly HashSet<int> _mountings = [.. density.Model.Groups.Where(g => g.Spread == Global.MountingSpread).SelectMany(g => g.Members)];
    private readonly HashSet<int> _members = [.. density.Model.Groups.SelectMany(g => g.Members)];
    private readonly HashSet<int> _heats = [.. density.Model.Runs.Select(r => r.Heat)];

    /// <summary>What is said of a member.</summary>
    public MemberEvidence Of(int member)
    {
        double sd = density.Sd(member), deviation = density.Deviation(member), given = hessian.Diagonal(member) - 1;
        HeatBetween heat = density.HeatBetween(member);
        if (_mountings.Contains(member) && heat.Share > 0 && given > LeastInformation && given * heat.Variance < MostInformation * sd * sd)
            return Following(member, sd, deviation, given, heat);
        // All else but the run's heat, which has its own coordinate already, is variance that stands between as well.
        double information = Math.Max(1 / variances[member] - 1, LeastInformation), asks = deviation * (1 + information) / information;
        if (heat.Share == 0)
            return new(information / (sd * sd), asks, 1, 0, 0);
        given = Math.Max(given, information);
        return new(given * heat.Variance / (sd * sd), asks, heat.OtherVariance + heat.Variance * (given / information - 1), heat.ChargePrecision, heat.Share);
    }

    // A mounting has its own runs only, and what their readings ask of it goes with their air, roll-in and delays, with the option, the day and the gun. The
    // whitening knows that at one value of the spreads, the mounting by itself at any: it is written about what is asked for given all of them.
    private MemberEvidence Following(int member, double sd, double deviation, double given, HeatBetween heat)
    {
        List<AskTerm> follows = [];
        double asks = deviation * (1 + given) / given;
        foreach ((int other, double coupling) in hessian.Row(member))
        {
            if (!MayBeFollowed(other) || coupling * coupling < LeastCoupling * LeastCoupling * given * hessian.Diagonal(other))
                continue;
            bool isMember = _members.Contains(other);
            double slope = -coupling / given * sd / (isMember ? density.Sd(other) : 1);
            asks -= slope * (isMember ? density.Deviation(other) : typical[other]);
            follows.Add(new(other, slope, isMember));
        }
        return new(given * heat.Variance / (sd * sd), asks, heat.OtherVariance, heat.ChargePrecision, heat.Share) { Follows = [.. follows] };
    }

    private bool MayBeFollowed(int other) =>
        !_mountings.Contains(other) && !_heats.Contains(other) && _model.Parameters[other].Prior is not (PriorKind.HalfNormal or PriorKind.Known);
}
