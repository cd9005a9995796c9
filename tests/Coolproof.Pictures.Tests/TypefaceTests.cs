using System.Diagnostics;
using Coolproof.Pictures.Drawing;
using SkiaSharp;

namespace Coolproof.Pictures.Tests;

public sealed class TypefaceTests
{
    private const string OnBareMachine = "COOLPROOF_TEST_BARE_FONTS";

    [Fact]
    public void A_missing_typeface_is_refused_with_a_clear_message()
    {
        var error = Assert.Throws<PictureException>(() => Typesetter.Load(_ => null));
        Assert.Contains("Roboto-Regular.ttf is missing or damaged", error.Message);
        Assert.Contains("Your readings are safe", error.Message);
    }

    [Fact]
    public void A_missing_bold_is_refused_too() => Assert.Contains("Roboto-Bold.ttf", Assert.Throws<PictureException>(
        () => Typesetter.Load(name => name.Contains("Bold") ? null : typeof(Typesetter).Assembly.GetManifestResourceStream(name))).Message);

    [Fact]
    public void A_damaged_typeface_is_refused() =>
        Assert.Throws<PictureException>(() => Typesetter.Load(_ => new MemoryStream(new byte[5000])));

    [Fact]
    public void The_licence_is_shipped_beside_the_typeface() =>
        Assert.Contains("Apache License", File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "licences", "Roboto-LICENSE.txt")));

    /// <summary>The same test program, in a mount namespace in which every folder of typefaces is empty.</summary>
    [Fact]
    public void Words_are_there_on_a_machine_without_typefaces()
    {
        if (Environment.GetEnvironmentVariable(OnBareMachine) is not null)
        {
            Assert.Null(SKFontManager.Default.MatchCharacter('A'));
            new PngTests().Ink_lies_where_every_word_is_expected("verdict-six");
            return;
        }

        const string hide = "for d in /usr/share/fonts /usr/local/share/fonts; do [ -d $d ] && mount -t tmpfs none $d; done; exec \"$@\"";
        if (!OperatingSystem.IsLinux() || Run("unshare", ["-m", "sh", "-c", hide, "sh", "true"]).Code != 0)
        {
            Assert.Skip("This machine lets nobody hide its folders of typefaces.");
        }

        string tests = typeof(TypefaceTests).Assembly.Location;
        (int code, string said) = Run("unshare",
            ["-m", "sh", "-c", hide, "sh", Environment.ProcessPath!, .. Environment.ProcessPath!.EndsWith("dotnet", StringComparison.Ordinal) ? [tests] : Array.Empty<string>(),
                "--filter-method", $"*{nameof(Words_are_there_on_a_machine_without_typefaces)}"], (OnBareMachine, "1"));
        Assert.True(code == 0 && said.Contains("succeeded: 1"), said);
    }

    private static (int Code, string Said) Run(string program, string[] arguments, (string Name, string Value)? variable = null)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        if (variable is { } v)
        {
            start.Environment[v.Name] = v.Value;
        }

        try
        {
            using Process process = Process.Start(start)!;
            Task<string> errors = process.StandardError.ReadToEndAsync();
            string said = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return (process.ExitCode, said + errors.Result);
        }
        catch (System.ComponentModel.Win32Exception missing)
        {
            return (127, missing.Message);
        }
    }
}
