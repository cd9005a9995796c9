using Coolproof.Notebook.Journal.Folding;
using CsCheck;

namespace Coolproof.Notebook.Tests.Journal;

public sealed class FillingShelves
{
    private static readonly Guid[] Ids = [.. Enumerable.Range(1, 200).Select(i => new Guid(i, 0, 0, new byte[8]))];

    // Changes of a few among two hundred: now in the layer above, now worked into a new ground.
    private static readonly Gen<(int Id, string? Value)[]> Changes = Gen.Select(Gen.Int[0, Ids.Length - 1], Gen.OneOf(Gen.Const((string?)null), Gen.Int[0, 9].Select(i => (string?)$"{i}"))).Array[0, 90];

    [Fact]
    public void A_shelf_holds_what_a_dictionary_holds_and_what_was_handed_out_stays_as_it_was() =>
        Changes.Array[1, 12].Sample(rounds =>
        {
            FillingShelf<string> shelf = new();
            Dictionary<Guid, string> expected = [];
            List<(Shelf<string> Shelf, Dictionary<Guid, string> Expected)> handedOut = [];
            foreach ((int Id, string? Value)[] changes in rounds)
            {
                if (changes.Length % 2 == 0) shelf.Expect(changes.Length);
                foreach ((int id, string? value) in changes) Change(shelf, expected, Ids[id], value);
                Assert.Equal(expected.Keys.Order(), shelf.Keys.Order());
                Assert.All(Ids, id => Assert.Equal(expected.GetValueOrDefault(id), shelf[id]));
                handedOut.Add((shelf.Snapshot(), new(expected)));
            }

            foreach ((Shelf<string> then, Dictionary<Guid, string> held) in handedOut)
            {
                Assert.Equal(held.Values.Order(StringComparer.Ordinal), then.Values.Order(StringComparer.Ordinal));
                Assert.All(Ids, id => Assert.Equal(held.GetValueOrDefault(id), then.Find(id)));
            }
        }, iter: 300, threads: 2);

    private static void Change(FillingShelf<string> shelf, Dictionary<Guid, string> expected, Guid id, string? value)
    {
        if (value is null)
        {
            shelf.Remove(id);
            expected.Remove(id);
        }
        else
        {
            shelf[id] = value;
            expected[id] = value;
        }
    }
}
