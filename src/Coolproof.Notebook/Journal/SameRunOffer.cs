namespace Coolproof.Notebook.Journal;

/// <summary>Two runs that may be one, which two phones began while they could not see each other: to be answered by run.same or run.two.</summary>
/// <param name="Day">The day.</param>
/// <param name="Number">The number that both bear.</param>
/// <param name="A">One run, the smaller UUID.</param>
/// <param name="B">The other.</param>
public sealed record SameRunOffer(Guid Day, int Number, Guid A, Guid B);
