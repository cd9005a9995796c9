using Coolproof.Pictures;

namespace Coolproof.Reports;

/// <summary>The pictures of a report.</summary>
internal static class ReportPictures
{
    /// <summary>The picture to post.</summary>
    /// <param name="report">The report.</param>
    /// <param name="widthPx">One of the widths of <see cref="PostPicture"/>.</param>
    public static Picture Post(Report report, int widthPx) => PostPicture.Of(
        report.Verdict, $"{report.When}{(report.Subject.MadeUp ? ", all made up" : "")}. Drawn by Coolproof {Report.Version}.",
        new PictureStyle(widthPx, Units: report.Subject.Units, Title: report.Answer, Looks: report.Subject.Looks, Id: "post"));

    /// <summary>Style of a picture within the page.</summary>
    public static PictureStyle Style(Report report, int widthPx, string id) => new(widthPx, Units: report.Subject.Units, Title: id.StartsWith("ranking", StringComparison.Ordinal) ? report.Answer : null, Looks: report.Subject.Looks, Id: id);
}
