namespace Coolproof.Store;

/// <summary>A folder beside a notebook, for what is too large for its journal. Its files go into a backup and come back from it.</summary>
/// <param name="Name">Its name in backups: lower-case letters.</param>
/// <param name="Path">Where it lies; it need not be there.</param>
/// <param name="Ending">How the names of its whole files end, such as ".trace"; others stay out.</param>
public sealed record FolderBeside(string Name, string Path, string Ending);
