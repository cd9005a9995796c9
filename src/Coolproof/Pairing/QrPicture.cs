using System.Net;
using QRCoder;

namespace Coolproof.Pairing;

/// <summary>QR codes for pages.</summary>
internal static class QrPicture
{
    const int PixelsPerModule = 6;

    /// <summary>A QR code (ISO/IEC 18004), dark on white whatever the theme, since many cameras read no other.</summary>
    /// <param name="text">What it says.</param>
    /// <param name="title">What it is, for who doesn't see it.</param>
    public static string Svg(string text, string title)
    {
        using var data = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        using var code = new SvgQRCode(data);
        var svg = code.GetGraphic(PixelsPerModule, "#000000", "#ffffff", drawQuietZones: true, SvgQRCode.SizingMode.ViewBoxAttribute);
        var from = svg.IndexOf("<svg", StringComparison.Ordinal);
        return $"<svg role=\"img\" aria-label=\"{WebUtility.HtmlEncode(title)}\"{svg[(from + 4)..]}";
    }
}
