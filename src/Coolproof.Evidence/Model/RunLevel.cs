namespace Coolproof.Evidence.Model;

/// <summary>
/// What a run's readings say of its heat, for the choice of coordinates only: it changes no density. A run's heat deviation is written as its expected
/// value given everything else plus a standard normal times its sd, both from this. So neither a small spread of heat nor precise readings make the
/// posterior thin and bent.
/// </summary>
/// <param name="LogLevel">log of the can's rise at the end of hard driving as read, K.</param>
/// <param name="RiseK">That rise, K; 0 where a run says nothing.</param>
/// <param name="AirC">Air that it was reckoned from, °C.</param>
/// <param name="Readings">Readings of the can.</param>
/// <param name="OtherVariance">Variance of the level besides scatter, K²: roll-in, delays.</param>
/// <param name="Instrument">Instrument of the first reading.</param>
/// <param name="Gain">Its gain entry.</param>
internal readonly record struct RunLevel(double LogLevel, double RiseK, double AirC, int Readings, double OtherVariance, int Instrument, int Gain)
{
    private const double KnownVariance = 0.25, RollInVariance = 0.16, DelayVariance = 0.8;

    /// <summary>The levels of a model's runs at the last point that a density visited.</summary>
    /// <param name="density">Where.</param>
    /// <param name="u">The point, non-centred.</param>
    public static RunLevel[] Of(DayDensity density, ReadOnlySpan<double> u)
    {
        DayModel model = density.Model;
        RunLevel[] levels = new RunLevel[model.Runs.Length];
        for (int r = 0; r < levels.Length; r++)
            levels[r] = One(density, u, r);
        return levels;
    }

    private static RunLevel One(DayDensity density, ReadOnlySpan<double> u, int r)
    {
        DayModel model = density.Model;
        ModelRun run = model.Runs[r];
        ModelReading[] seen = [.. model.Readings[run.FirstReading..run.EndReading].Where(x => x.On == ReadingOn.Can)];
        RunState state = density.States[r];
        if (seen.Length == 0 || run.OwnHeatSd > 0 || state.End2 < 5)
            return default;
        double other = KnownVariance + (run.RollIn >= 0 ? RollInVariance : 0) + (seen.All(x => x.Gap >= 0) ? DelayVariance : 0);
        double scatter = density.Guns[seen[0].Instrument].Scatter, spread = run.HeatFactor * density.Deviation(u, run.Heat) / (u[run.Heat] == 0 ? 1 : u[run.Heat]);
        double information = state.End2 * state.End2 / (scatter * scatter / seen.Length + other);
        // The mode's deviation is drawn towards nothing by its prior; the readings alone say more.
        double deviation = run.HeatFactor * density.Deviation(u, run.Heat), pull = spread == 0 ? 0 : deviation / (spread * spread * information);
        RunLevel level = new(0, state.End2, state.Air, seen.Length, other, seen[0].Instrument, seen[0].Gain);
        return level with { LogLevel = Math.Log(state.P) + pull + density.LogUnitRise(r, out _, out _) + density.GunShift(level, state.Air) };
    }
}
