namespace Coolproof.Sampling.Classical;

/// <summary>
/// Treatments compared in a linear mixed model: fixed effects of treatments and covariates, random effects of the groups (days, packs) that
/// readings share. Answers whatever the layout: one treatment, one reading each, no scatter.
/// </summary>
public sealed class TreatmentComparison
{
    readonly ModelDesign _design;
    readonly string _treatment;

    TreatmentComparison(ModelDesign design, string treatment, MixedModelFit model, IReadOnlyList<string> leftOut) =>
        (_design, _treatment, Model, LeftOut) = (design, treatment, model, leftOut);

    /// <summary>The mixed model; its first coefficient is the intercept.</summary>
    public MixedModelFit Model { get; }

    /// <summary>Random terms left out because every reading has a level of its own there, which is what the error already says.</summary>
    public IReadOnlyList<string> LeftOut { get; }

    /// <summary>Fits by restricted maximum likelihood.</summary>
    /// <param name="response">n readings, at least one.</param>
    /// <param name="treatment">The factor whose levels are compared.</param>
    /// <param name="others">Other fixed terms.</param>
    /// <param name="groups">Random terms.</param>
    /// <exception cref="ArgumentException">Lengths disagree, no readings, or a number is not finite.</exception>
    public static TreatmentComparison Fit(ReadOnlySpan<double> response, DesignTerm treatment, IReadOnlyList<DesignTerm> others,
        IReadOnlyList<RandomTerm> groups)
    {
        var design = new ModelDesign([treatment, .. others], response.Length);
        var readings = response.Length;
        var usable = groups.Where(term => term.Levels.Count < readings).ToArray();
        var model = MixedModel.Fit(design.Matrix, response, usable);
        return new(design, treatment.Name, model, [.. groups.Except(usable).Select(term => term.Name)]);
    }

    /// <summary>Difference "treatment minus reference"; its caveat says why a standard error is missing, if it is.</summary>
    /// <exception cref="ArgumentException">No such treatment.</exception>
    public ContrastEstimate Difference(string treatment, string reference) =>
        Model.Contrast(_design.Difference(_treatment, treatment, reference));
}
