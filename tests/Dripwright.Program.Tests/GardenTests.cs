using Dripwright.Store;

namespace Dripwright.Program.Tests;

public sealed class GardenTests : IDisposable
{
    private readonly Scratch _scratch = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Place => _scratch.At("yard.dripwright");

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task A_rig_is_imported_and_exported_to_the_letter()
    {
        var into = await Call.Of("import", Repository.School, "--garden", Place);
        Assert.Equal((Exit.Good, ""), (into.Exit, into.Error));
        var name = await OnlyName();
        var print = await Call.Of("export", "-", "--rig", name, "--garden", Place);
        Assert.Equal(await File.ReadAllTextAsync(Repository.School, Stop), print.Out);
        var missing = await Call.Of("export", "-", "--rig", "Nowhere", "--garden", Place);
        Assert.Equal(Exit.WrongCall, missing.Exit);
        Assert.Contains($"\"{name}\"", missing.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_garden_is_exported_and_imported_by_another()
    {
        await Call.Of("import", Repository.School, "--garden", Place);
        await Call.Of("import", Repository.FoodBank, "--garden", Place);
        var file = _scratch.At("yard.garden.json");
        var exported = await Call.Of("export", file, "--garden", Place);
        Assert.Equal((Exit.Good, ""), (exported.Exit, exported.Error));
        Assert.Equal(Exit.NotWritten, (await Call.Of("export", file, "--garden", Place)).Exit);
        var other = _scratch.At("other.dripwright");
        var imported = await Call.Of(new Setting { Variables = { ["DRIPWRIGHT_GARDEN"] = other } }, "import", file);
        Assert.Equal((Exit.Good, ""), (imported.Exit, imported.Error));
        Assert.Contains("2 rigs", imported.Out, StringComparison.Ordinal);
        await using var garden = await Garden.OpenAsync(GardenPlace.File(other), stop: Stop);
        Assert.All(await garden.RigsAsync(Stop), rig => Assert.Equal(1, rig.Revisions));
    }

    [Fact]
    public async Task A_backup_is_restored_and_what_it_replaces_stays_beside()
    {
        await Call.Of("import", Repository.School, "--garden", Place);
        var copy = _scratch.At("copy");
        var written = await Call.Of("backup", copy, "--garden", Place);
        Assert.Equal((Exit.Good, ""), (written.Exit, written.Error));
        await Call.Of("import", Repository.FoodBank, "--garden", Place);
        var restored = await Call.Of("restore", copy, "--garden", Place);
        Assert.Equal((Exit.Good, ""), (restored.Exit, restored.Error));
        await OnlyName();
        var aside = Assert.Single(_scratch.Names, name => name.Contains(".replaced-", StringComparison.Ordinal));
        Assert.Contains(aside, restored.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_done_is_told_in_one_line_and_makes_no_empty_garden()
    {
        var letter = _scratch.Write("letter.txt", "Dear all,");
        foreach (
            var (exit, words) in new (int, string[])[]
            {
                (Exit.FaultyFile, ["backup", _scratch.At("copy"), "--garden", Place]),
                (Exit.FaultyFile, ["export", "-", "--garden", Place]),
                (Exit.FaultyFile, ["restore", letter, "--garden", Place]),
                (Exit.FaultyFile, ["restore", _scratch.At("nothing"), "--garden", Place]),
                (Exit.FaultyFile, ["backup", _scratch.At("copy"), "--garden", letter]),
                (Exit.WrongCall, ["backup", "--garden", Place]),
                (Exit.WrongCall, ["backup", "--gardn", Place]),
            }
        )
        {
            var call = await Call.Of(words);
            Assert.True(call.Exit == exit, $"{string.Join(' ', words)}: {call.Error}");
            Assert.Empty(call.Out);
            Assert.NotEmpty(call.Error);
        }

        Assert.Equal(["letter.txt"], _scratch.Names);
    }

    [Fact]
    public async Task A_rig_with_faults_is_not_imported()
    {
        var rig = _scratch.Write("bad.rig.json", """{ "rows": [ { "spacing": "1 foots" } ] }""");
        var call = await Call.Of("import", rig, "--garden", Place);
        Assert.Equal(Exit.FaultyFile, call.Exit);
        Assert.Contains("rows[0].spacing", call.Error, StringComparison.Ordinal);
        var broken = _scratch.Write("yard.garden.json", "{ \"gardenFormat\": 1,\n \"setings\": {} }");
        call = await Call.Of("import", broken, "--garden", Place);
        Assert.Equal(Exit.FaultyFile, call.Exit);
        Assert.Contains("line 2", call.Error, StringComparison.Ordinal);
    }

    private async Task<string> OnlyName()
    {
        await using var garden = await Garden.OpenAsync(GardenPlace.File(Place), stop: Stop);
        return Assert.Single(await garden.RigsAsync(Stop)).Name;
    }
}
