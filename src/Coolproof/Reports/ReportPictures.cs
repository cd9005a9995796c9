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
    /// <param name="report">The report.</param>
    /// <param name="widthPx">Width, px.</param>
    /// <param name="id">What its ids begin with: no two pictures of the page have the same.</param>
    /// <param name="title">The finding, for who can't see it; null: the picture's own.</param>
    public static PictureStyle Style(Report report, int widthPx, string id, string? title = null) => new(widthPx, Units: report.Subject.Units, Title: title, Looks: report.Subject.Looks, Id: id);
}
