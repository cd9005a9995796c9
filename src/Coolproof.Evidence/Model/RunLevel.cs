namespace Coolproof.Evidence.Model;

/// <summary>
/// What a run's readings say of its heat, for the choice of coordinates only: it changes no density. A run's heat deviation is written as its expected
/// value given everything else plus a standard normal times its sd, both from this. So neither a small spread of heat nor precise readings make the
/// posterior thin and bent.
/// </summary>
/// <param name="ReadC">What the can would have to read, without aim loss, for the readings alone to ask for the heat that everything together says, °C.</param>
/// <param name="RiseK">Rise of the can over the air at them, K; 0 where a run says nothing.</param>
/// <param name="Readings">Readings of the can.</param>
/// <param name="OtherVariance">Variance of the level besides scatter, K²: roll-in, delays.</param>
/// <param name="Instrument">Instrument of the first reading.</param>
/// <param name="Gain">Its gain entry.</param>
internal readonly record struct RunLevel(double ReadC, double RiseK, int Readings, double OtherVariance, int Instrument, int Gain)
{
    private const double KnownVariance = 0.25, RollInVariance = 0.16, DelayVariance = 0.8, LeastRiseK = 5;

    /// <summary>Whether a reading counts for the level.</summary>
    public static bool Counts(ModelReading reading) => reading.On == ReadingOn.Can && !reading.FromFanStop;

    /// <summary>The levels of a model's runs at the last point that a density visited.</summary>
    public static RunLevel[] Of(DayDensity density) => [.. density.Model.Runs.Select((_, r) => One(density, r))];

    private static RunLevel One(DayDensity density, int r)
    {
        DayModel model = density.Model;
        ModelRun run = model.Runs[r];
        int[] seen = [.. Enumerable.Range(run.FirstReading, run.EndReading - run.FirstReading).Where(i => Counts(model.Readings[i]))];
        if (seen.Length == 0 || run.OwnHeatSd > 0)
            return default;
        ModelReading first = model.Readings[seen[0]];
        double rise = seen.Average(i => density.Seen[i].Can);
        double aim = seen.Average(i => density.Seen[i].Loss * density.Seen[i].Loss) / seen.Length;
        double other = aim + KnownVariance + (run.RollIn >= 0 ? RollInVariance : 0) + (seen.All(i => model.Readings[i].Gap >= 0) ? DelayVariance : 0);
        RunLevel level = new(seen.Average(i => density.Seen[i].Mean), rise, seen.Length, other, first.Instrument, first.Gain);
        return rise < LeastRiseK ? default : level with { ReadC = level.ReadC + level.RiseK * density.Pull(r, level) };
    }
}
