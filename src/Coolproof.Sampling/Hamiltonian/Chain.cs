namespace Coolproof.Sampling.Hamiltonian;

/// <summary>One Markov chain: its place, its chance, its step size and metric. Used by one thread at a time.</summary>
sealed class Chain
{
    readonly int index;
    readonly LogDensity density;
    readonly NutsSettings settings;
    readonly RandomStream random;
    readonly Trajectory trajectory;
    readonly SideStep? sideStep;
    PhasePoint current;
    Leapfrog integrator;
    InverseMetric metric;
    double step;
    long gradientsBefore;
    long warmUpGradients;

    public Chain(int index, LogDensity density, ReadOnlySpan<double> start, InverseMetric metric, RandomStream random, NutsSettings settings, SideStep? sideStep = null)
    {
        (this.index, this.density, this.metric, this.random, this.settings, this.sideStep) = (index, density, metric, random, settings, sideStep);
        if (start.Length != metric.Dimension)
            throw new ArgumentException($"Chain {index} starts at {start.Length} coordinates; the target has {metric.Dimension}.", nameof(start));
        trajectory = new Trajectory(metric.Dimension, settings);
        integrator = new Leapfrog(density, metric);
        current = trajectory.NewPoint();
        start.CopyTo(current.Position);
        integrator.Evaluate(current);
        RefuseBadStart();
    }

    /// <summary>A chain that goes on where an earlier one stopped.</summary>
    public static Chain Resume(int index, LogDensity density, ChainTrace earlier, NutsSettings settings, SideStep? sideStep) =>
        new(index, density, earlier.PositionAtEnd, earlier.Metric, earlier.RandomAtEnd!.Copy(), settings, sideStep) { step = earlier.StepSize };

    long Gradients => gradientsBefore + integrator.Evaluations;

    /// <summary>Adapts step size and metric over the settings' warm-up.</summary>
    /// <param name="givenIsTrusted">Whether the metric of the start approximates the posterior, or is a mere placeholder.</param>
    /// <param name="cancel">Stops between two iterations.</param>
    /// <returns>What does an iteration at each step.</returns>
    public IEnumerable<int> WarmUp(bool givenIsTrusted, CancellationToken cancel)
    {
        InverseMetric given = metric;
        WarmUpSchedule schedule = new(settings);
        RunningCovariance covariance = new(metric.Dimension, settings.AdaptMetric ? settings.DenseSize(metric.Dimension) : 0);
        DualAveraging averaging = new(settings.TargetAcceptance);
        averaging.Restart(FirstStep(1));
        for (int i = 0; i < settings.WarmUp; i++)
        {
            cancel.ThrowIfCancellationRequested();
            Transition transition = Advance(averaging.Step);
            averaging.Learn(transition.Acceptance);
            if (schedule.Gathers(i))
                covariance.Add(current.Position);
            if (schedule.EndsWindow(i))
            {
                ChangeMetric(covariance.Metric(given, givenIsTrusted ? 1 : PlaceholderTrust));
                covariance.Reset();
                averaging.Restart(FirstStep(averaging.Step));
            }

            yield return i;
        }

        step = averaging.Averaged;
        warmUpGradients = Gradients;
    }

    /// <summary>Draws and keeps.</summary>
    /// <param name="draws">How many.</param>
    /// <param name="drawn">Takes the trace at the end.</param>
    /// <param name="cancel">Stops between two iterations.</param>
    /// <returns>What does an iteration at each step.</returns>
    public IEnumerable<int> Draw(int draws, Action<ChainTrace> drawn, CancellationToken cancel)
    {
        ChainTrace trace = new(draws, metric.Dimension) { StepSize = step, Metric = metric, WarmUpGradients = warmUpGradients };
        long before = Gradients;
        for (int i = 0; i < draws; i++)
        {
            cancel.ThrowIfCancellationRequested();
            Transition transition = Advance(step);
            current.Position.CopyTo(trace.Positions, i * metric.Dimension);
            trace.LogDensities[i] = current.LogDensity;
            trace.Energies[i] = current.Energy;
            trace.Acceptances[i] = transition.Acceptance;
            trace.Depths[i] = transition.Depth;
            trace.Diverged[i] = transition.Diverged;
            yield return i;
        }

        trace.DrawGradients = Gradients - before;
        trace.RandomAtEnd = random.Copy();
        trace.PositionAtEnd = [.. current.Position];
        drawn(trace);
    }

    Transition Advance(double by)
    {
        Transition transition = trajectory.Advance(ref current, integrator, by, random);
        if (sideStep is null)
            return transition;
        sideStep(current.Position, random);
        integrator.Evaluate(current);
        return transition;
    }

    const double PlaceholderTrust = 1e-3;

    void ChangeMetric(InverseMetric renewed)
    {
        gradientsBefore = Gradients;
        metric = renewed;
        integrator = new Leapfrog(density, metric);
        integrator.Evaluate(current);
    }

    /// <summary>A step whose single leapfrog is accepted with a chance near 0.8, by doubling or halving (Hoffman and Gelman 2014, algorithm 4).</summary>
    double FirstStep(double guess)
    {
        PhasePoint trial = trajectory.NewPoint();
        double candidate = guess;
        int direction = 0;
        for (int i = 0; i < 100; i++)
        {
            Leapfrog.Refresh(current, random);
            integrator.Step(current, trial, candidate);
            int wanted = current.Energy - trial.Energy > Math.Log(0.8) ? 1 : -1;
            if (direction == 0)
                direction = wanted;
            if (wanted != direction)
            {
                trajectory.Release(trial);
                return candidate;
            }

            candidate = direction > 0 ? candidate * 2 : candidate / 2;
        }

        throw new NoStepSizeException(
            $"Chain {index} finds no step size: at {candidate:g3} the energy still {(direction > 0 ? "does not change" : "is not kept")}; log density {current.LogDensity}.");
    }

    void RefuseBadStart()
    {
        if (!double.IsFinite(current.LogDensity))
            throw new ArgumentException($"Chain {index} cannot start: the log density there is {current.LogDensity}.");
        for (int i = 0; i < current.Gradient.Length; i++)
        {
            if (!double.IsFinite(current.Gradient[i]))
                throw new ArgumentException($"Chain {index} cannot start: component {i} of the gradient there is {current.Gradient[i]}.");
        }
    }
}
