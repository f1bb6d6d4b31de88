using Dripwright.Store;
using Dripwright.Store.Ground;
using Dripwright.Terminal;

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

    [Fact]
    public async Task The_bin_is_emptied_only_when_somebody_has_seen_what_that_deletes_and_agrees()
    {
        await Call.Of("import", Repository.School, "--garden", Place);
        var nothing = await Call.Of("empty-bin", "--garden", Place);
        Assert.Equal((Exit.Good, ""), (nothing.Exit, nothing.Error));
        Assert.Contains("is empty", nothing.Out, StringComparison.Ordinal);
        var name = await ThrowAway();

        var asked = await Call.Of("empty-bin", "--garden", Place);
        Assert.Equal(Exit.WrongCall, asked.Exit);
        Assert.Contains(name, asked.Out, StringComparison.Ordinal);
        Assert.Contains("--yes", asked.Error, StringComparison.Ordinal);
        var unsure = new Setting { IsTerminal = true, Input = "\n" };
        Assert.Equal(Exit.WrongCall, (await Call.Of(unsure, "empty-bin", "--garden", Place)).Exit);
        Assert.Equal(1, await InBin());

        var sure = new Setting { IsTerminal = true, Input = "yes\n" };
        Assert.Equal(Exit.Good, (await Call.Of(sure, "empty-bin", "--garden", Place)).Exit);
        Assert.Equal(0, await InBin());

        await Call.Of("import", Repository.School, "--garden", Place);
        await ThrowAway();
        var given = await Call.Of("empty-bin", "--yes", "--garden", Place);
        Assert.Equal((Exit.Good, ""), (given.Exit, given.Error));
        Assert.Contains("1 rig is deleted for good", given.Out, StringComparison.Ordinal);
        Assert.Equal(0, await InBin());
    }

    private async Task<string> ThrowAway()
    {
        await using var garden = await Garden.OpenAsync(GardenPlace.File(Place), stop: Stop);
        var rig = Assert.Single(await garden.RigsAsync(Stop));
        await garden.RemoveRigAsync(rig.Id, Stop);
        return rig.Name;
    }

    private async Task<int> InBin()
    {
        await using var garden = await Garden.OpenAsync(GardenPlace.File(Place), stop: Stop);
        return (await garden.BinAsync(Stop)).Count;
    }

    private async Task<string> OnlyName()
    {
        await using var garden = await Garden.OpenAsync(GardenPlace.File(Place), stop: Stop);
        return Assert.Single(await garden.RigsAsync(Stop)).Name;
    }
}
