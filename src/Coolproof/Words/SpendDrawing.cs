using Coolproof.Advice.Spending;
using Coolproof.Pictures;

namespace Coolproof.Words;

/// <summary>The best use of a budget as a picture, the same on the page and by `coolproof spend --picture`.</summary>
internal static class SpendDrawing
{
    /// <summary>Draws the steps that are told.</summary>
    public static Picture Of(SpendAnswer answer, CostWords costs, PictureStyle style) => SpendPicture.Of(
        [.. SpendPage.Shown(answer).Select(step => Stair(step.Choice, costs))], [.. answer.Front.Select(point => ((double)point.Money, point.CanCoolerK))],
        answer.Sheet.Money is { } money ? ((double)money, $"budget {costs.Money((double)money)}") : null, answer.BeyondMoney is { } next ? Stair(next.Choice, costs) : null,
        SpendPage.Sentence(answer, costs, new DegreeWords(style.Units)), style);

    static SpendStair Stair(SpendChoice choice, CostWords costs) =>
        new(SpendPage.Parts(choice), (double)choice.Money, $"{costs.Money((double)choice.Money)}, {costs.Grams(choice.CountedG)} counted", choice.CanCoolerK, choice.Basis == SpendBasis.Driven);
}
