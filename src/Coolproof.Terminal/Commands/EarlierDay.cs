namespace Coolproof.Commands;

/// <summary>An earlier day that was read from a readings table.</summary>
/// <param name="File">Name of the file, without its folder.</param>
/// <param name="Day">Name of the day in it.</param>
/// <param name="Runs">Its runs.</param>
internal sealed record EarlierDay(string File, string Day, int Runs);
