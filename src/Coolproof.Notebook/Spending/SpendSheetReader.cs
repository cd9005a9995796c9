using System.Globalization;

namespace Coolproof.Notebook;

/// <summary>Reads parts from JSON, version 1 (docs/formats/spend-sheet.schema.json): all that can't be right is listed at once, and nothing is half read.</summary>
public static class SpendSheetReader
{
    /// <summary>Most parts and most combinations driven, and predicted: each is one bit of a word.</summary>
    public const int MostParts = 64, MostTogether = 32;

    private const double MostMoney = 1e6, MostGrams = 10_000, UsualGuessShare = 0.5;

    /// <summary>Reads a file.</summary>
    /// <param name="text">The file's text.</param>
    public static AskedRead<SpendSheet> Read(string text) => AskedFields.Read(text, Sheet);

    private static SpendSheet Sheet(AskedFields f)
    {
        f.Needed("version", 1, 1, "", "Write \"version\": 1.");
        if (!f.Has("parts")) f.Wrong("parts", "a list of parts", "Write \"parts\": [ { \"name\": …, \"price\": …, \"massG\": … } ].", "nothing");
        IReadOnlyList<SpendPart> parts = f.Items("parts", MostParts, Part);
        if (f.Has("parts") && parts.Count == 0) f.Wrong("parts", "one part at least", "");
        IReadOnlyList<TogetherParts> driven = f.Items("driven", MostTogether, d => new TogetherParts(d.Name("option", "The option's name in the readings table."), Listed(d)));
        IReadOnlyList<TogetherParts> predicted = f.Items("predicted", MostTogether, d => new TogetherParts(d.Name("mount", "The mount's name in the file of mounts."), Listed(d)));
        SpendSheet sheet = new(
            f.Has("currency") ? f.Name("currency", "Its sign, like \"€\".") : "", Money(f, "money"), f.Number("grams", 0, MostGrams, "g") ?? Ounces(f, "ounces"), f.Part("class", Rules) ?? new(0, null, true),
            f.Number("lapSPer100G", 0, 60, "s a lap"), f.Has("base") ? f.Name("base", "An option of the readings table.") : "bare can", parts, driven, predicted);
        if (f.Has("grams") && f.Has("ounces")) f.Wrong("ounces", "only one of grams and ounces", "Take one of them out.");
        Names(f, sheet);
        return sheet;

        static IReadOnlyList<string> Listed(AskedFields d)
        {
            IReadOnlyList<string> names = d.Names("parts");
            if (names.Count == 0) d.Wrong("parts", "the names of its parts in brackets", "The base has no parts and needs no entry.");
            return names;
        }
    }

    private static SpendRules Rules(AskedFields f)
    {
        double? least = f.Number("minimumMassG", 1, 100_000, "g"), car = f.Number("carMassG", 1, 100_000, "g");
        if (least is not null && !f.Has("carMassG")) f.Wrong("carMassG", "the car's mass ready to race without any of the parts", "Grams count only above the minimum, so both are needed.", "nothing");
        if (car is not null && !f.Has("minimumMassG")) f.Wrong("minimumMassG", "the class's minimum weight", "Grams count only above it, so both are needed.", "nothing");
        return new(least - car ?? 0, (int?)f.Number("fansMax", 0, 20, "fans"), f.YesNo("openingsAllowed", true));
    }

    private static SpendPart Part(AskedFields f)
    {
        string name = f.Name("name", "What you call it.");
        decimal price = Money(f, "price") ?? 0;
        if (!f.Has("price") && !f.YesNo("owned", false)) f.Wrong("price", "its price, 0 for what costs nothing", "Or \"owned\": true for what you have.", "nothing");
        double? grams = f.Number("massG", 0, MostGrams, "g"), ounces = Ounces(f, "massOz");
        if (grams is not null && ounces is not null) f.Wrong("massOz", "only one of massG and massOz", "Take one of them out.");
        if (!f.Has("massG") && !f.Has("massOz")) f.Wrong("massG", "its mass from 0 to 10000 g (or massOz)", "Put it on the scales, or see its sheet.", "nothing");
        return new(new CoolingPart(name.Length > 0 ? name : "?", price, grams ?? ounces ?? 0))
        {
            Owned = f.YesNo("owned", false),
            Places = f.Names("places"),
            Excludes = f.Names("excludes"),
            Needs = f.Names("needs"),
            Fans = (int)(f.Number("fans", 0, 8, "fans") ?? 0),
            OpensShell = f.YesNo("opensShell", false),
            FitMin = f.Number("fitMin", 0, 6000, "min") ?? 0,
            Soldering = f.YesNo("soldering", false),
            Cutting = f.YesNo("cutting", false),
            LapS = f.Number("lapS", -60, 60, "s a lap") ?? 0,
            CoolsK = Cools(f),
        };
    }

    private static Guess? Cools(AskedFields f)
    {
        double? middle = f.Number("coolsK", 0, 80, "K cooler"), low = f.Number("coolsLowK", -40, 80, "K cooler"), high = f.Number("coolsHighK", 0, 80, "K cooler");
        if (middle is not { } k)
        {
            if (low is not null || high is not null) f.Wrong("coolsK", "the middle of the guess, since its ends are given", "", "nothing");
            return null;
        }
        Guess guess = new(k, low ?? k * (1 - UsualGuessShare), high ?? k * (1 + UsualGuessShare));
        if (!(guess.Low <= k)) f.Wrong("coolsLowK", $"at most coolsK, {Text(k)}", "It is the lower end of what you think likely, 9 times in 10.");
        if (!(guess.High >= k)) f.Wrong("coolsHighK", $"at least coolsK, {Text(k)}", "It is the upper end of what you think likely, 9 times in 10.");
        return guess;
    }

    // Names that nothing else bears: a slip of the pen would silently drop a rule.
    private static void Names(AskedFields f, SpendSheet sheet)
    {
        string[] names = [.. sheet.Parts.Select(p => p.Part.Name)];
        for (int i = 0; i < names.Length; i++)
        {
            if (names.Take(i).Contains(names[i], StringComparer.OrdinalIgnoreCase)) f.Wrong($"parts[{i}].name", "a name of its own", "Two parts must not have one name.", $"\"{names[i]}\" again");
            foreach ((string field, IReadOnlyList<string> of) in new[] { ("excludes", sheet.Parts[i].Excludes), ("needs", sheet.Parts[i].Needs) })
                foreach (string other in of)
                    Known($"parts[{i}].{field}", other, names[i]);
            if (sheet.Parts[i].Needs.Intersect(sheet.Parts[i].Excludes, StringComparer.OrdinalIgnoreCase).FirstOrDefault() is { } both)
                f.Wrong($"parts[{i}].excludes", "nothing that it needs", "Take it out of one of the two.", $"\"{both}\", which it needs");
        }
        (string Field, string Named, TogetherParts Of)[] together =
            [.. sheet.Driven.Select((t, i) => ($"driven[{i}]", "option", t)), .. sheet.Predicted.Select((t, i) => ($"predicted[{i}]", "mount", t))];
        for (int d = 0; d < together.Length; d++)
        {
            (string field, string named, TogetherParts of) = together[d];
            foreach (string part in of.Parts) Known($"{field}.parts", part, null);
            if (of.Parts.Distinct(StringComparer.OrdinalIgnoreCase).Count() < of.Parts.Count) f.Wrong($"{field}.parts", "each part once", "", "a part twice");
            if (together.Take(d).Any(before => before.Named == named && string.Equals(before.Of.Option, of.Option, StringComparison.OrdinalIgnoreCase)))
                f.Wrong($"{field}.{named}", "a name that isn't listed yet", "", $"\"{of.Option}\" again");
            if (together.Take(d).Any(before => before.Of.Parts.ToHashSet(StringComparer.OrdinalIgnoreCase).SetEquals(of.Parts)))
                f.Wrong($"{field}.parts", "parts that nothing before consists of", "Two of the same parts differ in something: make that a part of its own. What was driven need not be predicted.", "the same parts again");
        }

        void Known(string field, string name, string? own)
        {
            if (string.Equals(name, own, StringComparison.OrdinalIgnoreCase)) f.Wrong(field, "names of other parts", "", "the part itself");
            else if (!names.Contains(name, StringComparer.OrdinalIgnoreCase)) f.Wrong(field, "names of parts in this file", "Spell it as in its own entry.", $"\"{name}\"");
        }
    }

    private static decimal? Money(AskedFields f, string name)
    {
        if (f.Number(name, 0, MostMoney, "in your currency") is not { } value) return null;
        decimal money = Math.Round((decimal)value, 2);
        if (Math.Abs((double)money - value) > 1e-9) f.Wrong(name, "at most two digits after the point", "");
        return money;
    }

    private static double? Ounces(AskedFields f, string name) => f.Number(name, 0, 350, "oz") is { } oz ? Units.GramsFrom(oz, MassUnitChoice.Ounce) : null;

    private static string Text(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
