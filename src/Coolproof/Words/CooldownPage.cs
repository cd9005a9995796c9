using Coolproof.Advice.CoolDowns;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>Cool-downs for people.</summary>
internal static class CooldownPage
{
    /// <summary>When a look at the can tells most (docs/planning.md).</summary>
    public const string WhenToLook = "six minutes after the halt tells most with every way of cooling, blown on 1, 2 and 3 minutes as well";

    /// <summary>Line by line.</summary>
    public static IEnumerable<string> Lines(CoolDownQuestion question, IReadOnlyList<CoolDownPromise> promises, DegreeWords degrees, int width)
    {
        foreach (string line in Cells.Wrap($"Minutes after the halt until winding, laminations, rotor and can are all within {degrees.SayDifference(question.WithinK, 1)} of the air ({degrees.Say(question.AirC, 1)}):", width)) yield return line;
        string[][] rows =
        [
            ["", "wait", "one in ten to nine in ten", "the can alone", $"warmer next run after {question.WaitMin:0.#} min"],
            .. promises.Select(p => new[]
            {
                Name(p.By), Minutes(p.PromisedMin), $"{Minutes(p.SoonMin)} to {Minutes(p.PromisedMin)}", Minutes(p.CanAloneMin),
                $"{degrees.SayDifference(p.InheritsK, 1)} (up to {degrees.SayDifference(p.InheritsMostK, 1)})",
            }),
        ];
        foreach (string line in TextColumns.Lines(rows, [false, true, true, true, true], width)) yield return line;
        foreach (CoolDownPromise promise in promises)
            if (Gap(promise, degrees) is { } said)
                foreach (string line in Cells.Wrap(said, width)) yield return line;
        foreach (string line in Cells.Wrap("Hot can, fingers off; cool with air only: no flammable duster, no freeze spray, nothing wet near the electronics.", width)) yield return line;
    }

    /// <summary>Where can and core stand furthest apart, minutes into the cool-down; null where they stay together.</summary>
    public static string? Gap(CoolDownPromise promise, DegreeWords degrees)
    {
        CoolDownPoint at = promise.Path.Where(p => p.Minutes > 0).MaxBy(p => p.CoreC - p.CanC);
        return at.CoreC - at.CanC < 1 ? null
            : $"{Name(promise.By)}: after {at.Minutes:0} min the can reads {degrees.Say(at.CanC)} but the core is still at {degrees.Say(at.CoreC)} (perhaps {degrees.Say(at.CoreHighC)}).";
    }

    /// <summary>A way of cooling in words.</summary>
    public static string Name(CoolingBy by) => by switch
    {
        CoolingBy.OwnFan => "own fan",
        CoolingBy.PitFan => "pit fan",
        CoolingBy.CooledAir => "cooled air",
        _ => "shade",
    };

    /// <summary>Whole minutes, rounded up.</summary>
    public static string Minutes(double minutes) => double.IsFinite(minutes) ? $"{Math.Ceiling(minutes):0} min" : $"over {CoolDown.LongestMin:0} min";
}
