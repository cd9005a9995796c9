namespace Coolproof.Store.Engines;

/// <summary>What can be wrong with a photo.</summary>
internal static class PhotoFaults
{
    public static StoreException Other(string id) => new(
        StoreFault.OtherPhoto, $"Another photo is kept under {id}.", "Send it under a new UUID: what is kept is never changed.");
}
