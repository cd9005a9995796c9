using Coolproof.Notebook;
using NodaTime;

namespace Coolproof.Rehearsal;

/// <summary>What a person writes down of a run, and nothing else.</summary>
/// <param name="Settings">What is noted at all.</param>
/// <param name="Options">The options.</param>
/// <param name="Gun">The gun.</param>
/// <param name="Hyper">Thermometer and charger.</param>
/// <param name="MeanBatteryA">Mean battery current at exp(mean log heat), A.</param>
internal sealed record NotedRun(
    RehearsalSettings Settings, IReadOnlyList<TrueOption> Options, TrueGun Gun, Hyperparameters Hyper, double MeanBatteryA)
{
    /// <summary>Notes one run.</summary>
    /// <param name="truth">What is true of it.</param>
    /// <param name="index">Its number over all evenings, from 0.</param>
    /// <param name="firstOfEvening">Whether it is the evening's first.</param>
    internal Run Of(RunTruth truth, int index, bool firstOfEvening)
    {
        bool hasFan = Options.First(o => o.Name == truth.Option).HasFan;
        LocalDateTime go = Settings.FirstGo.PlusWeeks(truth.Evening).PlusSeconds((long)Math.Round(truth.GoS));
        return new Run(
            Day: Settings.Evenings == 1 ? "day" : $"evening {truth.Evening + 1}",
            Name: truth.Run,
            Option: truth.Option,
            StartedAt: Settings.ClockNoted ? ToMinute(go) : null,
            StartedOffset: null,
            Kind: truth.CountsInRanking ? RunKind.Test : RunKind.Void,
            DriveS: Math.Round(truth.DriveS),
            DriveAssumed: false,
            RollInS: Settings.RollInNoted ? Math.Round(truth.RollInS) : null,
            StoodS: 0,
            CutShort: truth.CountsInRanking ? CutShort.No : CutShort.Crash,
            AirC: NotedAirC(truth, index, firstOfEvening),
            AirBy: AirSource.Thermometer,
            StartC: Settings.StartNoted ? NotedStartC(truth, index) : null,
            Remounted: null,
            Fan: hasFan ? FanInRun.Ok : FanInRun.None,
            FanAfterStop: !hasFan ? FanAfterStop.None : Settings.FanRunsOn ? FanAfterStop.On : FanAfterStop.Off,
            PowerOffS: Settings.PowerOffNoted && truth.PowerOffS is double off ? Math.Round(off) : null,
            Load: NotedLoad(truth),
            Pack: NotedPack(truth, index),
            Readings: NotedReadings(truth, index))
        { MeanLapS = NotedLapS(truth, index) };
    }

    static LocalDateTime ToMinute(LocalDateTime at) => at.PlusSeconds(30).With(TimeAdjusters.TruncateToMinute);

    double? NotedAirC(RunTruth truth, int index, bool firstOfEvening)
    {
        RandomStream chance = new(Settings.Seed, "thermometer", index);
        double read = truth.AirC + Hyper.ThermometerOffsetK[truth.Evening] + chance.Normal(Hyper.ThermometerSdK);
        bool blank = chance.Chance(Settings.AirBlanks) && !firstOfEvening;
        return blank ? null : Math.Round(read, Settings.AirInWholeDegrees ? 0 : 1);
    }

    LoadNotes NotedLoad(RunTruth truth)
    {
        LoadNotes load = Settings.Notes with { Driver = Settings.Drivers.Count > 0 ? Settings.Drivers[truth.Driver] : Settings.Notes.Driver };
        return truth.Gear is { } gear ? load with { PinionTeeth = gear.Pinion, SpurTeeth = gear.Spur, TimingDeg = gear.TimingDeg } : load;
    }

    // Timed at the line to a tenth of a second; a run's laps are now and then held up.
    double? NotedLapS(RunTruth truth, int index) => truth.Gear is { } gear
        ? Math.Round(gear.LapS / Evening.Pace(truth.LogLoad) * new RandomStream(Settings.Seed, "laps", index).About(1, TruthRanges.LapNotedLogSd), 1)
        : null;

    double NotedStartC(RunTruth truth, int index) =>
        Gun.Shot(truth.CanBeforeC, truth.AirC, new RandomStream(Settings.Seed, "start", index)).ReadC;

    PackNotes NotedPack(RunTruth truth, int index)
    {
        string? name = Settings.Packs.Count > 0 ? Settings.Packs[index % Settings.Packs.Count] : null;
        if (!Settings.ChargeNoted)
            return new PackNotes(name);
        RandomStream chance = new(Settings.Seed, "charge", index);
        double geared = truth.Gear?.LogHeat(Hyper.CopperShare) ?? 0;
        double rate = (truth.Gear?.BatteryA ?? MeanBatteryA) * Math.Exp((truth.LogHeat - geared - Hyper.MeanLogHeat) / Hyper.ChargeExponent);
        double warmUp = rate * Math.Pow(TruthRanges.WarmUpHeat, 1 / Hyper.ChargeExponent) * truth.WarmUpS;
        double mah = (rate * truth.DriveS + warmUp) / 3.6 * Math.Exp(chance.Normal(Hyper.ChargeSd));
        return new PackNotes(name, ChargeBackMah: Math.Round(mah));
    }

    const int MostReadings = 20;

    List<Reading> NotedReadings(RunTruth truth, int index)
    {
        RandomStream chance = new(Settings.Seed, "shots", index);
        double timing = Settings.Hands == Hands.Good ? TruthRanges.DelayNotedSdGoodS : TruthRanges.DelayNotedSdBadS;
        double timingError = chance.Normal(timing);
        // A run's delays are stamped by one hand from one halt: noted or not, and off, together.
        bool delaysNoted = chance.Chance(Settings.DelaysNoted);
        List<Reading> readings = [];
        TrueMeter? meter = Settings.WindingMeasured ? TrueMeter.Drawn(Settings.Seed) : null;
        bool missed = truth.DelaysS.Count > 1 && new RandomStream(Settings.Seed, "missed", index).Chance(Settings.LastReadingMissed);
        for (int r = 0; r < truth.DelaysS.Count - (missed ? 1 : 0); r++)
        {
            (double read, _) = Gun.Shot(truth.CanAtReadingsC[r], truth.AirC, chance);
            double noted = Math.Max(1, Math.Round(truth.DelaysS[r] + timingError));
            readings.Add(new Reading(0, read, delaysNoted ? noted : null, Surface: SpotSurface.Tape, Hold: Gun.Hold)
            {
                Winding = meter?.Noted(truth.WindingAtReadingsC[r], noted, new RandomStream(Settings.Seed, "meter", (index * MostReadings) + r)),
            });
        }
        return readings;
    }
}
