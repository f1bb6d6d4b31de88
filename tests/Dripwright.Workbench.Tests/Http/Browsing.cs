using System.Net;
using System.Text.RegularExpressions;

namespace Dripwright.Workbench.Tests.Http;

/// <summary>A browser as far as forms and cookies go.</summary>
internal sealed partial class Browsing : IDisposable
{
    private readonly HttpClientHandler _handler = new() { AllowAutoRedirect = false };
    private readonly HttpClient _client;

    public Browsing(string url) => _client = new HttpClient(_handler) { BaseAddress = new Uri(url) };

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async Task<(HttpStatusCode Status, string Text)> Get(string page)
    {
        using var answer = await _client.GetAsync(page, Stop);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(Stop));
    }

    /// <summary>Fills in a form of a page and gives where it leads, or else the status.</summary>
    public async Task<string> Post(string page, string form, params (string Name, string Value)[] fields)
    {
        var token = TokenText().Match((await Get(page)).Text).Groups["token"].Value;
        Assert.NotEmpty(token);
        return await Forge($"{page}/{form}", [.. fields, ("__RequestVerificationToken", token)]);
    }

    public async Task<string> Forge(string address, params (string Name, string Value)[] fields)
    {
        using var content = new FormUrlEncodedContent(
            fields.Select(field => KeyValuePair.Create(field.Name, field.Value))
        );
        using var answer = await _client.PostAsync(address, content, Stop);
        return answer.Headers.Location?.ToString()
            ?? ((int)answer.StatusCode).ToString(System.Globalization.CultureInfo.InvariantCulture);
    }

    /// <summary>The cookies as they are now, to be sent by somebody who kept them.</summary>
    public string Cookies() => _handler.CookieContainer.GetCookieHeader(_client.BaseAddress!);

    /// <summary>Where an address leads, or else the status.</summary>
    public async Task<string> Lead(string page)
    {
        using var answer = await _client.GetAsync(page, Stop);
        return answer.Headers.Location?.ToString()
            ?? ((int)answer.StatusCode).ToString(System.Globalization.CultureInfo.InvariantCulture);
    }

    /// <summary>Signs in.</summary>
    public Task<string> Enter(string name, string passphrase) =>
        Post("/sign-in", "enter", ("name", name), ("passphrase", passphrase));

    public void Dispose()
    {
        _client.Dispose();
        _handler.Dispose();
    }

    [GeneratedRegex("__RequestVerificationToken\" value=\"(?<token>[^\"]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex TokenText();
}
