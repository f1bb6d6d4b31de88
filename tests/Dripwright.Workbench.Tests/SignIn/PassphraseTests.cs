using Dripwright.Workbench.Household;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace Dripwright.Workbench.Tests.SignIn;

public sealed class PassphraseTests : IDisposable
{
    private const string Good = "six plain tomatoes";

    private readonly string _folder = Directory.CreateTempSubdirectory("dripwright-people-").FullName;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static Visitor By => new("");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("six plain tomatoes", null)]
    [InlineData("lamp ladder onion", null)]
    [InlineData("der Regen füllt das Fass", null)]
    [InlineData("ten letters", "short")]
    // Fourteen letters, and fifteen.
    [InlineData("lampladderonio", "short")]
    [InlineData("lampladderonion", null)]
    [InlineData("aaaaaaaaaaaaaaaa", "common")]
    [InlineData("abcabcabcabcabcabc", "common")]
    [InlineData("passwordpassword", "common")]
    [InlineData("Password 1234567", "common")]
    [InlineData("P@ssw0rd12345678", "common")]
    [InlineData("123456789012345", "common")]
    [InlineData("987654321098765", "common")]
    [InlineData("qwertyuiopasdfgh", "common")]
    [InlineData("qwertyuiopasdf2026", "common")]
    [InlineData("1q2w3e4r5t6y7u8i", "common")]
    [InlineData("Correct Horse Battery Staple", "common")]
    [InlineData("dripwright garden 2026", "common")]
    [InlineData("Ada Lovely Ada Lovely", "common")]
    [InlineData("summer tomatoes 2026!", "common")]
    public void Long_ones_are_taken_and_the_first_that_anybody_would_try_are_not(string passphrase, string? fault) =>
        Assert.Equal(fault, PassphraseRule.Fault(passphrase, "Ada Lovely"));

    [Fact]
    public void A_passphrase_longer_than_any_form_takes_is_refused() =>
        Assert.Equal("long", PassphraseRule.Fault(string.Concat(Enumerable.Repeat("lamp ladder ", 20)), "Ada"));

    [Fact]
    public async Task Known_unknown_resting_and_old_names_all_cost_the_same_work()
    {
        using var people = new People(_folder, TimeProvider.System);
        Assert.Null(await people.Add("Ada", Role.Owner, Good, By, Stop));
        await Keep(OldHash(Good), "Old");
        Assert.Equal(100_000, Passphrases.RoundsOf(people.Find("Old")!.Passphrase));
        string[] names = ["Ada", "Old", "Nobody", "", new('x', 5000), "\ud800"];
        foreach (var name in names)
        {
            Assert.Equal(Passphrases.Rounds, await Work(people, name, "not this one at all"));
        }

        for (var i = 0; i < Tries.BeforeRest; i++)
        {
            await people.Enter("Ada", "wrong", By, Stop);
            await people.Enter("Nobody", "wrong", By, Stop);
        }

        // While it rests the right one does not help, and takes as long; a name that is not there rests just the same.
        Assert.Equal(Passphrases.Rounds, await Work(people, "Ada", Good));
        Assert.Null(await people.Enter("Ada", Good, By, Stop));
        Assert.Equal(Passphrases.Rounds, await Work(people, "Nobody", Good));
        var log = people.Log.Newest(100);
        Assert.Contains(log, line => line is { What: DoorEvent.Resting, Name: "Ada" });
        Assert.Contains(log, line => line is { What: DoorEvent.Resting, Name: "" });
        Assert.DoesNotContain(
            "Nobody",
            await File.ReadAllTextAsync(Path.Combine(_folder, SignInLog.FileName), Stop),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task An_old_hash_is_made_anew_when_its_owner_signs_in()
    {
        await Keep(OldHash(Good), "Old");
        using var people = new People(_folder, TimeProvider.System);
        Assert.Null(await people.Enter("Old", "another one", By, Stop));
        Assert.Equal(100_000, Passphrases.RoundsOf(people.Find("Old")!.Passphrase));
        Assert.NotNull(await people.Enter("old", Good, By, Stop));
        Assert.Equal(Passphrases.Rounds, Passphrases.RoundsOf(people.Find("Old")!.Passphrase));
        Assert.NotNull(await people.Enter("Old", Good, By, Stop));
    }

    [Fact]
    public async Task The_same_letters_from_another_keyboard_are_the_same_passphrase()
    {
        using var people = new People(_folder, TimeProvider.System);
        Assert.Null(await people.Add("Ada", Role.Owner, "grüne Gurken hängen", By, Stop));
        Assert.NotNull(await people.Enter("Ada", "gru\u0308ne Gurken ha\u0308ngen", By, Stop));
    }

    private static async Task<long> Work(People people, string name, string passphrase)
    {
        var before = people.Passphrases.Work;
        await people.Enter(name, passphrase, By, Stop);
        return people.Passphrases.Work - before;
    }

    private static string OldHash(string passphrase) =>
        new PasswordHasher<string>(Options.Create(new PasswordHasherOptions { IterationCount = 100_000 })).HashPassword(
            "",
            passphrase
        );

    private Task Keep(string hash, string name)
    {
        var file = new PeopleFile(_folder, TimeProvider.System);
        file.Change(all => [.. all, new Person(People.NewId(), name, Role.Owner, hash, DateTimeOffset.UtcNow, [], [])]);
        return Task.CompletedTask;
    }
}
