using System.Text;
using Dripwright.Store.Ground;
using Dripwright.Workbench.Household;
using Dripwright.Workbench.Tests.Browser;
using Microsoft.AspNetCore.Identity;

namespace Dripwright.Workbench.Tests.SignIn;

public sealed class PeopleFileTests : IDisposable
{
    private static readonly string s_hash = new PasswordHasher<string>().HashPassword("", "six plain tomatoes");

    private readonly string _folder = Directory.CreateTempSubdirectory("dripwright-people-").FullName;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Place => Path.Combine(_folder, PeopleFile.FileName);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("\"role\": \"owner\"", "\"role\": \"king\"", 7, "people[0].role")]
    [InlineData("\"role\": \"owner\"", "\"role\": 3", 7, "people[0].role")]
    [InlineData("\"name\": \"Bo\"", "\"name\": \"ADA\"", 13, "\"ADA\": somebody before has the same name")]
    [InlineData("\"name\": \"Bo\"", "\"name\": \"\"", 13, "a name has one to sixty letters")]
    [InlineData("\"name\": \"Bo\",", "", 21, "people[1]")]
    [InlineData("\"sessions\": []", "\"sessions\": [ null ]", 4, "\"Ada\": it is empty")]
    [InlineData("\"role\": \"owner\"", "\"role\": \"helper\"", 1, "nobody is an owner")]
    [InlineData("\"format\": 2", "\"format\": 9", 1, "found format 9; expected 2")]
    [InlineData("\"keys\": []", "\"keys\": [", 12, "people[0].keys")]
    [InlineData("\"madeAt\"", "\"madAt\"", 9, "madAt")]
    [InlineData("HASH", "plain words", 4, "\"Ada\": its passphrase is no hash")]
    public void What_is_spoilt_in_it_is_told_with_its_line_and_name(string was, string becomes, int line, string what)
    {
        var text = Sound();
        var at = text.IndexOf(was == "HASH" ? s_hash : was, StringComparison.Ordinal);
        File.WriteAllText(Place, text[..at] + becomes + text[(at + (was == "HASH" ? s_hash : was).Length)..]);
        var wrong = Assert.Throws<GardenException>(() => new People(_folder, TimeProvider.System));
        Assert.Contains(what, wrong.Message, StringComparison.Ordinal);
        Assert.Contains($"people.json, line {line}:", wrong.Message, StringComparison.Ordinal);
        Assert.StartsWith(Place, wrong.Message, StringComparison.Ordinal);
        // On a page no path of the machine, and nowhere what the file keeps.
        Assert.StartsWith("people.json, line", wrong.ForPage, StringComparison.Ordinal);
        Assert.DoesNotContain(s_hash, wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Whatever_is_done_to_its_bytes_it_is_read_or_told_and_never_breaks()
    {
        var random = new Random(15);
        var sound = Encoding.UTF8.GetBytes(Sound());
        var told = 0;
        for (var i = 0; i < 3000; i++)
        {
            var bytes = sound.ToArray();
            for (var n = random.Next(1, 4); n > 0; n--)
            {
                bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
            }

            bytes = random.Next(4) == 0 ? bytes[..random.Next(bytes.Length)] : bytes;
            try
            {
                _ = PeopleText.Read(bytes, Place, DateTimeOffset.UnixEpoch);
            }
            catch (GardenException wrong)
            {
                told++;
                Assert.Matches("people.json, line [1-9][0-9]*: ", wrong.Message);
            }
        }

        Assert.True(told > 1000, $"Only {told} were told.");
    }

    [Fact]
    public async Task People_of_the_first_format_come_along_and_the_first_of_them_is_the_owner()
    {
        const string Key = "drip_0123";
        var keyHash = Convert.ToHexStringLower(
            System.Security.Cryptography.SHA256.HashData(Encoding.UTF8.GetBytes(Key))
        );
        await File.WriteAllTextAsync(
            Place,
            $$"""
            [
              { "Name": "Ada", "Hash": "{{s_hash}}", "Stamp": "00", "Keys": [ { "Id": "1", "Label": "shed", "Hash": "{{keyHash}}", "MadeAt": "2026-01-02T03:04:05+00:00" } ] },
              { "Name": "Bo", "Hash": "{{s_hash}}", "Stamp": "01", "Keys": [] }
            ]
            """,
            Stop
        );
        using var people = new People(_folder, TimeProvider.System);
        Assert.Equal([Role.Owner, Role.Grower], people.All.Select(one => one.Role));
        Assert.Equal("Ada", people.OfKey(Key)!.Value.Person.Name);
        Assert.NotNull(await people.Enter("Bo", "six plain tomatoes", new Visitor(""), Stop));
        Assert.Contains("\"format\": 2", await File.ReadAllTextAsync(Place, Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_command_changes_beside_the_open_workbench_holds_there_at_once()
    {
        using var workbench = new People(_folder, TimeProvider.System);
        using var command = new People(_folder, TimeProvider.System);
        var by = new Visitor("");
        Assert.Null(await workbench.Add("Ada", Role.Owner, "six plain tomatoes", by, Stop));
        var secret = (await workbench.Enter("Ada", "six plain tomatoes", by, Stop))!;
        Assert.NotNull(workbench.OfSession(secret, null));
        var ada = command.Find("Ada")!;
        // Both write many times at once: nothing of either is lost.
        await Task.WhenAll(Task.Run(() => Keys(workbench, "left"), Stop), Task.Run(() => Keys(command, "right"), Stop));
        Assert.Equal(20, workbench.Find("Ada")!.Keys.Count);
        command.EndSessions(ada.Id, by);
        Assert.Null(workbench.OfSession(secret, null));

        void Keys(People people, string label)
        {
            for (var i = 0; i < 10; i++)
            {
                Assert.Null(people.MakeKey(ada.Id, $"{label} {i}", Role.Visitor, 10, by).Why);
            }
        }
    }

    [Fact]
    public async Task While_somebody_is_writing_into_it_the_workbench_goes_on_and_overwrites_nothing()
    {
        using var people = new People(_folder, TimeProvider.System);
        var by = new Visitor("");
        Assert.Null(await people.Add("Ada", Role.Owner, "six plain tomatoes", by, Stop));
        await File.WriteAllTextAsync(Place, "{ \"format\": 2, \"peop", Stop);
        Assert.Equal("Ada", Assert.Single(people.All).Name);
        Assert.Throws<GardenException>(() => people.ChangeRole(people.Find("Ada")!.Id, Role.Owner, by));
        Assert.Equal("{ \"format\": 2, \"peop", await File.ReadAllTextAsync(Place, Stop));
    }

    [Fact]
    public async Task Only_its_owner_can_read_what_is_kept_of_people()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("There a file has the rights of its folder.");
            return;
        }

        await using var bench = await Bench.Open(withDemo: false, network: true);
        Assert.Null(await bench.People.Add("Ada", Role.Owner, "six plain tomatoes", new Visitor(""), Stop));
        foreach (var name in new[] { PeopleFile.FileName, PeopleFile.FileName + ".lock", SignInLog.FileName })
        {
            Assert.Equal(
                UnixFileMode.UserRead | UnixFileMode.UserWrite,
                File.GetUnixFileMode(Path.Combine(bench.Folder, name))
            );
        }
    }

    [Fact]
    public async Task People_stay_when_a_backup_is_restored_and_go_into_no_file_that_is_handed_out()
    {
        await using var bench = await Bench.Open(withDemo: false, network: true);
        var (by, people) = (new Visitor(""), bench.People);
        Assert.Null(await people.Add("Ada", Role.Owner, "six plain tomatoes", by, Stop));
        Assert.Null(await people.Add("Bo", Role.Grower, "six plain tomatoes", by, Stop));
        var backup = Path.Combine(_folder, "yard.dripwright");
        await bench.Garden.BackupAsync(backup, stop: Stop);
        using var export = new MemoryStream();
        await bench.Garden.ExportAsync(export, Stop);
        foreach (
            var text in new[]
            {
                Encoding.Latin1.GetString(await File.ReadAllBytesAsync(backup, Stop)),
                Encoding.UTF8.GetString(export.ToArray()),
            }
        )
        {
            Assert.DoesNotContain(people.Find("Ada")!.Passphrase, text, StringComparison.Ordinal);
            Assert.DoesNotContain("Ada", text, StringComparison.Ordinal);
        }

        // Who was removed since does not come back with an older garden, nor does an old passphrase.
        Assert.Null(people.Remove(people.Find("Bo")!.Id, by));
        await bench.Garden.RestoreAsync(backup, Stop);
        Assert.Equal("Ada", Assert.Single(people.All).Name);
    }

    private static string Sound()
    {
        var made = new DateTimeOffset(2026, 1, 2, 3, 4, 5, TimeSpan.Zero);
        return PeopleText.Write([
            new Person("a1", "Ada", Role.Owner, s_hash, made, [], []),
            new Person("b1", "Bo", Role.Grower, s_hash, made, [], []),
        ]);
    }
}
