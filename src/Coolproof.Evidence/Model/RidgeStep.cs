using Coolproof.Sampling;

namespace Coolproof.Evidence.Model;

/// <summary>
/// Moves the spreads of heat and of mountings together with all heats and mountings. How far a run's can rose tells the sum of its heat and of what its
/// mounting sheds, not the one or the other, so the two spreads lie on a bent ridge: much of the one or much of the other. Given the deviations
/// (<see cref="SpreadStep"/>), and in the sampler's coordinates, each is held where it is; given the sums both are free.
/// </summary>
/// <remarks>
/// Kept are the sums, and of each mounting its place within what its sum and the spreads leave it, in sds. With them the priors alone leave a density of
/// two numbers, which slices along random directions leave as it is; what the readings then say more (how the can cools tells a mounting from a heat) is
/// met by accepting with the ratio of the likelihoods (Metropolis). The slopes of the sums are those of the exact response at the point, without what the step moves.
/// </remarks>
internal sealed class RidgeStep
{
    private const double Width = 1.5, Nudge = 0.02, LargeProduct = 1e200;
    private const int Directions = 12;
    private readonly DayModel _model;
    private readonly DayDensity _density;
    private readonly DeviationGroup _mountings;
    private readonly int[] _place;
    private readonly double[] _deviations, _proposed, _there, _heats, _slopes, _sums;
    private readonly Sum[] _sumOf;
    private double _squares;
    private int _count;

    private RidgeStep(DayModel model, DeviationGroup mountings)
    {
        (_model, _density, _mountings) = (model, new(model), mountings);
        int n = model.Dimension, runs = model.Runs.Length;
        (_deviations, _proposed, _there) = (new double[n], new double[n], new double[n]);
        (_heats, _slopes, _sums) = (new double[runs], new double[runs], new double[runs]);
        _place = [.. model.Runs.Select(r => Array.IndexOf(mountings.Members, r.Mounting))];
        _sumOf = new Sum[mountings.Members.Length];
    }

    /// <summary>A step for one chain over a model; null where the two spreads are not both unknown.</summary>
    public static RidgeStep? Over(DayModel model) =>
        SpreadStep.IsFree(model, Global.RunHeatSpread) && SpreadStep.IsFree(model, Global.MountingSpread)
            ? new(model, model.Groups.Single(g => g.Spread == Global.MountingSpread)) : null;

    /// <summary>How much more heat, in its logarithm, each run's readings ask for when its mounting sheds more by one in its logarithm, at the last point moved.</summary>
    public ReadOnlySpan<double> Slopes => _slopes;

    /// <summary>Moves the spreads of <paramref name="u"/>, and with them heats and mountings; says whether it did.</summary>
    public bool Move(Span<double> u, RandomStream random)
    {
        _density.Visit(u);
        double before = _density.LogLikelihood(u);
        _density.WriteDeviations(_deviations);
        for (int r = 0; r < _sums.Length; r++)
            _sums[r] = _density.States[r].Deviation;
        Measure(u);
        Gather();
        u.CopyTo(_there);
        (_there[Global.RunHeatSpread], _there[Global.MountingSpread]) = Drawn(u[Global.RunHeatSpread], u[Global.MountingSpread], random);
        Propose(Variances(u[Global.RunHeatSpread], u[Global.MountingSpread]), Variances(_there[Global.RunHeatSpread], _there[Global.MountingSpread]));
        _density.SeatMembers(_there, _proposed);
        _density.VisitWithHeats(_there, _heats);
        if (!(Math.Log(1 - random.NextUniform()) < _density.LogLikelihood(_there) - before))
            return false;
        _there.CopyTo(u);
        return true;
    }

    // Whether a run's heat has the spread of all, and not one of its own.
    private bool IsGrouped(int r) => _model.Runs[r].OwnHeatSd == 0;

    // Slopes from two passes with no heat deviating and all mountings at nothing or at a nudge, so that they don't depend on what is moved.
    private void Measure(ReadOnlySpan<double> u)
    {
        Array.Clear(_heats);
        _deviations.CopyTo(_proposed, 0);
        Array.Clear(_slopes);
        foreach ((double at, double weight) in (ReadOnlySpan<(double, double)>)[(0, -1 / Nudge), (Nudge, 1 / Nudge)])
        {
            foreach (int member in _mountings.Members)
                _proposed[member] = at;
            u.CopyTo(_there);
            _density.SeatMembers(_there, _proposed);
            _density.VisitWithHeats(_there, _heats);
            for (int r = 0; r < _slopes.Length; r++)
                if (_place[r] >= 0 && IsGrouped(r) && _density.Levelled(r))
                    _slopes[r] += weight * _density.States[r].ByLevel;
        }
    }

    // Sums of heats less what their mountings ask for, and their squares in units of a run's own factor.
    private void Gather()
    {
        Array.Clear(_sumOf);
        (_squares, _count) = (0, 0);
        for (int r = 0; r < _sums.Length; r++)
        {
            if (!IsGrouped(r))
                continue;
            double weight = 1 / (_model.Runs[r].HeatFactor * _model.Runs[r].HeatFactor);
            if (_place[r] >= 0)
            {
                _sums[r] -= _slopes[r] * _deviations[_mountings.Members[_place[r]]];
                ref Sum of = ref _sumOf[_place[r]];
                of = new(of.Precision + weight * _slopes[r] * _slopes[r], of.Asks - weight * _slopes[r] * _sums[r]);
            }
            (_squares, _count) = (_squares + weight * _sums[r] * _sums[r], _count + 1);
        }
    }

    // Directions are chosen one by one alike, so the whole is as likely backwards as forwards.
    private (double Heat, double Mounting) Drawn(double heat, double mounting, RandomStream random)
    {
        for (int i = 0; i < Directions; i++)
        {
            (double x, double y) = (heat, mounting);
            (double sin, double cos) = Math.SinCos(Math.PI * random.NextUniform());
            double by = Slice.Next(0, t => LogDensity(x + cos * t, y + sin * t), Width, random);
            (heat, mounting) = (x + cos * by, y + sin * by);
        }
        return (heat, mounting);
    }

    // Of the two spreads' parameters given the sums: of a mounting's runs normal with the variance of heat and, all together, that of the mounting.
    private double LogDensity(double heat, double mounting)
    {
        (double heats, double mountings) = Variances(heat, mounting);
        double ratio = mountings / heats, squares = _squares, product = 1, log = -0.5 * (heat * heat + mounting * mounting + _count * Math.Log(heats));
        foreach (Sum of in _sumOf)
        {
            double wider = 1 + ratio * of.Precision;
            squares -= of.Asks * of.Asks * ratio / wider;
            product *= wider;
            if (product > LargeProduct)
                (log, product) = (log - 0.5 * Math.Log(product), 1);
        }
        return log - 0.5 * (Math.Log(product) + squares / heats);
    }

    // Each mounting at the same place, in sds, of what its sum leaves it; the heats are the rest of the sums.
    private void Propose((double Heat, double Mounting) from, (double Heat, double Mounting) to)
    {
        for (int j = 0; j < _sumOf.Length; j++)
        {
            int member = _mountings.Members[j];
            (double mean, double sd) = _sumOf[j].Leaves(from);
            (double newMean, double newSd) = _sumOf[j].Leaves(to);
            _proposed[member] = newMean + (_deviations[member] - mean) / sd * newSd;
        }
        for (int r = 0; r < _sums.Length; r++)
            _heats[r] = _sums[r] + (_place[r] >= 0 && IsGrouped(r) ? _slopes[r] * _proposed[_mountings.Members[_place[r]]] : 0);
    }

    private (double Heat, double Mounting) Variances(double heat, double mounting)
    {
        double heats = Priors.RunHeatSpread * DayDensity.Spread(heat, Priors.FloorOf(Global.RunHeatSpread) / Priors.RunHeatSpread).X;
        double mountings = _mountings.Scale * DayDensity.Spread(mounting, Priors.FloorOf(Global.MountingSpread) / _mountings.Scale).X;
        return (heats * heats, mountings * mountings);
    }

    // What the sums of a mounting's runs say of it, in units of the variance of heat.
    private readonly record struct Sum(double Precision, double Asks)
    {
        public (double Mean, double Sd) Leaves((double Heat, double Mounting) variances)
        {
            double precision = 1 / variances.Mounting + Precision / variances.Heat;
            return (Asks / variances.Heat / precision, 1 / Math.Sqrt(precision));
        }
    }
}
