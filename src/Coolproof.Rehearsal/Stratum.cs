namespace Coolproof.Rehearsal;

/// <summary>What kind of day it is, for reporting by kind.</summary>
/// <param name="LoadSd">Sd of log heat from run to run.</param>
/// <param name="Hands">Whose hands.</param>
/// <param name="DelaysNoted">Whether delays are noted.</param>
/// <param name="FanRunsOn">Whether fans keep running after the stop (the can falls) or go with the power (it may rise).</param>
/// <param name="RunsPerOption">Runs an option.</param>
/// <param name="Order">Order of the runs.</param>
/// <param name="ChargeNoted">Whether the charge put back is noted.</param>
/// <param name="ClockNoted">Whether clock times are noted.</param>
/// <param name="Options">Number of options.</param>
/// <param name="StartNoted">Whether the can before each run is noted.</param>
/// <param name="BlownDown">Whether the can is blown down between runs.</param>
/// <param name="HoldMax">Whether the gun holds its maximum.</param>
/// <param name="SameOptionTwice">Whether one option is entered under two names.</param>
public sealed record Stratum(
    double LoadSd, Hands Hands, bool DelaysNoted, bool FanRunsOn, int RunsPerOption, RunOrder Order, bool ChargeNoted, bool ClockNoted,
    int Options, bool StartNoted, bool BlownDown, bool HoldMax, bool SameOptionTwice);
