namespace Coolproof.EndToEnd.Support;

/// <summary>Tests that run one after another, when all others have: beside them their times would tell of the machine and not of the page.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public sealed class Alone;
