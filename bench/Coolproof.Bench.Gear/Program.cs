using Coolproof.Bench.Gear;

// Coolproof.Bench.Gear            times a whole sweep of pinions and timings on a judged notebook; tab-separated lines.
// Coolproof.Bench.Gear lap        times one lap and prints, as JSON, all that it takes to drive the same lap elsewhere, with its figures.
switch (args)
{
    case []:
        return Sweep.Report(Console.Out);
    case ["lap"]:
        Console.WriteLine(OneLap.Json());
        return 0;
    default:
        Console.Error.WriteLine("Coolproof.Bench.Gear knows no argument, or lap.");
        return 2;
}
