namespace Coolproof.Thermal;

/// <summary>
/// The quickest lap of a point mass: full throttle, corner speed held, known speeds kept to, full brakes, each corner entered as fast as it and those after it allow. Speeds where parts
/// meet are found backwards by braking, then forwards by throttle, round and round until the lap ends as it began.
/// </summary>
internal sealed class LapLine
{
    // A driver keeps this part of the highest steady speed; at the highest itself nothing would be left to steer with.
    private const double HeldShare = 0.995;
    private const double Settled = 1e-11, Rounding = 1e-9;
    private const int MostRounds = 400;

    private readonly LineForces _forces;
    private readonly IReadOnlyList<TrackPart> _parts;
    private readonly double _stepM;
    private readonly double[] _radius, _most, _rise, _start;

    /// <summary>Finds the speeds at which parts begin.</summary>
    /// <param name="track">The lap.</param>
    /// <param name="car">The car.</param>
    /// <param name="forces">Its forces.</param>
    /// <param name="stepM">Longest step, m.</param>
    public LapLine(Track track, Car car, LineForces forces, double stepM)
    {
        (_forces, _parts, _stepM) = (forces, track.Parts, stepM);
        _radius = [.. track.Parts.Select(p => p.Driven is { } speeds ? Math.Max(Track.TightestM, car.LineRadius(speeds.FastestMS / HeldShare, speeds.Acceleration(p.LengthM))) : p.RadiusM)];
        _most = [.. track.Parts.Select((p, i) => p.IsStraight ? double.PositiveInfinity : forces.Energy(p.Driven?.FromMS ?? HeldShare * car.CornerSpeed(_radius[i])))];
        _rise = [.. track.Parts.Select((p, i) => p.Driven is { } speeds ? (forces.Energy(speeds.ToMS) - _most[i]) / p.LengthM : 0)];
        _start = Starts();
    }

    // Most energy of motion at a way into a part: of a corner its highest steady speed's, of a stretch whose speeds are known theirs.
    private double Most(int part, double way) => _most[part] + _rise[part] * way;

    /// <summary>Drives the lap.</summary>
    /// <param name="sums">What it adds up to.</param>
    /// <param name="seen">Told part, way within it and speed along the lap; null: nobody.</param>
    /// <returns>Lowest and highest speed, m/s.</returns>
    public (double Lowest, double Highest) Drive(LapSums sums, Action<int, double, double>? seen)
    {
        double lowest = double.PositiveInfinity, highest = 0;
        for (int part = 0; part < _parts.Count; part++)
            Part(part, sums, (way, energy) =>
            {
                double speed = _forces.Speed(energy);
                (lowest, highest) = (Math.Min(lowest, speed), Math.Max(highest, speed));
                seen?.Invoke(part, way, speed);
            });
        return (lowest, highest);
    }

    private double[] Starts()
    {
        int n = _parts.Count;
        double[] allowed = [.. Enumerable.Range(0, n).Select(i => Math.Min(_most[i], Most((i + n - 1) % n, _parts[(i + n - 1) % n].LengthM)))];
        for (int i = 2 * n - 1; i >= 0; i--)
            allowed[i % n] = Math.Min(allowed[i % n], BeforeBraking(i % n, allowed[(i + 1) % n]));
        double[] start = [.. allowed.Select(e => double.IsPositiveInfinity(e) ? _forces.Energy(1) : e)];
        for (int round = 0; round < MostRounds; round++)
        {
            double was = start[0];
            for (int i = 0; i < n; i++)
                start[(i + 1) % n] = Math.Min(allowed[(i + 1) % n], AfterThrottle(i, start[i]));
            if (round > 0 && Math.Abs(start[0] - was) <= Settled * was)
                break;
        }
        return start;
    }

    private (double StepM, int Steps) Grid(int part)
    {
        TrackPart p = _parts[part];
        int steps = (int)Math.Ceiling(p.LengthM / Math.Min(_stepM, _radius[part] / 6));
        return (p.LengthM / steps, steps);
    }

    private double BeforeBraking(int part, double energy)
    {
        if (double.IsPositiveInfinity(energy))
            return energy;
        (double h, int steps) = Grid(part);
        for (int i = steps - 1; i >= 0 && (energy < _most[part] || _rise[part] != 0); i--)
            energy = Math.Min(_forces.Step(Asked.Brake, energy, -h, _radius[part]), Most(part, i * h));
        return Math.Min(energy, _most[part]);
    }

    private double AfterThrottle(int part, double energy)
    {
        (double h, int steps) = Grid(part);
        for (int i = 0; i < steps && !(IsHeld(part, i * h, energy) && _rise[part] == 0); i++)
            energy = After(part, i * h, energy, h);
        return energy;
    }

    // At the most that the part allows, and the motor can keep to it.
    private bool IsHeld(int part, double way, double energy) => energy >= Most(part, way) && _forces.Net(Asked.Throttle, energy, _radius[part]) >= _rise[part];

    private void Part(int part, LapSums sums, Action<double, double> seen)
    {
        double radius = _radius[part], end = _start[(part + 1) % _parts.Count];
        (double h, int steps) = Grid(part);
        double[] speeding = Speeding(part);
        // Back from the end until braking meets throttle, or the corner's speed.
        int at = steps;
        double[] braking = new double[steps + 1];
        braking[steps] = end;
        if (end < speeding[steps] * (1 - Rounding) || (_rise[part] < 0 && _forces.Step(Asked.Brake, end, -h, radius) < speeding[steps - 1] * (1 - Rounding)))
            do
            {
                braking[at - 1] = _forces.Step(Asked.Brake, braking[at], -h, radius);
                at--;
            }
            while (at > 0 && braking[at] < speeding[at]);
        double met = at == steps ? h : Meeting(part, at * h, speeding[at], braking[at + 1], h);
        int whole = at == steps ? steps : at;
        for (int i = 0; i < whole; i++)
            Forward(part, speeding[i], h, i * h, sums, seen);
        if (at == steps)
        {
            seen(_parts[part].LengthM, speeding[steps]);
            return;
        }
        Forward(part, speeding[at], met, at * h, sums, seen);
        double energy = braking[at + 1];
        if (met < h)
            seen(at * h + met, _forces.Step(Asked.Brake, energy, met - h, radius, sums));
        for (int i = at + 1; i < steps; i++)
        {
            seen(i * h, braking[i]);
            _forces.Step(Asked.Brake, braking[i + 1], -h, radius, sums);
        }
        seen(_parts[part].LengthM, end);
    }

    private double[] Speeding(int part)
    {
        (double h, int steps) = Grid(part);
        double[] energy = new double[steps + 1];
        energy[0] = _start[part];
        for (int i = 0; i < steps; i++)
            energy[i + 1] = After(part, i * h, energy[i], h);
        return energy;
    }

    private double After(int part, double from, double energy, double way) =>
        IsHeld(part, from, energy) ? Most(part, from + way) : Math.Min(Most(part, from + way), _forces.Step(Asked.Throttle, energy, way, _radius[part]));

    // A step of throttle, or of holding; where the most that is allowed is reached within it, throttle until then.
    private void Forward(int part, double energy, double way, double from, LapSums sums, Action<double, double> seen)
    {
        double radius = _radius[part];
        seen(from, energy);
        if (IsHeld(part, from, energy))
        {
            _forces.Hold(energy, _rise[part], way, radius, sums);
            return;
        }
        if (_forces.Step(Asked.Throttle, energy, way, radius) <= Most(part, from + way))
        {
            _forces.Step(Asked.Throttle, energy, way, radius, sums);
            return;
        }
        double until = Root(x => _forces.Step(Asked.Throttle, energy, x, radius) - Most(part, from + x), way);
        _forces.Step(Asked.Throttle, energy, until, radius, sums);
        _forces.Hold(Most(part, from + until), _rise[part], way - until, radius, sums);
    }

    private double Meeting(int part, double from, double speeding, double braking, double h) =>
        Root(x => After(part, from, speeding, x) - _forces.Step(Asked.Brake, braking, x - h, _radius[part]), h);

    // Of a rising function, below 0 at 0, between 0 and most: false position, both ends kept moving.
    private static double Root(Func<double, double> f, double most)
    {
        double a = 0, b = most, fa = f(0), fb = f(most);
        if (fa >= 0)
            return 0;
        if (fb <= 0)
            return most;
        for (int i = 0; i < 60 && b - a > 1e-13 * most; i++)
        {
            double x = b - fb * (b - a) / (fb - fa), fx = f(x);
            if (fx == 0)
                return x;
            if (fx < 0)
                (a, fa, fb) = (x, fx, i % 2 == 0 ? fb : fb / 2);
            else
                (b, fb, fa) = (x, fx, i % 2 == 0 ? fa : fa / 2);
            if (Math.Abs(fx) < 1e-12 * Math.Max(Math.Abs(fb), Math.Abs(fa)) || Math.Abs(fx) < 1e-11)
                return x;
        }
        return 0.5 * (a + b);
    }
}
