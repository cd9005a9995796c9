namespace Coolproof.Commands.Notebooks;

/// <summary>The UUID under which this machine's own commands write entries; made once and kept in the data folder.</summary>
internal static class MachineDevice
{
    /// <summary>The UUID.</summary>
    /// <param name="folder">The data folder.</param>
    public static Guid Of(string folder)
    {
        var file = Path.Combine(folder, "device");
        if (File.Exists(file) && Guid.TryParseExact(File.ReadAllText(file).Trim(), "D", out var known)) return known;
        var made = Guid.CreateVersion7();
        File.WriteAllText(file, made.ToString("D") + "\n");
        return made;
    }
}
