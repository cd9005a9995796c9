using System.Text;
using Coolproof.Board;
using Coolproof.Evidence;
using Coolproof.Pages;
using Coolproof.Photos;
using Coolproof.Pictures;
using Coolproof.Store;
using Coolproof.Web;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;

namespace Coolproof.Reports;

/// <summary>The report of a day or a question: GET /report/{id} shows its page, GET /report/{id}/{file} hands out one of its files.</summary>
internal static class ReportRoutes
{
    // As the page says it itself where it is opened from a file.
    const string Policy = "default-src 'none'; img-src data:; style-src 'unsafe-inline'; frame-ancestors 'none'";

    /// <summary>Maps them.</summary>
    public static void MapReports(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/report/{id:guid}", (Guid id, Asking asking, CancellationToken cancel) => asking.AnswerAsync(id, null, cancel)).ExcludeFromDescription();
        routes.MapGet("/report/{id:guid}/{file}", (Guid id, string file, Asking asking, CancellationToken cancel) => asking.AnswerAsync(id, file, cancel)).ExcludeFromDescription();
    }

    /// <summary>One request for a report.</summary>
    internal sealed class Asking(NotebookBoard board, VerdictBoard verdicts, ReportBoard reports, JournalStore store, Thumbnails thumbnails, ThisDevice device, TimeProvider clock, IHttpContextAccessor http)
    {
        /// <summary>The page, a file of it, or why there is none.</summary>
        public async Task<IResult> AnswerAsync(Guid id, string? file, CancellationToken cancel)
        {
            var notebook = board.Notebook;
            // Where the verdict is hidden, there is none or it can't be given, its own page says so.
            if (AskedAbout.Of(notebook, id) is { } about && device.Hides(about)) return Results.LocalRedirect($"/verdict/{id}");
            if (NotebookSubject.Of(notebook, id, device.Look.Temperature, device.Costs) is not { } subject) return Results.LocalRedirect($"/verdict/{id}");
            subject = subject with { EarlierFirst = device.EarlierFirst };
            var judging = await reports.OfAsync(subject, NotebookSubject.Kept(subject, verdicts.Of(id)), cancel);
            if (judging.Whole is not Judged { Verdict: var verdict } whole) return Results.LocalRedirect($"/verdict/{id}");
            if (file is null || file.StartsWith("report", StringComparison.Ordinal))
                subject = subject with { Photos = await NotebookSubject.PhotosAsync(subject, notebook, store, thumbnails, cancel) };
            return await FileAsync(new Report(subject, verdict, judging.Alone, LocalDate.FromDateTime(clock.GetLocalNow().DateTime)) { Earlier = whole.Earlier, Wider = judging.Wider, NotTogether = judging.NotTogether }, file, cancel);
        }

        async Task<IResult> FileAsync(Report report, string? file, CancellationToken cancel)
        {
            switch (file)
            {
                case null:
                    http.HttpContext!.Response.Headers["Content-Security-Policy"] = Policy;
                    return Results.Content(await ReportHtml.OfAsync(report), "text/html; charset=utf-8");
                case ReportFiles.Page:
                    return Results.File(Encoding.UTF8.GetBytes(await ReportHtml.OfAsync(report)), "text/html; charset=utf-8", file);
                case ReportFiles.Square:
                    return Results.File(ReportPictures.Post(report, PostPicture.SquarePx).Png(), "image/png", file);
                case ReportFiles.Wide:
                    return Results.File(ReportPictures.Post(report, PostPicture.WidePx).Png(), "image/png", file);
                case ReportFiles.Drawing:
                    return Results.File(Encoding.UTF8.GetBytes(ReportPictures.Post(report, PostPicture.SquarePx).Svg()), "image/svg+xml", file);
                case ReportFiles.Data:
                    return Results.File(ReportData.Zip(report), "application/zip", file);
                default:
                    return Paper.All.FirstOrDefault(one => ReportFiles.Pdf(one) == file) is { } paper ? await PrintAsync(report, paper, cancel) : Results.NotFound();
            }
        }

        static async Task<IResult> PrintAsync(Report report, Paper paper, CancellationToken cancel)
        {
            try
            {
                return Results.File(await PdfPrinter.PrintAsync(await ReportHtml.OfAsync(report, paper), Environment.GetEnvironmentVariable, cancel), "application/pdf", ReportFiles.Pdf(paper));
            }
            catch (PdfException cause)
            {
                var said = new Dictionary<string, object?> { ["Title"] = "There is no PDF", ["Reason"] = cause.Reason, ["Remedy"] = cause.Remedy };
                return new RazorComponentResult<TroublePage>(said) { StatusCode = StatusCodes.Status503ServiceUnavailable };
            }
        }
    }
}
