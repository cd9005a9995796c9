namespace Coolproof.Sampling.Classical;

/// <summary>Response explained by factors and covariates: sequential analysis of variance, adjusted differences between levels, slopes.</summary>
public sealed class AnalysisOfCovariance
{
    readonly ModelDesign _design;

    AnalysisOfCovariance(ModelDesign design, LinearFit model, AnovaTable table) => (_design, Model, Table) = (design, model, table);

    /// <summary>The least-squares fit; its first coefficient is the intercept, the others follow the terms.</summary>
    public LinearFit Model { get; }

    /// <summary>Sum of squares of each term after those before it.</summary>
    public AnovaTable Table { get; }

    /// <summary>Fits the terms in the order given, after an intercept.</summary>
    /// <param name="response">n readings.</param>
    /// <param name="terms">Fixed terms; a later one that adds nothing to those before it gets zero degrees of freedom.</param>
    /// <exception cref="ArgumentException">Lengths disagree or a number is not finite.</exception>
    public static AnalysisOfCovariance Fit(ReadOnlySpan<double> response, IReadOnlyList<DesignTerm> terms)
    {
        var design = new ModelDesign(terms, response.Length);
        var model = LinearLeastSquares.Fit(design.Matrix, response);
        var (squares, df) = (new double[terms.Count], new int[terms.Count]);
        for (var k = 0; k < model.Kept.Count; k++)
        {
            var term = design.TermOf(model.Kept[k]);
            if (term < 0) continue;
            squares[term] += model.Effects[k] * model.Effects[k];
            df[term]++;
        }
        var lines = terms.Select((term, t) =>
            AnovaTable.Line(term.Name, df[t], squares[t], model.DegreesOfFreedom, model.ResidualSumOfSquares)).ToArray();
        return new(design, model, new(lines, model.DegreesOfFreedom, model.ResidualSumOfSquares));
    }

    /// <summary>Adjusted difference "level minus reference" between two levels of a factor.</summary>
    /// <exception cref="ArgumentException">No such term or level.</exception>
    public ContrastEstimate Difference(string factor, string level, string reference) =>
        Model.Contrast(_design.Difference(factor, level, reference));

    /// <summary>Slope of a covariate.</summary>
    /// <exception cref="ArgumentException">No such term.</exception>
    public ContrastEstimate Slope(string covariate) => Model.Contrast(_design.Slope(covariate));
}
