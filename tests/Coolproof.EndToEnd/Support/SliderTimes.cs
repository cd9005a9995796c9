using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Support;

/// <summary>How long a page's answer takes to follow a slider: told, not judged, since other work on the machine lengthens it. bench/sliders judges it.</summary>
static class SliderTimes
{
    /// <summary>Trait of the tests that tell such times.</summary>
    public const string Trait = "Times", Sliders = "sliders";

    /// <summary>Moves a slider from value to value, each time until the answer for just that stands on the page, and tells how long that took.</summary>
    /// <param name="page">The page.</param>
    /// <param name="form">The form's name: its id without "-form".</param>
    /// <param name="slider">The slider's name.</param>
    /// <param name="values">Where it is put.</param>
    /// <param name="warmUp">Moves that are not told: the first answers warm up what makes them.</param>
    public static async Task TellAsync(IPage page, string form, string slider, int[] values, int warmUp)
    {
        var took = await page.EvaluateAsync<double[]>(Timed, new { form, slider, values });
        double[] told = [.. took.Skip(warmUp).Order()];
        TestContext.Current.TestOutputHelper!.WriteLine($"slider {form} {slider} {page.ViewportSize!.Width} px: {told[told.Length / 2]:0} ms from move to answer (median of {told.Length}; {told[0]:0} to {told[^1]:0})");
    }

    const string Timed = """
        async ({ form: name, slider: field, values }) => {
            const form = document.getElementById(`${name}-form`), slider = form.querySelector(`[name=${field}]`), took = [];
            for (const value of values) {
                const from = performance.now();
                slider.value = value;
                slider.dispatchEvent(new Event('input', { bubbles: true }));
                await new Promise((done, late) => {
                    const limit = setTimeout(() => late(new Error(`no answer for ${value}`)), 20000);
                    const look = () => new RegExp(`[ &]${field}=${value}(&|$)`).test(form.dataset.answered ?? '') ? (clearTimeout(limit), done()) : setTimeout(look, 1);
                    look();
                });
                took.push(performance.now() - from);
            }
            return took;
        }
        """;
}
