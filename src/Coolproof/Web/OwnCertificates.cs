using System.Formats.Asn1;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Coolproof.Web;

/// <summary>
/// Certificates that this machine makes for itself and keeps: an authority, which a phone can be told to trust once, and the server's own, made anew when addresses change
/// or it runs out.
/// </summary>
/// <remarks>
/// The authority's own rules (name constraints, RFC 5280 section 4.2.1.10) let it speak for private networks and .local names only: whoever stole it could not stand in for a
/// bank.
/// </remarks>
internal static class OwnCertificates
{
    static readonly TimeSpan AuthorityLives = TimeSpan.FromDays(3650);

    // Phones refuse a server's certificate that runs for longer than 398 days (or 825 under an authority of their owner's own).
    static readonly TimeSpan ServerLives = TimeSpan.FromDays(396);
    static readonly TimeSpan Renew = TimeSpan.FromDays(30);

    /// <summary>The certificates, made where there are none that fit.</summary>
    /// <param name="folder">Where they are kept.</param>
    /// <param name="addresses">Addresses that the server is to be reached at.</param>
    /// <param name="names">Names that the server is to be reached at; only .local ones and localhost are taken.</param>
    /// <param name="now">The clock.</param>
    public static (X509Certificate2 Authority, X509Certificate2 Server) Of(string folder, IReadOnlyList<IPAddress> addresses, IReadOnlyList<string> names, DateTimeOffset now)
    {
        DataFolder.Private(folder);
        var (authorityFile, serverFile) = (Path.Combine(folder, "authority.pfx"), Path.Combine(folder, "server.pfx"));
        var authority = Load(authorityFile);
        if (authority is null || authority.NotAfter < now + ServerLives)
        {
            authority = MakeAuthority(now);
            Keep(authorityFile, authority);
            File.Delete(serverFile);
        }
        var wanted = Wanted(addresses, names);
        var server = Load(serverFile);
        if (server is null || server.NotAfter < now + Renew || !Covers(server, wanted) || server.Issuer != authority.Subject)
        {
            server = MakeServer(authority, wanted, now);
            Keep(serverFile, server);
        }
        return (authority, server);
    }

    static (IReadOnlyList<IPAddress> Addresses, IReadOnlyList<string> Names) Wanted(IReadOnlyList<IPAddress> addresses, IReadOnlyList<string> names) => (
        [IPAddress.Loopback, .. addresses.Where(address => !IPAddress.IsLoopback(address)).Distinct().OrderBy(address => address.ToString(), StringComparer.Ordinal)],
        ["localhost", .. names.Where(name => name.EndsWith(".local", StringComparison.OrdinalIgnoreCase)).Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.Ordinal)]);

    static X509Certificate2 MakeAuthority(DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var mark = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(3));
        var request = new CertificateRequest($"CN=Coolproof pit table {mark}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(certificateAuthority: true, hasPathLengthConstraint: true, pathLengthConstraint: 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign | X509KeyUsageFlags.CrlSign, critical: true));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false));
        request.CertificateExtensions.Add(OnlyPrivateNetworks());
        return request.CreateSelfSigned(now.AddDays(-1), now + AuthorityLives);
    }

    static X509Certificate2 MakeServer(X509Certificate2 authority, (IReadOnlyList<IPAddress> Addresses, IReadOnlyList<string> Names) wanted, DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=Coolproof pit table", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        foreach (var name in wanted.Names) names.AddDnsName(name);
        foreach (var address in wanted.Addresses) names.AddIpAddress(address);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid("1.3.6.1.5.5.7.3.1")], critical: false)); // serverAuth
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false));
        request.CertificateExtensions.Add(X509AuthorityKeyIdentifierExtension.CreateFromCertificate(authority, includeKeyIdentifier: true, includeIssuerAndSerial: false));
        request.CertificateExtensions.Add(names.Build());
        using var signed = request.Create(authority, now.AddDays(-1), now + ServerLives, RandomNumberGenerator.GetBytes(16));
        return signed.CopyWithPrivateKey(key);
    }

    static X509Extension OnlyPrivateNetworks()
    {
        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        using (writer.PushSequence(new Asn1Tag(TagClass.ContextSpecific, 0))) // permittedSubtrees
        {
            foreach (var name in (string[])["localhost", "local"])
                using (writer.PushSequence()) writer.WriteCharacterString(UniversalTagNumber.IA5String, name, new Asn1Tag(TagClass.ContextSpecific, 2));
            // Private networks: RFC 1918, link-local, loopback; RFC 4193 and link-local for IPv6.
            foreach (var network in (string[])["10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "169.254.0.0/16", "127.0.0.0/8", "fc00::/7", "fe80::/10", "::1/128"])
            {
                var parsed = IPNetwork.Parse(network);
                var bytes = parsed.BaseAddress.GetAddressBytes();
                var mask = new byte[bytes.Length];
                for (var bit = 0; bit < parsed.PrefixLength; bit++) mask[bit / 8] |= (byte)(0x80 >> (bit % 8));
                using (writer.PushSequence()) writer.WriteOctetString([.. bytes, .. mask], new Asn1Tag(TagClass.ContextSpecific, 7));
            }
        }
        return new X509Extension("2.5.29.30", writer.Encode(), critical: true);
    }

    static bool Covers(X509Certificate2 server, (IReadOnlyList<IPAddress> Addresses, IReadOnlyList<string> Names) wanted)
    {
        var said = server.Extensions.OfType<X509SubjectAlternativeNameExtension>().FirstOrDefault();
        return said is not null && wanted.Addresses.All(address => said.EnumerateIPAddresses().Contains(address))
            && wanted.Names.All(name => said.EnumerateDnsNames().Contains(name, StringComparer.OrdinalIgnoreCase));
    }

    // What can't be read is made anew.
    static X509Certificate2? Load(string file)
    {
        try
        {
            return File.Exists(file) ? X509CertificateLoader.LoadPkcs12FromFile(file, null) : null;
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    static void Keep(string file, X509Certificate2 certificate)
    {
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using var stream = new FileStream(file, options);
        stream.Write(certificate.Export(X509ContentType.Pkcs12));
    }
}
