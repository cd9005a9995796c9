namespace Coolproof.Evidence.Forecasts;

/// <summary>What the car does.</summary>
internal enum RacePhase
{
    /// <summary>Hard driving.</summary>
    Race,

    /// <summary>Rolling in without power.</summary>
    RollIn,

    /// <summary>Standing.</summary>
    Stand,
}

/// <summary>A stretch of equal steps in one phase.</summary>
/// <param name="Phase">What the car does.</param>
/// <param name="Race">Which race, from 0.</param>
/// <param name="StepS">Seconds of a step.</param>
/// <param name="Steps">Number of steps.</param>
internal readonly record struct RaceStretch(RacePhase Phase, int Race, double StepS, int Steps);

/// <summary>The times at which a race day is looked at: the same for every draw.</summary>
internal sealed class RaceGrid
{
    private const double DriveStepS = 10, StandStepS = 15;

    public RaceGrid(RaceScenario scenario)
    {
        List<RaceStretch> stretches = [];
        for (int race = 0; race < scenario.Races; race++)
        {
            int drive = Math.Max(1, (int)Math.Ceiling(scenario.RaceS / DriveStepS)), stand = Math.Max(1, (int)Math.Ceiling(scenario.BreakS / StandStepS));
            stretches.Add(new(RacePhase.Race, race, scenario.RaceS / drive, drive));
            stretches.Add(new(RacePhase.RollIn, race, Model.Priors.RollIn.Mean, 1));
            stretches.Add(new(RacePhase.Stand, race, scenario.BreakS / stand, stand));
        }
        Stretches = stretches;
        List<double> seconds = [0];
        foreach (RaceStretch stretch in stretches)
            for (int i = 0; i < stretch.Steps; i++)
                seconds.Add(seconds[^1] + stretch.StepS);
        Seconds = [.. seconds];
    }

    /// <summary>Stretches in order.</summary>
    public IReadOnlyList<RaceStretch> Stretches { get; }

    /// <summary>Seconds since the first start, at the start and after each step.</summary>
    public double[] Seconds { get; }
}
