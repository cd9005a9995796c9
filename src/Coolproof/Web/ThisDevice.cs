using Coolproof.Board;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Home;
using Coolproof.Words;
using NodaTime;

namespace Coolproof.Web;

/// <summary>The device that asks for a page: who it is, and how quantities are said on it.</summary>
internal sealed class ThisDevice
{
    /// <summary>Cookie with its UUID, which the run clock keeps too.</summary>
    public const string Cookie = "coolproof-device";

    /// <summary>Cookie that says whether verdicts are hidden while a round is driven: yes or no; by the device's role where there is none.</summary>
    public const string HideCookie = "coolproof-hide";

    /// <summary>Cookie that says whether the answer with earlier days stands before the day's own: yes or no; no where there is none.</summary>
    public const string EarlierCookie = "coolproof-earlier";

    static readonly CookieOptions Kept = new() { Path = "/", MaxAge = TimeSpan.FromDays(400), SameSite = SameSiteMode.Lax, IsEssential = true };

    readonly NotebookBoard board;
    readonly HttpContext? context;

    /// <summary>The device of a request.</summary>
    public ThisDevice(IHttpContextAccessor http, NotebookBoard board)
    {
        this.board = board;
        context = http.HttpContext;
        Look = DeviceLook.Of(context);
        Known = Guid.TryParseExact(context?.Request.Cookies[Cookie], "D", out var id) && id != Guid.Empty ? id : null;
        Noted = Known is { } known ? board.Notebook.Find<NotedDevice>(known) : null;
        HidesRounds = context?.Request.Cookies[HideCookie] switch { "yes" => true, "no" => false, _ => Noted?.Role == DeviceRole.Driver };
    }

    /// <summary>How it shows pages.</summary>
    public DeviceLook Look { get; }

    /// <summary>Its UUID; null before it has noted anything.</summary>
    public Guid? Known { get; private set; }

    /// <summary>What is noted of it.</summary>
    public NotedDevice? Noted { get; }

    /// <summary>Whether it hides a verdict while the round is being driven.</summary>
    public bool HidesRounds { get; }

    /// <summary>Whether the answer with earlier days stands before the day's own.</summary>
    public bool EarlierFirst => context?.Request.Cookies[EarlierCookie] == "yes";

    /// <summary>Whether it hides what a day's readings say: its round is being driven.</summary>
    public bool Hides(NotedDay day) => HidesRounds && !WhatNow.RoundDone(board.Notebook, day);

    /// <summary>Whether it hides what the readings of a day or a question say: the round of the day that is driven for it is under way.</summary>
    public bool Hides(AskedAbout about) => about.Driven is { } driven && Hides(driven);

    /// <summary>Temperatures in words.</summary>
    public DegreeWords Degrees => new(Look.Temperature);

    /// <summary>Money and mass in words.</summary>
    public CostWords Costs => new(board.Notebook.Settings.Currency, Look.Ounces ? MassUnitChoice.Ounce : MassUnitChoice.Gram);

    /// <summary>A sentence of the evidence in its unit.</summary>
    public string Put(string sentence) => Screen.Cells.Clean(Look.Temperature == TemperatureUnitChoice.Fahrenheit ? FahrenheitWords.Of(sentence) : sentence);

    /// <summary>Its UUID, made and kept on it where there was none; only before the answer has begun.</summary>
    public Guid Id()
    {
        if (Known is { } known) return known;
        var made = Guid.NewGuid();
        context?.Response.Cookies.Append(Cookie, made.ToString("D"), Kept);
        Known = made;
        return made;
    }

    /// <summary>Keeps a choice on the device.</summary>
    public void Keep(string cookie, string value) => context?.Response.Cookies.Append(cookie, value, Kept);

    /// <summary>A local time like "17:05", by an offset from UTC.</summary>
    public static string Clock(Instant at, Offset offset) => at.WithOffset(offset).ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture);
}
