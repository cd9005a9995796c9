using System.Net;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using Coolproof.Notebook.Journal;
using Coolproof.Tests.Serving;

namespace Coolproof.Tests.Pages;

/// <summary>A browser without script: it follows redirects, keeps cookies, fills forms and sends them.</summary>
sealed class Reader : IDisposable
{
    readonly CookieContainer cookies = new();
    readonly HttpClient client;
    readonly PitServer pit;

    public Reader(PitServer pit)
    {
        this.pit = pit;
        client = new HttpClient(new SocketsHttpHandler { CookieContainer = cookies }) { BaseAddress = pit.Address };
        cookies.SetCookies(pit.Address, pit.CookieOf("reader"));
    }

    /// <summary>The page that is shown.</summary>
    public IHtmlDocument Page { get; private set; } = new HtmlParser().ParseDocument("");

    /// <summary>How the latest answer came.</summary>
    public HttpStatusCode Status { get; private set; }

    /// <summary>Where it is.</summary>
    public string Path { get; private set; } = "/";

    /// <summary>The notebook.</summary>
    public PitNotebook Notebook => pit.Get<Board.NotebookBoard>().Notebook;

    /// <summary>The text of the page, blanks made single.</summary>
    public string Text => string.Join(' ', (Page.QuerySelector("main")?.TextContent ?? Page.DocumentElement.TextContent).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>The heading.</summary>
    public string Heading => string.Join(' ', (Page.QuerySelector("h1")?.TextContent ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>Goes to a page.</summary>
    public async Task<Reader> GoAsync(string path)
    {
        // What another device sent a moment ago is on the pages when the notebook has followed.
        await pit.Get<Board.NotebookBoard>().ReachAsync(await pit.Store.CursorAsync(TestContext.Current.CancellationToken), TestContext.Current.CancellationToken);
        return await TakeAsync(client.GetAsync(path, TestContext.Current.CancellationToken));
    }

    /// <summary>Keeps a cookie.</summary>
    public void Keep(string name, string value) => cookies.Add(new Cookie(name, value, "/", pit.Address.Host));

    /// <summary>Fills the form whose button says this, and sends it.</summary>
    public Task<Reader> SendAsync(string button, params (string Name, string Value)[] filled) => SendAsync(Form(button), filled);

    /// <summary>The form whose button says this.</summary>
    public IHtmlFormElement Form(string button) => Page.QuerySelectorAll("form").OfType<IHtmlFormElement>()
        .FirstOrDefault(form => form.QuerySelectorAll("button").Any(one => one.TextContent.Trim() == button || one.TextContent.Trim().StartsWith(button + ":", StringComparison.Ordinal)))
        ?? throw new InvalidOperationException($"No form has a button {button}: {string.Join(", ", Page.QuerySelectorAll("button").Select(one => one.TextContent.Trim()))}");

    /// <summary>Fills a form and sends it.</summary>
    public async Task<Reader> SendAsync(IHtmlFormElement form, params (string Name, string Value)[] filled)
    {
        List<KeyValuePair<string, string>> fields = [];
        foreach (var element in form.Elements)
        {
            if (element.GetAttribute("name") is not { Length: > 0 } name || filled.Any(one => one.Name == name)) continue;
            if (element is IHtmlInputElement { Type: "checkbox" or "radio", IsChecked: false } or IHtmlInputElement { Type: "file" or "submit" }) continue;
            var value = element switch { IHtmlInputElement input => input.Value, IHtmlTextAreaElement area => area.Value, IHtmlSelectElement select => select.Value, _ => null };
            if (value is not null) fields.Add(new(name, value));
        }
        foreach (var (name, value) in filled)
        {
            Assert.True(form.Elements.Any(element => element.GetAttribute("name") == name), $"the form has no field {name}");
            fields.Add(new(name, value));
        }
        using HttpContent content = form.GetAttribute("enctype") == "multipart/form-data" ? Multipart(fields) : new FormUrlEncodedContent(fields);
        return await TakeAsync(client.PostAsync(form.GetAttribute("action") ?? Path, content, TestContext.Current.CancellationToken));
    }

    public void Dispose() => client.Dispose();

    static MultipartFormDataContent Multipart(List<KeyValuePair<string, string>> fields)
    {
        MultipartFormDataContent content = [];
        foreach (var (name, value) in fields) content.Add(new StringContent(value), name);
        return content;
    }

    async Task<Reader> TakeAsync(Task<HttpResponseMessage> asked)
    {
        using var answer = await asked;
        Status = answer.StatusCode;
        Path = answer.RequestMessage!.RequestUri!.PathAndQuery;
        Page = new HtmlParser().ParseDocument(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        return this;
    }
}
