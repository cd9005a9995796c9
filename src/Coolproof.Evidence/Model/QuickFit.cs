using Coolproof.Sampling.Laplace;

namespace Coolproof.Evidence.Model;

/// <summary>Where a search over a longer part of the same day begins: parameters and beliefs of spreads by name.</summary>
internal sealed record QuickNear(IReadOnlyDictionary<string, double> Position, IReadOnlyDictionary<string, SpreadBelief> Spreads);

/// <summary>
/// The quick path's approximation of a model: the density expanded about its mode at the mean of each spread, normal given the spreads, and those integrated
/// over. Scatters of readings and of charges stay at their most probable values.
/// </summary>
/// <param name="Model">The model with its spreads held where it was expanded.</param>
/// <param name="Position">The mode.</param>
/// <param name="Factor">Curvature there.</param>
/// <param name="Nodes">What the globals are at each value of the spreads.</param>
internal sealed record QuickFit(DayModel Model, double[] Position, ArrowFactor Factor, IReadOnlyList<SpreadNode> Nodes)
{
    private const int MostRounds = 6, FirstHessians = 12, LaterHessians = 3;
    private const double Tolerance = 3e-2, WayTolerance = 0.3, MovedLittle = 0.15, UsualLossK = 1, LeastRiseK = 5, MostSds = 3;

    // A group's spread is integrated over wherever the density was expanded: it may be off by more than a scatter, in its parameter.
    private const double IntegratedOver = 0.4;

    private const double StartX = 0.7, LoneX = 1, LeastX = 0.3;

    // Times the scatter, on the way: with a scatter of 15 K no reading is a wild one yet, the density bends one way only, and its mode is a few steps from anywhere.
    private static readonly double[] ColdWay = [14, 4], WarmWay = [4];

    /// <summary>For a longer part of the same day.</summary>
    public required QuickNear Near { get; init; }

    /// <summary>Gradients taken.</summary>
    public required int Gradients { get; init; }

    /// <summary>Approximates a model.</summary>
    /// <param name="model">The model as it was built.</param>
    /// <param name="near">What came of a part of the same day; null: nothing is known.</param>
    public static QuickFit Of(DayModel model, QuickNear? near = null) => new Search(model, near).Run();

    /// <summary>One search.</summary>
    private sealed class Search
    {
        private readonly DayModel _model;
        private readonly DeviationGroup[] _groups;
        private readonly Dictionary<int, double> _x = [];
        private readonly QuickNear? _near;
        private SpreadBelief[] _beliefs;
        private double[] _position;
        private ArrowHessian? _known;
        private int _gradients;

        public Search(DayModel model, QuickNear? near)
        {
            (_model, _near) = (model, near);
            _groups = [.. model.Groups.Where(g => g.Members.Length > 1 && model.Parameters[g.Spread].Prior == PriorKind.HalfNormal)];
            _position = [.. model.Parameters.Select(p => near is not null && near.Position.TryGetValue(p.Name, out double u) ? u : SpreadSearch.Start(p))];
            _beliefs = [.. _groups.Select(g => near is not null && near.Spreads.TryGetValue(model.Parameters[g.Spread].Name, out SpreadBelief b) ? b : new(0, 1))];
            for (int g = 0; g < _groups.Length; g++)
                _x[_groups[g].Spread] = HalfNormal.At(_beliefs[g].Mean).X;
            foreach (int scatter in model.Instruments.Select(i => i.Scatter).Concat(model.Charge is { } c ? [c.Spread] : []))
                if (model.Parameters[scatter].Prior == PriorKind.HalfNormal)
                    _x[scatter] = near is not null && near.Position.ContainsKey(model.Parameters[scatter].Name) ? HalfNormal.At(_position[scatter]).X : StartX;
            // Of a spread with one member nothing can be learnt: it stays at its root mean square.
            for (int i = 0; i < model.Layout.Globals; i++)
                if (model.Parameters[i].Prior == PriorKind.HalfNormal)
                    _x.TryAdd(i, LoneX);
        }

        public QuickFit Run()
        {
            if (_near is not null)
                MeetNewReadings(_near);
            FindTheWay();
            for (int round = 1; ; round++)
            {
                ArrowMode mode = Found(_x, LaterHessians, _known, Tolerance);
                double[] linear = Linear(mode);
                double[] at = [.. _groups.Select(g => HalfNormal.Invert(_x[g.Spread]))];
                IReadOnlyList<SpreadNode> nodes = new SpreadGrid(_groups, at, mode.Hessian, linear).Nodes(_beliefs);
                _beliefs = SpreadGrid.Beliefs(nodes);
                DayModel expanded = _model.Holding(_x);
                double moved = Move(mode, at);
                if (moved < MovedLittle || round == MostRounds)
                    return Done(expanded, mode, nodes);
            }
        }

        // Runs that are new begin with the heat that their readings ask for: from the middle they would all count as wild ones.
        private void MeetNewReadings(QuickNear near)
        {
            DayDensity density = new(_model.Holding(_x));
            for (int i = 0; i < _groups.Length; i++)
                _position[_groups[i].Spread] = HalfNormal.Invert(_x[_groups[i].Spread]);
            density.Visit(_position);
            for (int r = 0; r < _model.Runs.Length; r++)
            {
                ModelRun run = _model.Runs[r];
                int[] seen = [.. Enumerable.Range(run.FirstReading, run.EndReading - run.FirstReading).Where(i => _model.Readings[i].On == ReadingOn.Can)];
                if (run.OwnHeatSd > 0 || seen.Length == 0 || near.Position.ContainsKey(_model.Parameters[run.Heat].Name))
                    continue;
                double miss = seen.Average(i => density.Seen[i].Mean - density.Seen[i].Loss - _model.Readings[i].ValueC), rise = Math.Max(seen.Average(i => density.Seen[i].Can), LeastRiseK);
                _position[run.Heat] = Math.Clamp(-miss / rise / (density.Sd(run.Heat) * run.HeatFactor), -MostSds, MostSds);
            }
        }

        // From scatter to scatter, each time with the curvature of the one before: what readings say grows as their scatter shrinks.
        private void FindTheWay()
        {
            double[] way = [.. _near is null ? ColdWay : WarmWay, 1];
            for (int i = 0; i + 1 < way.Length; i++)
            {
                Dictionary<int, double> wide = new(_x);
                foreach (InstrumentEntry instrument in _model.Instruments.Where(e => wide.ContainsKey(e.Scatter)))
                    wide[instrument.Scatter] *= way[i];
                ArrowMode mode = Found(wide, FirstHessians, _known, WayTolerance);
                _position = [.. mode.Position];
                _known = Narrowed(mode.Hessian, _model.Instruments.Select(e => wide.TryGetValue(e.Scatter, out double x) ? Variance(x) / Variance(x * way[i + 1] / way[i]) : 1).DefaultIfEmpty(1).Max());
            }
        }

        // What a reading is off by, K²: scatter and the spread of a usual aim loss.
        private static double Variance(double scatterX) => scatterX * scatterX * Priors.ScatterSpread * Priors.ScatterSpread + UsualLossK * UsualLossK;

        // What the readings say times a factor, the priors as they are.
        private ArrowHessian Narrowed(ArrowHessian hessian, double factor)
        {
            double[] factors = new double[_position.Length];
            Array.Fill(factors, Math.Sqrt(factor));
            ArrowHessian narrowed = hessian.Scaled(factors);
            for (int i = 0; i < factors.Length; i++)
                narrowed.AddToDiagonal(i, (1 - factor) * (_x.ContainsKey(i) ? 1 / (Parameter.HeldSd * Parameter.HeldSd) : _model.Parameters[i].Precision));
            return narrowed;
        }

        private ArrowMode Found(Dictionary<int, double> x, int hessians, ArrowHessian? known, double tolerance)
        {
            foreach ((int i, double value) in x)
                _position[i] = HalfNormal.Invert(value);
            DayModel held = _model.Holding(x);
            ArrowMode mode = ArrowMode.Find(new DayDensity(held).Evaluate, held.Layout, _position,
                new(tolerance, hessians) { Curvature = new ExpectedCurvature(held).At, Patient = true, Known = known });
            _gradients += mode.Gradients;
            return mode;
        }

        // Gradient + H u: what is short of the mode is made up to first order.
        private double[] Linear(ArrowMode mode)
        {
            double[] gradient = new double[_position.Length], linear = new double[_position.Length];
            new DayDensity(_model.Holding(_x)).Evaluate(mode.Position, gradient);
            _gradients++;
            mode.Hessian.Multiply(mode.Position, linear);
            for (int i = 0; i < linear.Length; i++)
                linear[i] += gradient[i];
            return linear;
        }

        // Goes to the new spreads; members and their curvature go with them. Returns the largest move.
        private double Move(ArrowMode mode, double[] at)
        {
            double moved = 0;
            double[] factors = new double[_position.Length];
            Array.Fill(factors, 1.0);
            _position = [.. mode.Position];
            foreach ((int spread, double x) in new ObservedSpreads(_model.Holding(_x), _x.Keys, mode.Position, mode.Factor.MarginalVariances()).MostProbable())
            {
                double next = Math.Max(x, LeastX);
                moved = Math.Max(moved, Math.Abs(Math.Log(next / _x[spread])));
                (_x[spread], _position[spread]) = (next, HalfNormal.Invert(next));
            }
            for (int g = 0; g < _groups.Length; g++)
            {
                double next = _beliefs[g].Mean;
                moved = Math.Max(moved, IntegratedOver * Math.Abs(next - at[g]));
                double ratio = SpreadGrid.Whole(_groups[g], next) / SpreadGrid.Whole(_groups[g], at[g]);
                foreach (int member in _groups[g].Members)
                {
                    _position[member] /= ratio;
                    factors[member] = ratio;
                }
                _x[_groups[g].Spread] = HalfNormal.At(next).X;
            }
            _known = mode.Hessian.Scaled(factors);
            foreach (int member in _groups.SelectMany(g => g.Members))
                _known.AddToDiagonal(member, 1 - factors[member] * factors[member]);
            return moved;
        }

        private QuickFit Done(DayModel expanded, ArrowMode mode, IReadOnlyList<SpreadNode> nodes) => new(expanded, mode.Position, mode.Factor, nodes)
        {
            Gradients = _gradients,
            Near = new(
                _model.Parameters.Select((p, i) => (p.Name, U: _position[i])).DistinctBy(p => p.Name).ToDictionary(p => p.Name, p => p.U),
                _groups.Select((g, i) => (_model.Parameters[g.Spread].Name, Belief: _beliefs[i])).ToDictionary(p => p.Name, p => p.Belief)),
        };
    }
}
