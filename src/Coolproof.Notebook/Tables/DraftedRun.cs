namespace Coolproof.Notebook.Tables;

/// <summary>A run beside the rows it was made of, so that what is said about it can name its lines and columns.</summary>
internal sealed record DraftedRun(RunDraft Draft, Run Run);
