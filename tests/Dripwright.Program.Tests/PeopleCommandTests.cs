using System.Text.RegularExpressions;
using Dripwright.Screen;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

public sealed partial class PeopleCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("dripwright-people-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task People_are_added_changed_listed_and_removed_and_no_passphrase_is_shown()
    {
        var added = await Run("lamp ladder onion\n", "add", "Ada", "--role", "owner");
        Assert.Equal((Exit.Good, "Ada can sign in as owner."), (added.Exit, added.Out.Trim()));
        Assert.Equal(Exit.Good, (await Run("onion ladder lamp\n", "add", "Bo")).Exit);
        Assert.Equal(Exit.Good, (await Run("", "role", "bo", "grower")).Exit);
        Assert.Equal(
            ["Ada: owner, signed in in 0 browsers, 0 keys", "Bo: grower, signed in in 0 browsers, 0 keys"],
            (await Run("", "list")).Out.Trim().ReplaceLineEndings("\n").Split('\n')
        );
        Assert.Equal(Exit.Good, (await Run("another plain one\n", "passphrase", "Bo")).Exit);
        Assert.Equal(Exit.Good, (await Run("", "sign-out", "Bo")).Exit);
        Assert.Equal(Exit.Good, (await Run("", "remove", "Bo")).Exit);
        var log = (await Run("", "log")).Out;
        Assert.Equal(5, log.Trim().Split('\n').Length);
        foreach (var file in Directory.GetFiles(_folder))
        {
            Assert.DoesNotContain(
                "ladder",
                await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken),
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public async Task What_cannot_be_is_told_in_one_line_and_nothing_changes()
    {
        Assert.Contains(
            "must be an owner",
            (await Refused("lamp ladder onion\n", "add", "Ada")),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "fifteen letters",
            (await Refused("short\n", "add", "Ada", "--role", "owner")),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "fifteen letters",
            (await Refused("", "add", "Ada", "--role", "owner")),
            StringComparison.Ordinal
        );
        Assert.Contains("nobody here is called \"Cy\"", (await Refused("", "remove", "Cy")), StringComparison.Ordinal);
        await Run("lamp ladder onion\n", "add", "Ada", "--role", "owner");
        Assert.Contains("There must be an owner", (await Refused("", "remove", "Ada")), StringComparison.Ordinal);
        Assert.Contains(
            "There must be an owner",
            (await Refused("", "role", "Ada", "visitor")),
            StringComparison.Ordinal
        );
        Assert.Contains("already", (await Refused("lamp ladder onion\n", "add", "ADA")), StringComparison.Ordinal);
        Assert.Equal(Exit.WrongCall, (await Run("", "role", "Ada", "king")).Exit);
        Assert.Equal(Exit.WrongCall, (await Run("", "sign-out")).Exit);
        Assert.StartsWith("Ada: owner", (await Run("", "list")).Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task At_a_terminal_the_passphrase_is_asked_for_twice()
    {
        var unlike = await Run("lamp ladder onion\nlamp ladder onoin\n", true, "add", "Ada", "--role", "owner");
        Assert.Equal(Exit.WrongCall, unlike.Exit);
        Assert.Contains("not alike", unlike.Error, StringComparison.Ordinal);
        Assert.Equal(
            Exit.Good,
            (await Run("lamp ladder onion\nlamp ladder onion\n", true, "add", "Ada", "--role", "owner")).Exit
        );
    }

    [Fact]
    public async Task A_key_is_printed_once_and_ended_by_its_number()
    {
        await Run("lamp ladder onion\n", "add", "Ada", "--role", "owner");
        var key = (await Run("", "key", "Ada", "shed", "--role", "helper", "--days", "30")).Out.Trim();
        Assert.Matches("^drip_[0-9a-f]{64}$", key);
        var listed = (await Run("", "keys")).Out;
        Assert.DoesNotContain(key, listed, StringComparison.Ordinal);
        Assert.Contains("shed  helper  Ada", listed, StringComparison.Ordinal);
        Assert.Contains(
            "1 to 366 days",
            (await Refused("", "key", "Ada", "shed", "--days", "400")),
            StringComparison.Ordinal
        );
        Assert.Equal(Exit.Good, (await Run("", "end-key", listed.Split(' ')[0])).Exit);
        Assert.Equal("", (await Run("", "keys")).Out.Trim());
    }

    [Fact]
    public async Task A_spoilt_file_of_people_is_told_with_its_line_by_the_workbench_and_by_the_command()
    {
        await Run("lamp ladder onion\n", "add", "Ada", "--role", "owner");
        var file = Path.Combine(_folder, "people.json");
        var text = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(
            file,
            text.Replace("\"owner\"", "\"king\"", StringComparison.Ordinal),
            TestContext.Current.CancellationToken
        );
        var setting = new Setting { Variables = new() { ["DRIPWRIGHT_DATA"] = _folder } };
        var garden = Path.Combine(_folder, "g.dripwright");
        foreach (
            var call in new[]
            {
                await Run("", "list"),
                await Call.Of(
                    setting,
                    "open",
                    "--network",
                    "--address",
                    "127.0.0.1",
                    "--port",
                    "0",
                    "--garden",
                    garden
                ),
            }
        )
        {
            Assert.Equal(Exit.FaultyFile, call.Exit);
            Assert.Single(call.Error.TrimEnd().Split('\n'));
            Assert.Contains("people.json, line 7: $.people[0].role", call.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Open_for_one_account_gives_the_browser_a_file_and_nobody_the_pass()
    {
        List<string> shown = [];
        var page = "";
        using var stop = new CancellationTokenSource();
        var setting = new Setting
        {
            Variables = new() { ["DRIPWRIGHT_DATA"] = _folder },
            Browse = address =>
            {
                shown.Add(address);
                page = File.ReadAllText(new Uri(address).LocalPath);
                stop.CancelAfter(TimeSpan.FromSeconds(1));
            },
            Stop = stop.Token,
        };
        var call = await Call.Of(
            setting,
            "open",
            "--only-me",
            "--port",
            "0",
            "--garden",
            Path.Combine(_folder, "g.dripwright")
        );
        Assert.Equal("", call.Error);
        Assert.Equal(new Uri(Path.Combine(_folder, "open.html")).AbsoluteUri, Assert.Single(shown));
        var pass = Pass().Match(page).Value;
        Assert.NotEmpty(pass);
        Assert.DoesNotContain(pass, call.Out, StringComparison.Ordinal);
        Assert.DoesNotContain(pass, shown[0], StringComparison.Ordinal);
        Assert.Contains(Path.Combine(_folder, "open.html"), call.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Other_peoples_accounts_are_told_from_those_of_services() =>
        Assert.Equal(
            ["ada", "bo"],
            OtherAccounts.Names(
                """
                root:x:0:0:root:/root:/bin/bash
                daemon:x:1:1::/usr/sbin:/usr/sbin/nologin
                ada:x:1000:1000:Ada,,,:/home/ada:/bin/bash
                bo:x:1001:1001::/home/bo:/usr/bin/fish
                backup:x:1002:1002::/srv:/usr/sbin/nologin
                nobody:x:65534:65534:nobody:/nonexistent:/usr/sbin/nologin
                half:x:1003
                """
            )
        );

    private Task<Call> Run(string input, params string[] args) => Run(input, false, args);

    private Task<Call> Run(string input, bool isTerminal, params string[] args) =>
        Call.Of(
            new Setting
            {
                Input = input,
                IsTerminal = isTerminal,
                Variables = new() { ["DRIPWRIGHT_DATA"] = _folder },
            },
            ["people", .. args]
        );

    private async Task<string> Refused(string input, params string[] args)
    {
        var call = await Run(input, args);
        Assert.Equal(Exit.FaultyFile, call.Exit);
        return Assert.Single(call.Error.TrimEnd().Split('\n'));
    }

    [GeneratedRegex("[0-9a-f]{64}")]
    private static partial Regex Pass();
}
