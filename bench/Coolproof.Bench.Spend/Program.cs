using System.Diagnostics;
using System.Globalization;
using Coolproof.Advice.Spending;

// Times the search for all best choices of parts (made up, seeds 1 to 20), warm, and trying every combination of the same parts where that can be waited for. Prints tab-separated:
// parts, kind, median and largest milliseconds of the search, best choices (median), milliseconds of trying all, ratio. Milliseconds are core time of the process, so other work
// on the machine matters little; the search runs on one thread.
Console.WriteLine("parts\trules\tsearch ms\tlargest ms\tbest choices\ttrying all ms\tratio");
foreach (bool places in new[] { true, false })
    foreach (int n in new[] { 15, 20, 40, 60 })
        Report(n, places);

static void Report(int n, bool places)
{
    ChoiceSearch.Front(Some(new(99), n, places), SpendLimits.None);
    List<double> milliseconds = [];
    List<int> found = [];
    for (int seed = 1; seed <= 20; seed++)
    {
        PartChoices parts = Some(new(seed), n, places);
        TimeSpan start = Core();
        found.Add(ChoiceSearch.Front(parts, SpendLimits.None).Count);
        milliseconds.Add((Core() - start).TotalMilliseconds);
    }
    milliseconds.Sort();
    found.Sort();
    double all = n <= 20 ? TryingAll(Some(new(1), n, places)) : double.NaN;
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{n}\t{(places ? "places" : "hardly any")}\t{milliseconds[10]:0.0}\t{milliseconds[^1]:0.0}\t{found[10]}\t{all:0}\t{all / milliseconds[10]:0}"));
}

static TimeSpan Core() => Process.GetCurrentProcess().TotalProcessorTime;

static double TryingAll(PartChoices c)
{
    TimeSpan start = Core();
    List<PartChoice> fit = [];
    for (ulong s = 0; s < 1UL << c.Count; s++)
    {
        bool fits = true;
        long cents = 0;
        double grams = 0;
        for (int i = 0; i < c.Count && fits; i++)
        {
            if ((s >> i & 1) == 0) continue;
            fits = (c.Apart[i] & s) == 0 && (c.Needs[i] & ~s) == 0;
            cents += c.Cents[i];
            grams += c.Grams[i];
        }
        if (fits) fit.Add(new(s, cents, grams, grams, c.WorthOf(s)));
    }
    ChoiceSearch.Unbeaten(fit);
    return (Core() - start).TotalMilliseconds;
}

// No limit on money or grams and no two prices or masses alike: the hardest case.
static PartChoices Some(Random chance, int n, bool places)
{
    int[] place = [.. Enumerable.Range(0, n).Select(_ => chance.Next(Math.Max(2, n / 4)))];
    ulong[] apart = new ulong[n], needs = new ulong[n];
    for (int i = 0; i < n; i++)
        for (int j = 0; j < i; j++)
            if (places ? place[i] == place[j] : chance.Next(5 * n) == 0) { apart[i] |= 1UL << j; apart[j] |= 1UL << i; }
    for (int i = 0; i < n; i++)
        if (chance.Next(6) == 0 && chance.Next(n) is var other && other != i && (apart[i] >> other & 1) == 0) needs[i] |= 1UL << other;
    double[] worth = [.. Enumerable.Range(0, n).Select(_ => 0.4 * chance.NextDouble() - 0.04)];
    List<(ulong Parts, double Worth)> known = [];
    while (known.Count < Math.Min(6, n / 2))
        if (chance.Next(n) is var a && chance.Next(n) is var b && a != b) known.Add((1UL << a | 1UL << b, (worth[a] + worth[b]) * (0.5 + chance.NextDouble())));
    return new([.. Enumerable.Range(0, n).Select(_ => (long)chance.Next(0, 4000))], [.. Enumerable.Range(0, n).Select(_ => 50 * chance.NextDouble())], worth, new int[n], apart, needs,
        [.. known.DistinctBy(k => k.Parts)]);
}
