using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Coolproof.Web;

/// <summary>A certificate from a file: PKCS #12 (.pfx, .p12), or PEM with its private key in the same file.</summary>
internal static class GivenCertificate
{
    /// <summary>Reads it.</summary>
    /// <exception cref="CryptographicException">It can't be used; the message says why.</exception>
    public static X509Certificate2 Of(string file, string? password)
    {
        try
        {
            var certificate = Path.GetExtension(file).ToLowerInvariant() is ".pfx" or ".p12"
                ? X509CertificateLoader.LoadPkcs12FromFile(file, password)
                : Pem(file, password);
            return certificate.HasPrivateKey ? certificate : throw new CryptographicException("it holds no private key");
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException or CryptographicException or ArgumentException)
        {
            throw new CryptographicException($"The certificate {file} can't be used: {cause.Message}", cause);
        }
    }

    static X509Certificate2 Pem(string file, string? password)
    {
        using var read = password is { Length: > 0 } ? X509Certificate2.CreateFromEncryptedPemFile(file, password) : X509Certificate2.CreateFromPemFile(file);
        return X509CertificateLoader.LoadPkcs12(read.Export(X509ContentType.Pkcs12), null); // servers want the key kept together with it
    }
}
