namespace Coolproof.Rehearsal;

/// <summary>Draws simulated days of every kind: the yardstick that judging is measured by. Frozen by <see cref="TruthRanges.GeneratorVersion"/>.</summary>
public static class DayGenerator
{
    /// <summary>A day of some kind, options all different.</summary>
    /// <param name="seed">Number of the day.</param>
    public static SimulatedDay Day(long seed) => Rehearse.Day(Settings(seed, sameOptionTwice: false));

    /// <summary>A day on which the last option is the first one under another name.</summary>
    /// <param name="seed">Number of the day.</param>
    public static SimulatedDay SameOptionTwice(long seed) => Rehearse.Day(Settings(seed, sameOptionTwice: true));

    /// <summary>What a day is made of: each property drawn on its own, so that every combination occurs.</summary>
    /// <param name="seed">Number of the day.</param>
    /// <param name="sameOptionTwice">Whether the last option is the first one under another name.</param>
    public static RehearsalSettings Settings(long seed, bool sameOptionTwice)
    {
        RandomStream chance = new(seed, "kind");
        double loadSd = TruthRanges.LoadSds[chance.Pick(TruthRanges.LoadSds.Length)];
        Hands hands = chance.Chance(0.5) ? Hands.Good : Hands.Bad;
        bool delaysNoted = chance.Chance(0.5), fanRunsOn = chance.Chance(0.5), chargeNoted = chance.Chance(0.5), clockNoted = chance.Chance(0.5);
        int runsPerOption = 1 + chance.Pick(4), optionCount = 2 + chance.Pick(5), readings = 1 + chance.Pick(3);
        RunOrder order = chance.Chance(0.5) ? RunOrder.Fixed : RunOrder.Shuffled;
        bool blownDown = chance.Chance(TruthRanges.BlownChance);
        bool startNoted = chance.Chance(blownDown ? TruthRanges.StartNotedIfBlownChance : TruthRanges.StartNotedChance);
        bool fanless = chance.Chance(TruthRanges.FanlessOptionChance);
        int fanlessOption = 1 + chance.Pick(optionCount - 1);
        if (sameOptionTwice && fanlessOption == optionCount - 1)
            fanless = false;
        return new RehearsalSettings(seed, Options(optionCount, fanless ? fanlessOption : -1, sameOptionTwice), runsPerOption)
        {
            LoadSd = loadSd,
            Hands = hands,
            DelaysNoted = delaysNoted ? 1 : 0,
            FanRunsOn = fanRunsOn,
            ChargeNoted = chargeNoted,
            ClockNoted = clockNoted,
            ReadingsPerRun = readings,
            Order = order,
            BlownDown = blownDown,
            StartNoted = startNoted,
            WarmUpLaps = chance.Chance(TruthRanges.WarmUpLapsChance),
            VoidRuns = chance.Chance(TruthRanges.VoidRunChance) ? 1 : 0,
            RollInNoted = chance.Chance(TruthRanges.RollInNotedChance),
            PowerOffNoted = chance.Chance(TruthRanges.PowerOffNotedChance),
            AirInWholeDegrees = chance.Chance(TruthRanges.WholeDegreesChance),
            AirBlanks = chance.Chance(TruthRanges.AirBlanksChance) ? TruthRanges.AirBlankChance : 0,
            HoldMax = chance.Chance(TruthRanges.HoldMaxChance),
        };
    }

    static RehearsalOption[] Options(int count, int fanless, bool sameOptionTwice) =>
    [
        .. Enumerable.Range(0, count).Select(k => new RehearsalOption(
            Name(k), HasFan: k != fanless, SameAs: sameOptionTwice && k == count - 1 ? Name(0) : null)),
    ];

    static string Name(int k) => $"option {(char)('A' + k)}";
}
