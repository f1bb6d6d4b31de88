using System.Text.RegularExpressions;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

public sealed partial class CertificateTests : IDisposable
{
    private readonly Scratch _scratch = new();

    private Setting Here => new() { Variables = new() { ["DRIPWRIGHT_DATA"] = _scratch.Folder } };

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task A_certificate_is_made_shown_and_renewed_and_its_authority_stays_the_same()
    {
        var none = await Call.Of(Here, "certificate");
        Assert.Equal(Exit.Good, none.Exit);
        Assert.Contains("make-certificate", none.Out, StringComparison.Ordinal);
        var made = await Call.Of(Here, "make-certificate", "--known-as", "garden.example.org", "--at", "192.168.1.20");
        Assert.Equal((Exit.Good, ""), (made.Exit, made.Error));
        Assert.Contains("garden.example.org", made.Out, StringComparison.Ordinal);
        Assert.Contains("192.168.1.20", made.Out, StringComparison.Ordinal);
        var fingerprint = Fingerprint().Match(made.Out).Value;
        Assert.NotEmpty(fingerprint);
        Assert.Contains(fingerprint, (await Call.Of(Here, "certificate")).Out, StringComparison.Ordinal);
        var renewed = await Call.Of(Here, "renew-certificate", "--at", "10.0.0.7");
        Assert.Contains("10.0.0.7", renewed.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("192.168.1.20", renewed.Out, StringComparison.Ordinal);
        Assert.Contains(fingerprint, renewed.Out, StringComparison.Ordinal);

        var again = await Call.Of(Here, "make-certificate");
        Assert.Equal((Exit.NotWritten, ""), (again.Exit, again.Out));
        Assert.Contains("--replace", again.Error, StringComparison.Ordinal);
        var other = await Call.Of(Here, "make-certificate", "--replace", "--discard-key");
        Assert.DoesNotContain(fingerprint, other.Out, StringComparison.Ordinal);
        var refused = await Call.Of(Here, "renew-certificate");
        Assert.Equal(Exit.NotWritten, refused.Exit);
        Assert.Contains("was discarded", refused.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Exit.NotWritten, "not a full name", "make-certificate", "--known-as", "greenhouse")]
    [InlineData(Exit.NotWritten, "not an address inside a house", "make-certificate", "--at", "203.0.113.5")]
    [InlineData(Exit.WrongCall, "found \"shed\"; expected an address", "make-certificate", "--at", "shed")]
    [InlineData(Exit.NotWritten, "Make one with", "renew-certificate")]
    [InlineData(Exit.WrongCall, "needs --network", "open", "--trusted-proxy", "127.0.0.1")]
    [InlineData(Exit.WrongCall, "found \"0.0.0.0/0\"", "open", "--network", "--trusted-proxy", "0.0.0.0/0")]
    [InlineData(Exit.WrongCall, "needs --certificate", "open", "--certificate-key", "key.pem")]
    [InlineData(Exit.FaultyFile, "no such file", "open", "--certificate", "/no/such/one.pem")]
    public async Task What_is_wrong_is_told_in_one_line_before_anything_is_made(
        int exit,
        string said,
        params string[] args
    )
    {
        var call = await Call.Of(Here, args);
        Assert.Equal((exit, ""), (call.Exit, call.Out));
        Assert.Contains(said, call.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(_scratch.Folder));
    }

    [Fact]
    public async Task The_environment_names_certificate_and_proxy_where_the_call_does_not()
    {
        var setting = Here;
        setting.Variables["DRIPWRIGHT_CERTIFICATE"] = "/no/such/one.pem";
        Assert.Contains("/no/such/one.pem", (await Call.Of(setting, "open")).Error, StringComparison.Ordinal);
        setting.Variables["DRIPWRIGHT_TRUSTED_PROXY"] = "127.0.0.1, nobody";
        Assert.Contains(
            "found \"nobody\"",
            (await Call.Of(setting, "open", "--network")).Error,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Open_to_the_network_it_encrypts_with_the_gardens_own_certificate_and_says_what_is_not_without()
    {
        Assert.Contains("not encrypted", await Opened(), StringComparison.Ordinal);
        await Call.Of(Here, "make-certificate", "--known-as", "garden.example.org");
        var own = await Opened();
        Assert.Matches(@"open at https://[a-z0-9.-]+:\d+", own);
        Assert.Matches(@"https://\S+/certificate shows how", own);
        Assert.DoesNotContain("not encrypted", own, StringComparison.Ordinal);
        // Behind a proxy that encrypts, the garden's own has nothing to do.
        Assert.Contains("open at http://", await Opened("--trusted-proxy", "127.0.0.1"), StringComparison.Ordinal);
        var given = Path.Combine(_scratch.Folder, "certificate", "server.pem");
        Assert.Contains("with encryption", await Opened("--certificate", given), StringComparison.Ordinal);
    }

    private async Task<string> Opened(params string[] more)
    {
        using var stop = new CancellationTokenSource();
        using var written = new Watched(text =>
        {
            if (text.Contains("Code for the first account", StringComparison.Ordinal))
            {
                stop.CancelAfter(TimeSpan.FromMilliseconds(200));
            }
        });
        var setting = Here with { Output = written, Stop = stop.Token };
        string[] words = ["open", "--network", "--address", "127.0.0.1", "--port", "0"];
        var call = await Call.Of(setting, [.. words, "--garden", _scratch.At("g.dripwright"), .. more]);
        Assert.Equal("", call.Error);
        return call.Out;
    }

    [GeneratedRegex("([0-9A-F]{2}:){31}[0-9A-F]{2}", RegexOptions.ExplicitCapture)]
    private static partial Regex Fingerprint();
}
