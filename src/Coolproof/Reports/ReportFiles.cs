using System.Text;
using Coolproof.Pictures;

namespace Coolproof.Reports;

/// <summary>The files of a report by name.</summary>
internal static class ReportFiles
{
    /// <summary>The page.</summary>
    public const string Page = "report.html";

    /// <summary>The picture to post, square.</summary>
    public const string Square = "picture-1080.png";

    /// <summary>The picture for a video's frame.</summary>
    public const string Wide = "picture-1920.png";

    /// <summary>The square picture as SVG.</summary>
    public const string Drawing = "picture.svg";

    /// <summary>The data in one file, as pages hand it out.</summary>
    public const string Data = "data.zip";

    /// <summary>The folder of the data, as the command line writes it.</summary>
    public const string DataFolder = "data";

    /// <summary>The page printed on a paper.</summary>
    public static string Pdf(Paper paper) => $"report-{paper.Name}.pdf";

    /// <summary>All files but the PDFs, by their path within the report's folder.</summary>
    public static async Task<IReadOnlyList<(string Path, byte[] Bytes)>> OfAsync(Report report)
    {
        var square = ReportPictures.Post(report, PostPicture.SquarePx);
        return
        [
            (Page, Encoding.UTF8.GetBytes(await ReportHtml.OfAsync(report))),
            (Square, square.Png()), (Wide, ReportPictures.Post(report, PostPicture.WidePx).Png()), (Drawing, Encoding.UTF8.GetBytes(square.Svg())),
            .. ReportData.Files(report).Select(file => ($"{DataFolder}/{file.Name}", file.Bytes)),
        ];
    }
}
