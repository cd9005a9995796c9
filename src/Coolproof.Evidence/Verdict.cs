namespace Coolproof.Evidence;

/// <summary>Mean, standard deviation and quantiles of one quantity over the posterior draws.</summary>
public sealed record Summary(double Mean, double Sd, double Q05, double Q25, double Q50, double Q75, double Q95)
{
    /// <summary>The same of the quantity's negative: a difference seen from the other side.</summary>
    public Summary Turned() => new(-Mean, Sd, -Q95, -Q75, -Q50, -Q25, -Q05);

    /// <summary>Summary of draws.</summary>
    /// <param name="draws">Equally weighted draws, two at least.</param>
    public static Summary Of(ReadOnlySpan<double> draws) => Summaries.Of(draws);
}

/// <summary>Conditions at which options are compared.</summary>
/// <param name="AmbientC">Air, °C.</param>
/// <param name="DriveS">Seconds of hard driving.</param>
/// <param name="Start">Where can, core and winding start: always "ambient".</param>
public sealed record FairConditions(double AmbientC, double DriveS, string Start = "ambient");

/// <summary>One cooling option at fair conditions.</summary>
/// <param name="Name">As first written in the table.</param>
/// <param name="Runs">Runs that count.</param>
/// <param name="Readings">Readings that count.</param>
/// <param name="PeakCanC">Can at the end of hard driving, true surface temperature, °C.</param>
/// <param name="PeakWindingC">Mean winding temperature at that instant, °C.</param>
/// <param name="RelativeConductance">Watts shed per degree relative to the first option of the table.</param>
/// <param name="WattsPerKelvin">Watts shed per degree, W/K; scale from the motor's mass, prior-driven.</param>
/// <param name="ProbabilityCoolest">Share of draws in which this option's can is the coolest, ties within a draw not possible.</param>
public sealed record OptionVerdict(
    string Name, int Runs, int Readings, Summary PeakCanC, Summary PeakWindingC, Summary RelativeConductance, Summary WattsPerKelvin,
    double ProbabilityCoolest);

/// <summary>What is said of a pair.</summary>
public enum PairCall
{ /// <summary>Can't be told yet.</summary>
    Open, /// <summary>The first is cooler, at least 97.5 % probable.</summary>
    ACooler, /// <summary>The second is cooler, at least 97.5 % probable.</summary>
    BCooler, /// <summary>At least 95 % of the difference lies within the "same within" band.</summary>
    Same
}

/// <summary>What a pair is compared on.</summary>
public enum ComparedOn
{ /// <summary>The can.</summary>
    Can, /// <summary>The winding.</summary>
    Winding
}

/// <summary>Two options against each other.</summary>
/// <param name="A">First option.</param>
/// <param name="B">Second option.</param>
/// <param name="On">Can or winding.</param>
/// <param name="DifferenceK">peak(a) − peak(b) at fair conditions, K.</param>
/// <param name="ProbabilityACooler">Share of draws in which a is cooler.</param>
/// <param name="Call">What is said of the pair.</param>
public sealed record PairVerdict(string A, string B, ComparedOn On, Summary DifferenceK, double ProbabilityACooler, PairCall Call)
{
    /// <summary>The same pair with its options the other way round.</summary>
    public PairVerdict Turned() => new(B, A, On, DifferenceK.Turned(), 1 - ProbabilityACooler, Call switch
    {
        PairCall.ACooler => PairCall.BCooler,
        PairCall.BCooler => PairCall.ACooler,
        var either => either,
    });
}

/// <summary>A source of doubt and its share of the variance of the main difference.</summary>
/// <param name="Source">The name of one of <see cref="Words.SourceOfDoubt.All"/>.</param>
/// <param name="Share">0 to 1; all shares sum to 1.</param>
public sealed record DoubtShare(string Source, double Share);

/// <summary>How the sampling went.</summary>
public sealed record SamplerRecord(int Chains, int Draws, double RHatMax, double EssMin, int Divergences);

/// <summary>A reading as read and as corrected back to the end of hard driving at this run's own conditions.</summary>
/// <param name="Line">Line of the table.</param>
/// <param name="DelayS">Seconds from halt; the posterior median where it was not noted.</param>
/// <param name="DelayNoted">Whether the delay was noted.</param>
/// <param name="ReadC">As read, °C.</param>
/// <param name="CorrectedC">Can at the end of hard driving as this run's evidence has it from this reading: read plus all parts, °C.</param>
/// <param name="PartDelayK">Part for the cooling (or the rise) between the stop and the trigger, K.</param>
/// <param name="PartAimK">Part for the spot partly off the motor, K.</param>
/// <param name="PartGunK">Part for the gun's offset and gain, K.</param>
/// <param name="PartAmbientK">Part that brings the run's air to the fair air, K; not in <paramref name="CorrectedC"/>.</param>
/// <param name="PartWarmthK">Part that takes off the warmth brought along from before the run, K; not in <paramref name="CorrectedC"/>.</param>
/// <param name="FairC">As it would have read at the stop at fair air with a start at air: corrected plus the last two parts, °C.</param>
public sealed record CorrectedReading(
    int Line, double DelayS, bool DelayNoted, double ReadC, double CorrectedC,
    double PartDelayK, double PartAimK, double PartGunK, double PartAmbientK, double PartWarmthK, double FairC);

/// <summary>A reading of the winding as read and as brought back to the end of hard driving at this run's own conditions.</summary>
/// <param name="Line">Line of the table.</param>
/// <param name="ByResistance">Whether it was reckoned from a resistance; else it was read by a gun.</param>
/// <param name="DelayS">Seconds from halt; the posterior median where it was not noted.</param>
/// <param name="DelayNoted">Whether the delay was noted.</param>
/// <param name="ReadC">As read, or the mean winding temperature that the resistance says, °C.</param>
/// <param name="CorrectedC">Mean winding temperature at the end of hard driving as this run's evidence has it from this reading, °C.</param>
public sealed record WindingReading(int Line, bool ByResistance, double DelayS, bool DelayNoted, double ReadC, double CorrectedC);

/// <summary>One run as the evidence sees it: the can's and the winding's temperature after the stop, with doubt.</summary>
/// <param name="Day">Day.</param>
/// <param name="Run">Run.</param>
/// <param name="Option">Option.</param>
/// <param name="AirC">Air of this run, °C.</param>
/// <param name="SecondsAfterHalt">Time grid from the end of hard driving (negative: rolling in) on, s after halt.</param>
/// <param name="CanC">Can over the grid, °C.</param>
/// <param name="WindingC">Mean winding temperature over the grid, °C.</param>
/// <param name="Readings">Readings of can and endbell in this run that count, as read and as corrected.</param>
/// <param name="Outlier">A reason when the run fits badly with the rest; else null.</param>
public sealed record RunCurve(
    string Day, string Run, string Option, Summary AirC, IReadOnlyList<double> SecondsAfterHalt, IReadOnlyList<Summary> CanC,
    IReadOnlyList<Summary> WindingC, IReadOnlyList<CorrectedReading> Readings, string? Outlier)
{
    /// <summary>Readings of the winding in this run that count.</summary>
    public IReadOnlyList<WindingReading> WindingReadings { get; init; } = [];
}

/// <summary>One difference by a classical model on corrected readings, beside the main answer.</summary>
/// <param name="A">First option.</param>
/// <param name="B">Second option.</param>
/// <param name="DifferenceK">Estimate, K.</param>
/// <param name="StandardErrorK">Its standard error, K; NaN where no residual degrees of freedom are left.</param>
/// <param name="Agrees">Whether the main 90 % interval and the classical 90 % interval overlap.</param>
public sealed record SecondOpinionPair(string A, string B, double DifferenceK, double StandardErrorK, bool Agrees);

/// <summary>A classical covariate or mixed model on corrected readings.</summary>
/// <param name="Method">In plain words.</param>
/// <param name="Pairs">Differences; empty when the table does not carry such a model.</param>
/// <param name="Remark">What it says beside the main answer, one sentence.</param>
public sealed record SecondOpinion(string Method, IReadOnlyList<SecondOpinionPair> Pairs, string Remark);

/// <summary>The answer to "which option", with everything needed to check it.</summary>
/// <param name="Fair">Conditions of the comparison.</param>
/// <param name="SameWithinK">Half-width of the "same" band, K.</param>
/// <param name="Seed">Random seed.</param>
/// <param name="Sentence">The verdict in one plain sentence, in °C (units are put in by <c>VerdictWords</c>).</param>
/// <param name="Options">Options in the order of the table.</param>
/// <param name="Pairs">Every pair on the can and on the winding.</param>
/// <param name="MainPair">The most probable coolest and its closest rival; null with a single option.</param>
/// <param name="Doubt">Where the variance of the main difference comes from, largest first; empty with a single option.</param>
/// <param name="Sampler">How the sampling went.</param>
/// <param name="Runs">Each run's curve and corrected readings, in the order of the table.</param>
/// <param name="SecondOpinion">The classical model; null with a single option.</param>
/// <param name="Warnings">What the reader must know before trusting the verdict.</param>
/// <param name="Advice">What to do next, in plain words.</param>
public sealed record Verdict(
    FairConditions Fair, double SameWithinK, long Seed, string Sentence, IReadOnlyList<OptionVerdict> Options, IReadOnlyList<PairVerdict> Pairs,
    PairVerdict? MainPair, IReadOnlyList<DoubtShare> Doubt, SamplerRecord Sampler, IReadOnlyList<RunCurve> Runs, SecondOpinion? SecondOpinion,
    IReadOnlyList<string> Warnings, IReadOnlyList<string> Advice);
