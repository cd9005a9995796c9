namespace Coolproof.Store.Backups;

/// <summary>The name under which a file is kept that another one replaces.</summary>
internal static class Aside
{
    /// <summary>A name beside it that nothing has yet.</summary>
    public static string Of(string file)
    {
        string aside = $"{file}.replaced";
        for (int n = 2; File.Exists(aside); n++) aside = $"{file}.replaced-{n}";
        return aside;
    }
}
