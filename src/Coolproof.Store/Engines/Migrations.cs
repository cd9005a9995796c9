using System.Reflection;
using DbUp.Builder;
using DbUp.Engine;

namespace Coolproof.Store.Engines;

/// <summary>The scripts that bring a database up to date, in the order of their names. A script that was published is never changed.</summary>
internal static class Migrations
{
    private const string Root = "Coolproof.Store.Migrations.";

    /// <summary>Names and texts of the scripts for an engine ("Sqlite", "Postgres").</summary>
    public static IReadOnlyList<SqlScript> Of(string engine)
    {
        Assembly assembly = typeof(Migrations).Assembly;
        string prefix = Root + engine + ".";
        return [.. assembly.GetManifestResourceNames().Where(name => name.StartsWith(prefix, StringComparison.Ordinal)).Order(StringComparer.Ordinal).Select(name => new SqlScript(name[prefix.Length..], Text(assembly, name)))];
    }

    /// <summary>Runs those that have not run yet, in one transaction.</summary>
    /// <param name="builder">The engine's builder, with its journal of scripts.</param>
    /// <param name="engine">"Sqlite" or "Postgres".</param>
    /// <param name="last">The last script that is run; null for all (tests make older databases).</param>
    public static void Run(UpgradeEngineBuilder builder, string engine, string? last = null)
    {
        DatabaseUpgradeResult result = builder.WithScripts(Of(engine).Where(script => last is null || string.CompareOrdinal(script.Name, last) <= 0))
            .WithTransaction().WithVariablesDisabled().LogToNowhere().Build().PerformUpgrade();
        if (!result.Successful) throw result.Error;
    }

    /// <summary>Refuses a database that ran a script which is not known here.</summary>
    public static void CheckKnown(string engine, IEnumerable<string> ran, string says)
    {
        HashSet<string> known = [.. Of(engine).Select(script => script.Name)];
        if (ran.FirstOrDefault(name => !known.Contains(name)) is { } newer)
        {
            throw new StoreException(StoreFault.NewerVersion, $"{says} was written by a newer version of Coolproof ({newer}).", "Open it with that version, or a later one. It was left as it is.");
        }
    }

    private static string Text(Assembly assembly, string name)
    {
        using StreamReader reader = new(assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
    }
}
