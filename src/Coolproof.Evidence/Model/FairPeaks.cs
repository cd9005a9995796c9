namespace Coolproof.Evidence.Model;

/// <summary>The options at fair conditions for one point of the parameters.</summary>
/// <param name="model">The model.</param>
/// <param name="options">Options asked for: places in <see cref="DayModel.Options"/>.</param>
/// <param name="fair">Fair conditions.</param>
internal sealed class FairPeaks(DayModel model, IReadOnlyList<int> options, FairConditions fair)
{
    private readonly DayDensity _density = new(model);

    /// <summary>The motor at the point that was filled last.</summary>
    public Constants Motor => _density.Motor;

    /// <summary>Fills can and winding peaks, °C, and (where there is room) conductance over core capacity, 1/s, of each option.</summary>
    public void Fill(ReadOnlySpan<double> u, Span<double> canC, Span<double> windingC, Span<double> conductance)
    {
        _density.VisitMotor(u);
        Constants motor = _density.Motor;
        for (int k = 0; k < options.Count; k++)
        {
            double logG = motor.LogConductance + _density.Deviation(model.OptionEffect[options[k]]);
            (canC[k], windingC[k]) = FairDrive.Peak(motor, logG, fair.AmbientC, fair.DriveS);
            if (conductance.Length > 0)
                conductance[k] = Math.Exp(logG);
        }
    }
}
