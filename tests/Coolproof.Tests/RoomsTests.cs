using ArchUnitNET.Domain;
using ArchUnitNET.Loader;

namespace Coolproof.Tests;

/// <summary>Each room knows only the rooms below it.</summary>
public class RoomsTests
{
    static readonly Dictionary<string, string[]> Below = new()
    {
        ["Coolproof.Thermal"] = [],
        ["Coolproof.Sampling"] = [],
        ["Coolproof.Notebook"] = [],
        ["Coolproof.Traces"] = [],
        ["Coolproof.Live"] = ["Coolproof.Traces"],
        ["Coolproof.Evidence"] = ["Coolproof.Thermal", "Coolproof.Sampling", "Coolproof.Notebook"],
        ["Coolproof.Rehearsal"] = ["Coolproof.Thermal", "Coolproof.Sampling", "Coolproof.Notebook"],
        ["Coolproof.Advice"] = ["Coolproof.Thermal", "Coolproof.Sampling", "Coolproof.Notebook", "Coolproof.Evidence", "Coolproof.Rehearsal"],
        ["Coolproof.Store"] = ["Coolproof.Notebook"],
        ["Coolproof.Pictures"] = ["Coolproof.Evidence", "Coolproof.Notebook", "Coolproof.Traces"],
        ["Coolproof.Terminal"] = ["Coolproof.Thermal", "Coolproof.Sampling", "Coolproof.Notebook", "Coolproof.Evidence", "Coolproof.Pictures"],
        ["coolproof"] = ["Coolproof.Thermal", "Coolproof.Sampling", "Coolproof.Notebook", "Coolproof.Evidence", "Coolproof.Rehearsal", "Coolproof.Advice", "Coolproof.Store", "Coolproof.Pictures", "Coolproof.Terminal", "Coolproof.Traces", "Coolproof.Live"],
    };

    static readonly Architecture House = new ArchLoader()
        .LoadAssemblies([.. Below.Keys.Select(room => System.Reflection.Assembly.LoadFrom(Path.Combine(AppContext.BaseDirectory, room + ".dll")))]).Build();

    public static TheoryData<string> Rooms => [.. Below.Keys];

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_knows_only_the_rooms_below_it(string room)
    {
        var allowed = Below[room].Append(room).ToHashSet();
        var strangers = House.Types.Where(type => RoomOf(type) == room)
            .SelectMany(type => type.Dependencies.Select(dependency => (From: type.FullName, To: dependency.Target)))
            .Where(arrow => arrow.To.FullName.StartsWith("Coolproof.", StringComparison.Ordinal)) // the loader files what it can't resolve under any room
            .Where(arrow => Below.ContainsKey(RoomOf(arrow.To)) && !allowed.Contains(RoomOf(arrow.To)))
            .Select(arrow => $"{arrow.From} -> {arrow.To.FullName}");
        Assert.Empty(strangers);
    }

    [Fact]
    public void Arrows_between_rooms_are_seen_at_all() => // else the rule above could not fail
        Assert.Contains(House.Types.Where(type => RoomOf(type) == "Coolproof.Evidence"), type => type.Dependencies.Any(d => RoomOf(d.Target) == "Coolproof.Notebook"));

    static string RoomOf(IType type) => type.Assembly.Name.Split(',')[0];
}
