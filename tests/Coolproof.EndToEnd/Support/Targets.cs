using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Support;

/// <summary>What is to be tapped on a page is large enough for a thumb in a glove.</summary>
static class Targets
{
    /// <summary>Buttons, fields, choices, summaries and links that stand alone and are less than 44 px high or wide (WCAG 2.2, 2.5.5; links within a sentence are left out there too).</summary>
    public static Task<string[]> TooSmallAsync(IPage page) => page.EvaluateAsync<string[]>("""
        () => [...document.querySelectorAll('main button, main a.button, main summary, main select, main textarea, main input:not([type=hidden])')]
            .filter(one => one.checkVisibility({ visibilityProperty: true, opacityProperty: false }))
            .map(one => [one, (one.matches('input[type=checkbox], input[type=radio]') ? one.closest('label') ?? one : one).getBoundingClientRect()])
            .filter(([, box]) => box.width > 0 && (box.height < 44 || box.width < 44))
            .map(([one, box]) => `${one.tagName.toLowerCase()} “${(one.textContent.trim() || one.name || one.id).slice(0, 40)}”: ${Math.round(box.width)} × ${Math.round(box.height)}`)
        """);
}
