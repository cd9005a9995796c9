using System.Security.Cryptography;
using System.Text;
using Coolproof.Notebook.Journal;
using Coolproof.Rehearsal;
using NodaTime;

namespace Coolproof.Pages;

/// <summary>
/// The demo's four evenings (demo/demo-evenings.csv; the first of them is demo/demo-day.csv) with a question, prices, masses, a class card, limits, a gun and its check. All of
/// it is made up, and the same each time.
/// </summary>
internal sealed class DemoNotebook
{
    static readonly Instant Long = Instant.FromUtc(2000, 1, 1, 1, 0);

    readonly List<Entry> entries;
    readonly Dictionary<string, Guid> options;
    readonly List<Guid> listed = [];
    int said;

    DemoNotebook(IReadOnlyList<Entry> imported)
    {
        entries = [.. imported];
        options = imported.Where(entry => entry.Kind == EntryKind.OptionSet).ToDictionary(entry => entry.Body.Text("name")!, entry => entry.About);
    }

    /// <summary>Its question.</summary>
    public static Guid Question { get; } = Id("question");

    /// <summary>All its entries.</summary>
    public static IReadOnlyList<Entry> Entries()
    {
        DemoNotebook demo = new(TableImport.Of(DemoEvenings.AllFour().Table, null, $"{Demo.ImportName}: the demo"));
        demo.Options();
        demo.Rest();
        return demo.entries;
    }

    void Options()
    {
        Option("bare can", 0, 0, ("mount", "none"), ("fans", 0));
        Option("clip-on finned clamp", 14, 31, ("mount", "clamped round the can"), ("fans", 0), ("fitMin", 3), ("touchesShell", "nothing"));
        Option("clamp with a 25 mm fan", 27, 46, ("mount", "fan on top of the clamp"), ("fans", 1), ("fanSizeMm", 25), ("fanV", 6), ("fanSupply", "receiver"), ("inletBlockedBy", "the side of the shell, 8 mm away"), ("fitMin", 8), ("fitNotes", "fan leads moved to the free receiver port"));
        Option("nose-scoop duct", 9, 18, ("mount", "duct from the nose to the can"), ("fans", 0), ("fitMin", 35), ("fitNotes", "an opening cut into the nose of the shell"), ("touchesShell", "its lip, all round the opening"), ("cantBeUndone", true));
        Option("twin 30 mm fans in a printed duct", 0, 0, ("mount", "both over the can, blowing down"), ("fans", 2), ("fanSizeMm", 30), ("fanV", 7.4), ("fanSupply", "pack"), ("inletBlockedBy", "half of one fan by the shock tower"), ("fitMin", 20), ("fitNotes", "plug re-soldered to take 7.4 V from the pack"));
        Part("twin 30 mm fans in a printed duct", "two 30 mm fans", 26, 38);
        Part("twin 30 mm fans in a printed duct", "printed duct", 6, 17);
        Part("twin 30 mm fans in a printed duct", "lead and plug", 2, 6);
        Option("rear blower", 29, 41, ("mount", "behind the endbell, blowing along the can"), ("fans", 1), ("fanSizeMm", 30), ("fanV", 6), ("fanSupply", "receiver"), ("fitMin", 10));
    }

    void Rest()
    {
        Say(EntryKind.SettingSet, Guid.Parse("00000000-0000-8000-8000-00000000c001"), ("currency", "€"));
        Say(EntryKind.ClassSet, Id("class"), ("name", "Made-up coastal league, 13.5 turns"), ("motorRule", "13.5 turns, sensored, sealed"), ("timingMaxDeg", 40), ("massMinG", 1474), ("fansMax", 2), ("fanMaxV", 8.4), ("raceS", 360));
        Say(EntryKind.InstrumentSet, Id("gun"), ("name", "the club’s gun"), ("type", "gun"), ("emissivity", 0.95), ("emissivityFixed", true), ("spotRatio", 12), ("resolutionC", 0.1), ("unit", "c"));
        Say(EntryKind.GunCheckSet, Id("check-ice"), ("instrument", Id("gun")), ("way", "ice"), ("readC", 0.9), ("trueC", 0));
        Say(EntryKind.ChargerSet, Id("charger"), ("name", "pit charger"), ("chargeA", 5), ("outputs", 2));
        Say(EntryKind.QuestionSet, Question, ("text", "Which of these keeps the motor coolest, and is it worth its money?"), ("sort", "which"), ("options", listed.ToArray()), ("budget", 40), ("limitC", 85), ("limitOn", "can"), ("class", Id("class")));
        foreach (var motor in About(EntryKind.MotorSet)) Say(EntryKind.MotorSet, motor, ("massG", 165), ("turns", 13.5), ("brushed", false), ("canLimitC", 85), ("windingLimitC", 120), ("surface", "tape"), ("spotNote", "between mount and endbell, matt tape"));
        foreach (var pack in About(EntryKind.PackSet)) Say(EntryKind.PackSet, pack, ("cells", 2), ("capacityMah", 5000));
        foreach (var vehicle in About(EntryKind.VehicleSet)) Say(EntryKind.VehicleSet, vehicle, ("scale", "1:10"), ("drive", "four wheels"), ("massG", 1520), ("class", Id("class")), ("controllerLimitC", 100));
        var evening = 0;
        foreach (var day in About(EntryKind.DaySet)) Say(EntryKind.DaySet, day, ("name", $"Demo, evening {++evening}"), ("question", Question), ("venue", "made-up coastal club"), ("surface", "artificial turf"), ("driver", evening % 2 == 1 ? "driver one" : "driver two"), ("note", "All made up: no motor was driven."));
    }

    Guid[] About(string kind) => [.. entries.Where(entry => entry.Kind == kind).Select(entry => entry.About).Distinct()];

    void Option(string name, double price, double massG, params (string, object?)[] more)
    {
        listed.Add(options[name]);
        var look = listed.Count - 1;
        Say(EntryKind.OptionSet, options[name], [.. more, ("order", listed.Count), ("colour", look), ("mark", Shown.OptionLooks.MarkWords[look]), .. price + massG > 0 || name == "bare can" ? new (string, object?)[] { ("price", price), ("massG", massG) } : []]);
    }

    void Part(string option, string name, double price, double massG) => Say(EntryKind.PartSet, Id("part/" + name), ("option", options[option]), ("name", name), ("price", price), ("massG", massG), ("owned", false));

    void Say(string kind, Guid about, params (string, object?)[] fields) =>
        entries.Add(new Entry(Id($"entry/{said}/{kind}"), kind, Long + Duration.FromMilliseconds(said++), about, null, EntryBody.Of(fields)));

    // UUIDs of version 8, made from a name, so that the demo tried twice is one demo.
    static Guid Id(string path)
    {
        byte[] bytes = SHA256.HashData(Encoding.UTF8.GetBytes("coolproof demo 1/" + path))[..16];
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x80);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes, bigEndian: true);
    }
}
