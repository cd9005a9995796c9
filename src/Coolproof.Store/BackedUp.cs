namespace Coolproof.Store;

/// <summary>What a backup holds.</summary>
/// <param name="Entries">Entries.</param>
/// <param name="Files">Files of the folders beside the notebook.</param>
public sealed record BackedUp(int Entries, int Files);
