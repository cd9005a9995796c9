using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Support;

/// <summary>How long a page's answer takes to follow a slider.</summary>
static class SliderTimes
{
    /// <summary>Longest time from a move of a slider to the answer on the page, ms.</summary>
    const double Soon = 100;

    /// <summary>The answer follows within a tenth of a second. Where other tests share the machine the quicker ones tell what the work takes: the quarter that is quickest counts.</summary>
    /// <param name="took">Milliseconds from move to answer, quickest first.</param>
    public static void AreSoon(double[] took) => Assert.True(took[took.Length / 4] < Soon, $"ms: {string.Join(", ", took)}");

    /// <summary>Moves a slider from value to value, each time until the answer for just that stands on the page.</summary>
    /// <param name="page">The page.</param>
    /// <param name="form">The form's name: its id without "-form".</param>
    /// <param name="slider">The slider's name.</param>
    /// <param name="values">Where it is put.</param>
    /// <param name="warmUp">Moves that are not told: the first answers warm up what makes them.</param>
    /// <returns>Milliseconds from move to answer, quickest first.</returns>
    public static async Task<double[]> OfAsync(IPage page, string form, string slider, int[] values, int warmUp)
    {
        var took = await page.EvaluateAsync<double[]>(Timed, new { form, slider, values });
        TestContext.Current.TestOutputHelper!.WriteLine($"{form}, {slider}: ms from move to answer: {string.Join(", ", took.Select(ms => $"{ms:0}"))}");
        return [.. took.Skip(warmUp).Order()];
    }

    const string Timed = """
        async ({ form: name, slider: field, values }) => {
            const form = document.getElementById(`${name}-form`), slider = form.querySelector(`[name=${field}]`), took = [];
            for (const value of values) {
                const from = performance.now();
                slider.value = value;
                slider.dispatchEvent(new Event('input', { bubbles: true }));
                await new Promise((done, late) => {
                    const limit = setTimeout(() => late(new Error(`no answer for ${value}`)), 5000);
                    const look = () => new RegExp(`[ &]${field}=${value}(&|$)`).test(form.dataset.answered ?? '') ? (clearTimeout(limit), done()) : setTimeout(look, 1);
                    look();
                });
                took.push(performance.now() - from);
            }
            return took;
        }
        """;
}
