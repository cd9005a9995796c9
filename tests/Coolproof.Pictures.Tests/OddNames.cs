namespace Coolproof.Pictures.Tests;

/// <summary>Names that a person may well type, or paste.</summary>
internal static class OddNames
{
    public const string Markup = "Fan <b>&\" on 'top' ]]>";
    public const string Long = "The clamp with the twenty-five millimetre fan that was printed in two halves and glued together after the second evening because the first one had warped";
    public const string Unbroken = "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft";
    public const string Unicode = "Lüfter Ωμέγα вентилятор 冷却ファン 🌀";
    public const string Control = "Duct\u0001\nwith\ttab \uD800";

    public static readonly string[] All = [Markup, Long, Unbroken, Unicode, Control];
}
