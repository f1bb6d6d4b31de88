using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Dripwright.Workbench.Household;
using Dripwright.Workbench.Tests.Browser;

namespace Dripwright.Workbench.Tests.Http;

/// <summary>A workbench in this process and a client that calls it as another program would.</summary>
internal sealed class Caller : IAsyncDisposable
{
    public const string Api = "/api/v1";

    /// <summary>A sound rig of ten pots.</summary>
    public const string TenPots = """{ "format": 1, "rows": [ { "pots": 10 } ] }""";

    private Caller(Bench bench, HttpClient client)
    {
        Bench = bench;
        Client = client;
    }

    public Bench Bench { get; }

    public HttpClient Client { get; }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static async Task<Caller> Open(bool network = false, bool onlyMe = false)
    {
        var bench = await Bench.Open(withDemo: false, network: network, onlyMe: onlyMe);
        return new Caller(
            bench,
            new HttpClient(new HttpClientHandler { AllowAutoRedirect = false })
            {
                BaseAddress = new Uri(bench.Url),
                Timeout = TimeSpan.FromMinutes(3),
            }
        );
    }

    public async Task<Answer> Send(
        HttpMethod method,
        string address,
        string? body = null,
        string? ifMatch = null,
        string type = "application/json",
        params (string Name, string Value)[] headers
    )
    {
        using var content = body is null ? null : new ByteArrayContent(Encoding.UTF8.GetBytes(body));
        return await Send(method, address, content, ifMatch, type, headers);
    }

    public async Task<Answer> Send(
        HttpMethod method,
        string address,
        HttpContent? content,
        string? ifMatch = null,
        string type = "application/json",
        params (string Name, string Value)[] headers
    )
    {
        using var request = new HttpRequestMessage(method, address.StartsWith('/') ? address : $"{Api}/{address}");
        if (content is not null)
        {
            content.Headers.ContentType = MediaTypeHeaderValue.Parse(type);
            request.Content = content;
        }

        if (ifMatch is not null)
        {
            request.Headers.TryAddWithoutValidation("If-Match", ifMatch);
        }

        foreach (var (name, value) in headers)
        {
            request.Headers.TryAddWithoutValidation(name, value);
        }

        using var response = await Client.SendAsync(request, Stop);
        return new Answer(
            (int)response.StatusCode,
            await response.Content.ReadAsByteArrayAsync(Stop),
            response.Content.Headers.ContentType?.MediaType ?? "",
            response.Headers.ETag?.Tag ?? "",
            response.Headers.ToDictionary(
                header => header.Key,
                header => string.Join("; ", header.Value),
                StringComparer.OrdinalIgnoreCase
            )
        );
    }

    public Task<Answer> Get(string address) => Send(HttpMethod.Get, address, (string?)null);

    public Task<Answer> Post(string address, string? body = null, string? ifMatch = null) =>
        Send(HttpMethod.Post, address, body, ifMatch);

    /// <summary>Adds somebody of a role and sends a key of theirs from now on.</summary>
    public async Task As(Role role, string name)
    {
        var by = new Visitor("");
        Assert.Null(await Bench.People.Add(name, role, "six plain tomatoes", by, Stop));
        Send(Bench.People.MakeKey(Bench.People.Find(name)!.Id, "test", role, 30, by).Key!);
    }

    /// <summary>Sends a key from now on.</summary>
    public void Send(string key)
    {
        Client.DefaultRequestHeaders.Remove("Authorization");
        Client.DefaultRequestHeaders.Add("Authorization", $"Bearer {key}");
    }

    /// <summary>Adds a rig and gives its number and ETag.</summary>
    public async Task<(string Id, string Tag)> Add(string name, string text = TenPots)
    {
        var added = await Post($"rigs?name={Uri.EscapeDataString(name)}", text);
        Assert.Equal(201, added.Status);
        return (added.Json.GetProperty("id").GetRawText(), added.Tag);
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await Bench.DisposeAsync();
    }

    /// <summary>What came back.</summary>
    internal sealed record Answer(
        int Status,
        byte[] Bytes,
        string Type,
        string Tag,
        IReadOnlyDictionary<string, string> Headers
    )
    {
        public string Text => Encoding.UTF8.GetString(Bytes);

        public JsonElement Json => JsonDocument.Parse(Bytes).RootElement;

        /// <summary>That it is a problem of this status, told as problems are, with a number.</summary>
        public Answer IsProblem(int status)
        {
            Assert.Equal(status, Status);
            Assert.Equal("application/problem+json", Type);
            Assert.Equal(status, Json.GetProperty("status").GetInt32());
            Assert.NotEmpty(Json.GetProperty("title").GetString()!);
            Assert.NotEmpty(Json.GetProperty("detail").GetString()!);
            Assert.Matches("^[0-9]{6}-[0-9]{3}$", Json.GetProperty("number").GetString());
            return this;
        }
    }
}
