using System.Net;
using System.Net.Security;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Coolproof.Web;

namespace Coolproof.Tests.Serving;

/// <summary>The machine's own certificates are trusted by who trusts its authority, for private networks, and by nobody for anything else.</summary>
public sealed class CertificatesTests : IDisposable
{
    static readonly DateTimeOffset Now = DateTimeOffset.UtcNow;
    readonly string folder = Directory.CreateTempSubdirectory("coolproof-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task A_client_that_trusts_the_authority_connects_encrypted_and_another_does_not()
    {
        var (authority, server) = OwnCertificates.Of(folder, [IPAddress.Parse("192.168.1.7")], ["laptop.local"], Now);
        await using var pit = await PitServer.StartAsync(settings => settings with { Certificate = server, Authority = authority });
        var secured = new Uri(pit.App.Urls.Single(url => url.StartsWith("https", StringComparison.Ordinal)));
        using var trusting = Client(authority);
        Assert.Equal("ready\n", await trusting.GetStringAsync(new Uri(secured, "/health"), TestContext.Current.CancellationToken));
        // The key that is given over the encrypted connection has a name that plain pages can't set.
        var code = pit.Get<Pairing.PairingCodes>().Make();
        using var form = new FormUrlEncodedContent([new("code", code.Digits)]);
        using var entered = await trusting.PostAsync(new Uri(secured, "/connect/pair"), form, TestContext.Current.CancellationToken);
        var cookie = entered.Headers.GetValues("Set-Cookie").Single();
        Assert.StartsWith("__Host-", cookie);
        Assert.Contains("secure", cookie, StringComparison.OrdinalIgnoreCase);
        using var other = new HttpClient();
        await Assert.ThrowsAsync<HttpRequestException>(() => other.GetStringAsync(new Uri(secured, "/health"), TestContext.Current.CancellationToken));
        // What phones install comes from the pit table itself.
        var got = X509CertificateLoader.LoadCertificate(await pit.Stranger.GetByteArrayAsync("/connect/authority.crt", TestContext.Current.CancellationToken));
        Assert.Equal(authority.Thumbprint, got.Thumbprint);
        Assert.False(got.HasPrivateKey);
    }

    [Fact]
    public void They_are_kept_and_the_servers_own_is_made_anew_when_an_address_comes_or_it_runs_out()
    {
        var first = OwnCertificates.Of(folder, [IPAddress.Parse("192.168.1.7")], [], Now);
        var same = OwnCertificates.Of(folder, [IPAddress.Parse("192.168.1.7")], [], Now.AddDays(3));
        Assert.Equal((first.Authority.Thumbprint, first.Server.Thumbprint), (same.Authority.Thumbprint, same.Server.Thumbprint));
        var moved = OwnCertificates.Of(folder, [IPAddress.Parse("10.0.0.7")], [], Now.AddDays(3));
        Assert.Equal(first.Authority.Thumbprint, moved.Authority.Thumbprint);
        Assert.NotEqual(first.Server.Thumbprint, moved.Server.Thumbprint);
        Assert.True(moved.Server.MatchesHostname("localhost"));
        var later = OwnCertificates.Of(folder, [IPAddress.Parse("10.0.0.7")], [], Now.AddDays(380));
        Assert.NotEqual(moved.Server.Thumbprint, later.Server.Thumbprint);
        Assert.True(later.Server.NotAfter - later.Server.NotBefore < TimeSpan.FromDays(398));
        foreach (var file in Directory.GetFiles(folder))
            if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
    }

    [Theory]
    [InlineData("192.168.1.7", true)]
    [InlineData("10.9.8.7", true)]
    [InlineData("172.20.10.2", true)] // a phone's hotspot
    [InlineData("8.8.8.8", false)]
    public void The_authority_vouches_for_private_addresses_only(string address, bool trusted)
    {
        var (authority, server) = OwnCertificates.Of(folder, [IPAddress.Parse(address)], [], Now);
        Assert.Equal(trusted, Builds(authority, server));
    }

    [Fact]
    public void The_authority_vouches_for_no_site_of_the_internet()
    {
        var (authority, _) = OwnCertificates.Of(folder, [], [], Now);
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=bank.example", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName("bank.example");
        request.CertificateExtensions.Add(names.Build());
        using var stolen = request.Create(authority, Now.AddDays(-1), Now.AddDays(10), [1, 2, 3]);
        Assert.False(Builds(authority, stolen));
    }

    [Fact]
    public void A_given_certificate_is_read_as_PFX_with_its_password_or_as_PEM_and_refused_in_words()
    {
        var (_, server) = OwnCertificates.Of(folder, [], [], Now);
        var (pfx, pem) = (Path.Combine(folder, "given.pfx"), Path.Combine(folder, "given.pem"));
        File.WriteAllBytes(pfx, server.Export(X509ContentType.Pkcs12, "word"));
        File.WriteAllText(pem, server.ExportCertificatePem() + "\n" + server.GetECDsaPrivateKey()!.ExportPkcs8PrivateKeyPem());
        Assert.Equal(server.Thumbprint, GivenCertificate.Of(pfx, "word").Thumbprint);
        Assert.Equal(server.Thumbprint, GivenCertificate.Of(pem, null).Thumbprint);
        foreach (var (file, password) in new[] { (pfx, "other"), (Path.Combine(folder, "none.pem"), ""), (TestFiles.Of("README.md"), "") })
            Assert.Contains(file, Assert.Throws<CryptographicException>(() => GivenCertificate.Of(file, password)).Message);
    }

    static bool Builds(X509Certificate2 authority, X509Certificate2 server)
    {
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.Add(authority);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        chain.ChainPolicy.DisableCertificateDownloads = true;
        return chain.Build(server);
    }

    static HttpClient Client(X509Certificate2 authority) => new(new SocketsHttpHandler
    {
        AllowAutoRedirect = false,
        UseCookies = false,
        SslOptions = new SslClientAuthenticationOptions
        {
            CertificateChainPolicy = new X509ChainPolicy
            {
                TrustMode = X509ChainTrustMode.CustomRootTrust,
                CustomTrustStore = { authority },
                RevocationMode = X509RevocationMode.NoCheck,
                DisableCertificateDownloads = true,
            },
        },
    });
}
