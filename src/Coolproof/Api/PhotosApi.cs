using Coolproof.Photos;
using Coolproof.Store;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace Coolproof.Api;

/// <summary>Photos over HTTP: kept apart from entries, which name them.</summary>
internal static class PhotosApi
{
    // Unpacking takes memory: a few at a time.
    static readonly SemaphoreSlim Unpacking = new(2, 2);

    /// <summary>PUT and GET /api/photos/{id}.</summary>
    public static void MapPhotos(this IEndpointRouteBuilder routes)
    {
        routes.MapPut("/api/photos/{id:guid}", PutAsync).WithTags("Photos").Produces<PhotoAnswer>().Produces(409).Produces(413).Produces(415)
            .AddOpenApiOperationTransformer(TakesPhoto)
            .WithSummary("Keeps a photo (JPEG, PNG or WebP, 8 MB at most, by its content) without what it says of place, time and camera. The same again changes nothing.");
        routes.MapGet("/api/photos/{id:guid}", GetAsync).WithTags("Photos").Produces(200, contentType: "image/jpeg").Produces(404)
            .WithSummary("A photo; with ?width=160, 320, 640 or 1280 made small, as a JPEG.");
    }

    // Only described: what is said of the content decides nothing.
    static Task TakesPhoto(OpenApiOperation operation, OpenApiOperationTransformerContext context, CancellationToken cancel)
    {
        var content = new[] { "image/jpeg", "image/png", "image/webp" }.ToDictionary(
            type => type, _ => new OpenApiMediaType { Schema = new OpenApiSchema { Type = JsonSchemaType.String, Format = "binary" } });
        operation.RequestBody = new OpenApiRequestBody { Required = true, Content = content };
        return Task.CompletedTask;
    }

    static async Task<IResult> PutAsync(Guid id, HttpContext context, JournalStore store, CancellationToken cancel)
    {
        if (await RequestBytes.ReadAsync(context.Request, CleanPhoto.LargestBytes, cancel) is not { } bytes)
            return Problems.Of(StatusCodes.Status413PayloadTooLarge, "A photo has at most 8 MB.", "Make it smaller (a JPEG of 12 million pixels has about 4 MB), and send it again.", "photo-too-large");
        await Unpacking.WaitAsync(cancel);
        CleanPhoto? photo;
        (string Reason, string Remedy) wrong;
        try
        {
            photo = CleanPhoto.Of(bytes.Span, out wrong);
        }
        finally
        {
            Unpacking.Release();
        }
        if (photo is null) return Problems.Of(StatusCodes.Status415UnsupportedMediaType, wrong.Reason, wrong.Remedy, "photo-not-understood");
        await store.PutPhotoAsync(id, photo.Kind.MediaType(), photo.Bytes, cancel);
        return Results.Json(new PhotoAnswer(id, photo.Kind.MediaType(), photo.Bytes.Length, photo.Width, photo.Height), PhotoJson.Default.PhotoAnswer);
    }

    static async Task<IResult> GetAsync(Guid id, HttpContext context, JournalStore store, Thumbnails thumbnails, CancellationToken cancel, int? width = null)
    {
        if (width is { } asked && !Thumbnails.Widths.Contains(asked))
            return Problems.Of(StatusCodes.Status400BadRequest, $"Photos are made {string.Join(", ", Thumbnails.Widths)} pixels wide.", "Ask for one of these widths, or without one for the whole photo.");
        if (await store.GetPhotoAsync(id, cancel) is not { } photo)
            return Problems.Of(StatusCodes.Status404NotFound, "This photo is not here (yet): it may be on the phone that took it.", "Connect that phone; it sends the photo by itself.");
        var (bytes, type) = (photo.Bytes, photo.MediaType);
        if (width is { } wide)
        {
            await Unpacking.WaitAsync(cancel);
            try
            {
                if (thumbnails.Of(id, wide, photo.Bytes) is { } small) (bytes, type) = (small, "image/jpeg");
            }
            finally
            {
                Unpacking.Release();
            }
        }
        // A UUID's bytes never change.
        context.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        context.Response.Headers["Content-Security-Policy"] = "default-src 'none'; sandbox";
        return Results.Bytes(bytes, type);
    }
}

/// <summary>A photo that was kept: what the entry "photo" says of it.</summary>
internal sealed record PhotoAnswer(Guid Id, string Type, int Bytes, int Width, int Height);

/// <summary>How it is written.</summary>
[System.Text.Json.Serialization.JsonSourceGenerationOptions(PropertyNamingPolicy = System.Text.Json.Serialization.JsonKnownNamingPolicy.CamelCase)]
[System.Text.Json.Serialization.JsonSerializable(typeof(PhotoAnswer))]
internal sealed partial class PhotoJson : System.Text.Json.Serialization.JsonSerializerContext;
