using System.Net;
using Coolproof.Pairing;

namespace Coolproof.Tests.Serving;

/// <summary>Codes end, and can't be guessed.</summary>
public class PairingCodesTests
{
    static readonly IPAddress Phone = IPAddress.Parse("192.168.1.7");
    readonly SetClock clock = new(new DateTimeOffset(2026, 6, 13, 15, 0, 0, TimeSpan.Zero));

    [Fact]
    public void A_code_ends_after_its_minutes()
    {
        var codes = new PairingCodes(clock);
        var code = codes.Make();
        clock.Now += PairingCodes.Holds - TimeSpan.FromSeconds(1);
        Assert.Equal(code, codes.Latest);
        clock.Now += TimeSpan.FromSeconds(1);
        Assert.Null(codes.Latest);
        Assert.Equal(CodeAnswer.Wrong, codes.Enter(code.Digits, Phone));
    }

    [Fact]
    public void An_address_may_try_again_after_a_minute()
    {
        var codes = new PairingCodes(clock);
        var code = codes.Make();
        for (var i = 0; i < 5; i++) Assert.Equal(CodeAnswer.Wrong, codes.Enter("no code", Phone));
        Assert.Equal(CodeAnswer.TooMany, codes.Enter(code.Digits, Phone));
        clock.Now += PairingCodes.Wait;
        Assert.Equal(CodeAnswer.Right, codes.Enter(code.Digits, Phone));
    }

    [Fact]
    public void Twenty_wrong_ones_from_many_addresses_end_every_code()
    {
        var codes = new PairingCodes(clock);
        codes.Make();
        for (var i = 0; i < 20; i++) codes.Enter("no code", IPAddress.Parse($"192.168.1.{i + 10}"));
        Assert.Null(codes.Latest);
    }

    [Fact]
    public void Six_digits_against_twenty_tries_are_guessed_once_in_fifty_thousand_codes() => // at most: 20 of 10^6
        Assert.Equal(6, new PairingCodes(clock).Make().Digits.Length);
}
