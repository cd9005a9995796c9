using System.Net;
using System.Text;
using Coolproof.Photos;
using SkiaSharp;

namespace Coolproof.Tests.Serving;

/// <summary>Photos are known by their content, kept without what they tell of place and time, and shown the right way up.</summary>
public class PhotosTests
{
    static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(SKEncodedImageFormat.Jpeg, "image/jpeg")]
    [InlineData(SKEncodedImageFormat.Png, "image/png")]
    [InlineData(SKEncodedImageFormat.Webp, "image/webp")]
    public async Task A_photo_is_kept_under_its_id_by_its_content_whatever_it_is_called(SKEncodedImageFormat format, string type)
    {
        await using var pit = await PitServer.StartAsync();
        var id = Guid.CreateVersion7();
        for (var time = 0; time < 2; time++) // the same again changes nothing
        {
            using var put = await PutAsync(pit, id, Picture(60, 40, format), "text/html");
            Assert.Equal(HttpStatusCode.OK, put.StatusCode);
            var said = await PitServer.JsonAsync(put);
            Assert.Equal((type, 60, 40), ((string)said["type"]!, (int)said["width"]!, (int)said["height"]!));
        }
        using var got = await pit.Paired.GetAsync($"/api/photos/{id}", Cancel);
        Assert.Equal(type, got.Content.Headers.ContentType!.MediaType);
        Assert.Contains("sandbox", got.Headers.GetValues("Content-Security-Policy").Single());
        using var drawn = SKBitmap.Decode(await got.Content.ReadAsByteArrayAsync(Cancel));
        Assert.Equal((60, 40), (drawn.Width, drawn.Height));
    }

    [Fact]
    public async Task Other_bytes_under_the_same_id_are_refused()
    {
        await using var pit = await PitServer.StartAsync();
        var id = Guid.CreateVersion7();
        using var first = await PutAsync(pit, id, Picture(60, 40));
        using var second = await PutAsync(pit, id, Picture(61, 40));
        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
    }

    [Fact]
    public void A_JPEG_loses_place_comment_and_what_hangs_behind_it_and_keeps_its_picture_and_which_way_is_up()
    {
        var plain = Picture(60, 40);
        var told = Told(plain, orientation: 6);
        Assert.Contains("51.5074 N", Encoding.Latin1.GetString(told));
        var clean = CleanPhoto.Of(told, out _)!;
        var text = Encoding.Latin1.GetString(clean.Bytes);
        foreach (var secret in new[] { "51.5074 N", "my house", "a film behind", "http://ns.adobe.com" }) Assert.DoesNotContain(secret, text);
        Assert.Equal((40, 60), (clean.Width, clean.Height)); // a quarter turn
        using var before = SKBitmap.Decode(plain);
        using var codec = SKCodec.Create(SKData.CreateCopy(clean.Bytes));
        Assert.Equal(SKEncodedOrigin.RightTop, codec.EncodedOrigin);
        using var after = SKBitmap.Decode(codec, codec.Info);
        Assert.True(before.Pixels.SequenceEqual(after.Pixels)); // not coded anew
    }

    [Fact]
    public void A_PNG_loses_its_texts()
    {
        var plain = Picture(60, 40, SKEncodedImageFormat.Png);
        byte[] text = [0, 0, 0, 12, .. "tEXt"u8, .. "Author\0Smith"u8, 0, 0, 0, 0];
        byte[] told = [.. plain[..33], .. text, .. plain[33..]]; // behind IHDR
        Assert.Equal(plain, CleanPhoto.Of(told, out _)!.Bytes);
    }

    [Theory]
    [InlineData("<svg xmlns=\"http://www.w3.org/2000/svg\"><script>alert(1)</script></svg>")]
    [InlineData("<html>")]
    [InlineData("GIF89a")]
    [InlineData("")]
    public async Task What_is_no_photo_is_refused_whatever_it_says_it_is(string text)
    {
        await using var pit = await PitServer.StartAsync();
        using var put = await PutAsync(pit, Guid.CreateVersion7(), Encoding.UTF8.GetBytes(text), "image/jpeg");
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, put.StatusCode);
        Assert.NotEmpty((string)(await PitServer.JsonAsync(put))["detail"]!);
    }

    [Fact]
    public void A_photo_that_is_cut_off_anywhere_is_refused_and_never_fails()
    {
        foreach (var format in new[] { SKEncodedImageFormat.Jpeg, SKEncodedImageFormat.Png, SKEncodedImageFormat.Webp })
        {
            var whole = Picture(60, 40, format);
            for (var length = 0; length < whole.Length; length += 7) Assert.Null(CleanPhoto.Of(whole.AsSpan(0, length), out _));
        }
    }

    [Fact]
    public void Bytes_changed_by_chance_never_fail()
    {
        var chance = new Random(7);
        foreach (var format in new[] { SKEncodedImageFormat.Jpeg, SKEncodedImageFormat.Png, SKEncodedImageFormat.Webp })
        {
            var whole = Told(Picture(20, 20, format), 3, format);
            for (var time = 0; time < 300; time++)
            {
                var changed = (byte[])whole.Clone();
                for (var i = 0; i < 3; i++) changed[chance.Next(changed.Length)] = (byte)chance.Next(256);
                CleanPhoto.Of(changed, out _);
            }
        }
    }

    [Fact]
    public void A_picture_of_endless_pixels_in_few_bytes_is_refused_before_it_is_unpacked()
    {
        var bomb = Picture(8, 8, SKEncodedImageFormat.Png);
        System.Buffers.Binary.BinaryPrimitives.WriteInt32BigEndian(bomb.AsSpan(16), 30_000); // width and height of IHDR, with its checksum
        System.Buffers.Binary.BinaryPrimitives.WriteInt32BigEndian(bomb.AsSpan(20), 30_000);
        System.Buffers.Binary.BinaryPrimitives.WriteUInt32BigEndian(bomb.AsSpan(29), Crc(bomb.AsSpan(12, 17)));
        Assert.Null(CleanPhoto.Of(bomb, out var wrong));
        Assert.Contains("900 million pixels", wrong.Reason);
    }

    [Fact]
    public async Task A_photo_of_more_than_8_MB_is_refused()
    {
        await using var pit = await PitServer.StartAsync();
        using var put = await PutAsync(pit, Guid.CreateVersion7(), new byte[CleanPhoto.LargestBytes + 1]);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, put.StatusCode);
    }

    [Theory]
    [InlineData(1), InlineData(2), InlineData(3), InlineData(4), InlineData(5), InlineData(6), InlineData(7), InlineData(8)]
    public async Task A_small_one_is_made_the_right_way_up(int orientation)
    {
        await using var pit = await PitServer.StartAsync();
        var id = Guid.CreateVersion7();
        // As stored, red lies in the corner that Exif (tag 0112) says belongs at the top left.
        using (await PutAsync(pit, id, Told(Marked(640, 480, orientation), orientation))) { }
        using var got = await pit.Paired.GetAsync($"/api/photos/{id}?width=160", Cancel);
        using var small = SKBitmap.Decode(await got.Content.ReadAsByteArrayAsync(Cancel));
        Assert.Equal(orientation < 5 ? (160, 120) : (160, 213), (small.Width, small.Height));
        Assert.True(IsRed(small.GetPixel(15, 15)));
        Assert.False(IsRed(small.GetPixel(small.Width - 15, 15)) || IsRed(small.GetPixel(15, small.Height - 15)) || IsRed(small.GetPixel(small.Width - 15, small.Height - 15)));
    }

    [Fact]
    public async Task A_photo_that_has_not_come_yet_and_a_width_that_is_not_made_are_said()
    {
        await using var pit = await PitServer.StartAsync();
        Assert.Equal(HttpStatusCode.NotFound, (await pit.Paired.GetAsync($"/api/photos/{Guid.CreateVersion7()}", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await pit.Paired.GetAsync($"/api/photos/{Guid.CreateVersion7()}?width=9999", Cancel)).StatusCode);
    }

    static bool IsRed(SKColor colour) => colour.Red > 180 && colour.Green < 80;

    static async Task<HttpResponseMessage> PutAsync(PitServer pit, Guid id, byte[] bytes, string type = "image/jpeg")
    {
        using var content = new ByteArrayContent(bytes);
        content.Headers.ContentType = new(type);
        return await pit.Paired.PutAsync($"/api/photos/{id}", content, Cancel);
    }

    static byte[] Picture(int width, int height, SKEncodedImageFormat format = SKEncodedImageFormat.Jpeg)
    {
        using var surface = SKSurface.Create(new SKImageInfo(width, height));
        surface.Canvas.Clear(SKColors.SteelBlue);
        using var paint = new SKPaint { Color = SKColors.Orange };
        surface.Canvas.DrawCircle(width / 2f, height / 2f, height / 4f, paint);
        using var image = surface.Snapshot();
        using var data = image.Encode(format, 90);
        return data.ToArray();
    }

    static byte[] Marked(int width, int height, int orientation)
    {
        // Where row 0 and column 0 of the stored picture belong, by Exif: 1 top left, 2 top right, 3 bottom right, 4 bottom left, 5 left top, 6 right top, 7 right bottom, 8 left bottom.
        var (right, bottom) = orientation switch { 1 or 5 => (false, false), 2 => (true, false), 3 or 7 => (true, true), 4 => (false, true), 6 => (false, true), _ => (true, false) };
        using var surface = SKSurface.Create(new SKImageInfo(width, height));
        surface.Canvas.Clear(SKColors.White);
        using var paint = new SKPaint { Color = SKColors.Red };
        surface.Canvas.DrawRect(right ? width - 160 : 0, bottom ? height - 160 : 0, 160, 160, paint);
        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Jpeg, 90);
        return data.ToArray();
    }

    /// <summary>A picture that tells what nobody asked: place, words, and a film behind it.</summary>
    static byte[] Told(byte[] picture, int orientation, SKEncodedImageFormat format = SKEncodedImageFormat.Jpeg)
    {
        if (format != SKEncodedImageFormat.Jpeg) return picture;
        byte[] tiff = [.. "II*\0"u8, 8, 0, 0, 0, 1, 0, 0x12, 0x01, 3, 0, 1, 0, 0, 0, (byte)orientation, 0, 0, 0, 0, 0, 0, 0, .. "GPS 51.5074 N"u8];
        return [0xFF, 0xD8, .. Segment(0xE1, [.. "Exif\0\0"u8, .. tiff]), .. Segment(0xE1, [.. "http://ns.adobe.com/xap/1.0/\0<x/>"u8]), .. Segment(0xFE, [.. "my house"u8]), .. picture[2..], .. "a film behind"u8];
    }

    static byte[] Segment(byte marker, byte[] content) => [0xFF, marker, (byte)((content.Length + 2) >> 8), (byte)(content.Length + 2), .. content];

    // The checksum of PNG (W3C PNG, annex D).
    static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var crc = 0xFFFFFFFF;
        foreach (var one in bytes)
        {
            crc ^= one;
            for (var bit = 0; bit < 8; bit++) crc = (crc & 1) != 0 ? (crc >> 1) ^ 0xEDB88320 : crc >> 1;
        }
        return ~crc;
    }
}
