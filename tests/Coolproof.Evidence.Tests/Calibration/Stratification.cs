using Coolproof.Rehearsal;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>The kinds of day that figures are given for.</summary>
internal static class Stratification
{
    /// <summary>A name and which days belong to it; the first holds all.</summary>
    public static IReadOnlyList<(string Name, Func<Stratum, bool> Holds)> All { get; } =
    [
        ("all days", _ => true),
        ("load sd 3 %", s => s.LoadSd == 0.03),
        ("load sd 5 %", s => s.LoadSd == 0.05),
        ("load sd 8 %", s => s.LoadSd == 0.08),
        ("good hands", s => s.Hands == Hands.Good),
        ("bad hands", s => s.Hands == Hands.Bad),
        ("delays noted", s => s.DelaysNoted),
        ("delays not noted", s => !s.DelaysNoted),
        ("fan on after the stop", s => s.FanRunsOn),
        ("fan off after the stop", s => !s.FanRunsOn),
        ("1 run an option", s => s.RunsPerOption == 1),
        ("2 runs an option", s => s.RunsPerOption == 2),
        ("3 runs an option", s => s.RunsPerOption == 3),
        ("4 runs an option", s => s.RunsPerOption == 4),
        ("fixed order", s => s.Order == RunOrder.Fixed),
        ("shuffled order", s => s.Order == RunOrder.Shuffled),
        ("charge noted", s => s.ChargeNoted),
        ("charge not noted", s => !s.ChargeNoted),
        ("clock noted", s => s.ClockNoted),
        ("clock not noted", s => !s.ClockNoted),
        ("start noted", s => s.StartNoted),
        ("start not noted", s => !s.StartNoted),
        ("blown down", s => s.BlownDown),
        ("left in the shade", s => !s.BlownDown),
        ("2 options", s => s.Options == 2),
        ("3 options", s => s.Options == 3),
        ("4 options", s => s.Options == 4),
        ("5 options", s => s.Options == 5),
        ("6 options", s => s.Options == 6),
    ];
}
