namespace Coolproof.Sampling.Laplace;

/// <summary>
/// The rest ψ integrated out by Laplace's method for one value of the sampled globals φ: a few Newton steps, then log density + gain of one more step +
/// ½ n log 2π − ½ log det H (Tierney and Kadane 1986, "Accurate approximations for posterior moments and marginal densities").
/// </summary>
sealed class InnerLaplace
{
    /// <summary>
    /// A Newton step that gains less than this isn't gone: its gain is added to the height instead, which leaves an error of about its 3/2th power.
    /// </summary>
    const double SmallGain = 1e-2;

    /// <summary>The curvature is measured once a step would gain less than this: it is much the same at the mode then.</summary>
    const double NearGain = 0.05;

    readonly LogDensity _density;
    readonly JointApproximation _joint;
    readonly int _newtonSteps;
    readonly HessianProbe _probe;
    readonly double[] _prior;
    readonly double[] _scales;
    readonly double[] _sampled;
    readonly double[] _position;
    readonly double[] _gradient;
    readonly double[] _step;
    double[] _rest;
    double[] _restGradient;
    double[] _trial;
    double[] _trialGradient;
    double _height;
    ArrowFactor _factor;

    public InnerLaplace(LogDensity density, JointApproximation joint, QuickSettings settings)
    {
        (_density, _joint, _newtonSteps) = (density, joint, settings.NewtonSteps);
        int n = joint.Dimension, m = joint.Rest.Dimension;
        (_position, _gradient, _sampled) = (new double[n], new double[n], new double[joint.Count]);
        (_rest, _restGradient, _trial, _trialGradient, _step) = (new double[m], new double[m], new double[m], new double[m], new double[m]);
        _prior = settings.PriorPrecision is null ? [] : new double[m];
        if (settings.PriorPrecision is { } prior) joint.Restrict(prior, _prior);
        _scales = new double[m];
        ArrowHessian hessian = joint.RestHessian();
        hessian.ImproveScales(_scales);
        _factor = FactorAtMode = ArrowFactor.Of(hessian, _prior);
        _probe = new HessianProbe(Conditional, joint.Rest, _rest);
    }

    /// <summary>Gradients so far.</summary>
    public int Gradients { get; private set; }

    /// <summary>Factor of the curvature of ψ at the joint mode.</summary>
    public ArrowFactor FactorAtMode { get; }

    /// <summary>Integrates over ψ at φ.</summary>
    /// <param name="sampled">φ.</param>
    /// <param name="start">Where to start the Newton steps.</param>
    /// <param name="factor">Factor of the curvature there, near enough.</param>
    /// <param name="measure">Whether to measure the curvature on the way; else that is only done when the one given leads nowhere.</param>
    /// <returns>Null where the density can't be evaluated.</returns>
    public InnerNode? Integrate(ReadOnlySpan<double> sampled, ReadOnlySpan<double> start, ArrowFactor factor, bool measure)
    {
        sampled.CopyTo(_sampled);
        start.CopyTo(_rest);
        _height = Conditional(_rest, _restGradient);
        if (!double.IsFinite(_height)) return null;
        _factor = factor;
        int steps = _newtonSteps;
        Climb(measure ? NearGain : SmallGain, ref steps);
        if (measure || NewtonStep() > NearGain)
        {
            ArrowHessian hessian = _probe.MeasureOneSided(_rest, _restGradient, _scales);
            if (!hessian.IsFinite) return null;
            _factor = ArrowFactor.Of(hessian, _prior);
            steps = Math.Max(steps, 2);
            Climb(SmallGain, ref steps);
        }
        double gain = NewtonStep();
        double[] centre = [.. _rest];
        Columns.AddScaled(_step, 1, centre);
        double integral = _height + gain + 0.5 * centre.Length * Math.Log(Math.Tau) - 0.5 * _factor.LogDeterminant;
        return new InnerNode([.. sampled], integral, centre, _factor);
    }

    /// <summary>Gradient by φ of the log density at φ and the mode of ψ there: that of the profile.</summary>
    public double[] ProfileGradient(InnerNode node)
    {
        node.Sampled.CopyTo(_sampled, 0);
        Conditional(node.Rest, _restGradient);
        double[] gradient = new double[_sampled.Length];
        _joint.Pick(_gradient, gradient);
        return gradient;
    }

    /// <summary>Newton steps with the factor at hand until one would gain too little, or none is left.</summary>
    void Climb(double smallGain, ref int steps)
    {
        for (; steps > 0 && NewtonStep() > smallGain; steps--)
        {
            bool climbed = false;
            for (double share = 1; share > 0.1 && !climbed; share *= 0.5)
            {
                for (int i = 0; i < _rest.Length; i++) _trial[i] = _rest[i] + share * _step[i];
                double height = Conditional(_trial, _trialGradient);
                // NaN compares false.
                climbed = height > _height;
                if (climbed) _height = height;
            }
            if (!climbed) return;
            (_rest, _trial) = (_trial, _rest);
            (_restGradient, _trialGradient) = (_trialGradient, _restGradient);
        }
    }

    /// <summary>Writes the Newton step and returns what it gains.</summary>
    double NewtonStep()
    {
        _factor.Solve(_restGradient, _step);
        return 0.5 * Columns.Dot(_restGradient, _step);
    }

    /// <summary>The log density by ψ at the current φ.</summary>
    double Conditional(ReadOnlySpan<double> rest, Span<double> restGradient)
    {
        Gradients++;
        _joint.Assemble(_sampled, rest, _position);
        double height = _density(_position, _gradient);
        _joint.Restrict(_gradient, restGradient);
        return height;
    }
}
