using Coolproof.Thermal.FullModel;

namespace Coolproof.Rehearsal;

/// <summary>The true can of an evening, second by second.</summary>
public sealed class CanTrace
{
    const double StepS = 1;

    readonly List<double> _atS = [];
    readonly List<double> _canC = [];

    /// <summary>Times, s from the evening's first go.</summary>
    public IReadOnlyList<double> AtS => _atS;

    /// <summary>The can, °C.</summary>
    public IReadOnlyList<double> CanC => _canC;

    /// <summary>Goes along a phase and notes the can each second.</summary>
    internal void Along(MotorBody body, CoolingOption cooling, in Phase phase, double seconds, double[] t, double from, bool afterEvent)
    {
        for (double done = 0; done < seconds;)
        {
            double step = Math.Min(StepS, seconds - done);
            FastPath.Advance(body, cooling, phase, step, t, afterEvent: afterEvent && done == 0);
            done = seconds - done <= StepS ? seconds : done + step;
            _atS.Add(from + done);
            _canC.Add(t[(int)Node.Can]);
        }
    }

    /// <summary>The can at a time, between its neighbours; at the ends the nearest.</summary>
    public double At(double atS)
    {
        int after = _atS.BinarySearch(atS);
        if (after >= 0) return _canC[after];
        after = ~after;
        if (after == 0) return _canC[0];
        if (after == _atS.Count) return _canC[^1];
        double share = (atS - _atS[after - 1]) / (_atS[after] - _atS[after - 1]);
        return _canC[after - 1] + (share * (_canC[after] - _canC[after - 1]));
    }
}
