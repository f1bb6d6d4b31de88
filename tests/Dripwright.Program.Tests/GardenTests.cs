using Dripwright.Store;

namespace Dripwright.Program.Tests;

public sealed class GardenTests : IDisposable
{
    private readonly Scratch _scratch = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Place => _scratch.At("yard.dripwright");

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task A_rig_is_taken_in_and_handed_out_to_the_letter()
    {
        var into = await Call.Of("take-in", Repository.School, "--garden", Place);
        Assert.Equal((Exit.Good, ""), (into.Exit, into.Error));
        var name = await OnlyName();
        var print = await Call.Of("hand-out", "-", "--rig", name, "--garden", Place);
        Assert.Equal(await File.ReadAllTextAsync(Repository.School, Stop), print.Out);
        var missing = await Call.Of("hand-out", "-", "--rig", "Nowhere", "--garden", Place);
        Assert.Equal(Exit.WrongCall, missing.Exit);
        Assert.Contains($"\"{name}\"", missing.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_garden_is_handed_out_and_taken_in_by_another()
    {
        await Call.Of("take-in", Repository.School, "--garden", Place);
        await Call.Of("take-in", Repository.FoodBank, "--garden", Place);
        var file = _scratch.At("yard.garden.json");
        var handed = await Call.Of("hand-out", file, "--garden", Place);
        Assert.Equal((Exit.Good, ""), (handed.Exit, handed.Error));
        Assert.Equal(Exit.NotWritten, (await Call.Of("hand-out", file, "--garden", Place)).Exit);
        var other = _scratch.At("other.dripwright");
        var taken = await Call.Of(new Setting { Variables = { ["DRIPWRIGHT_GARDEN"] = other } }, "take-in", file);
        Assert.Equal((Exit.Good, ""), (taken.Exit, taken.Error));
        Assert.Contains("2 rigs", taken.Out, StringComparison.Ordinal);
        await using var garden = await Garden.OpenAsync(GardenPlace.File(other), stop: Stop);
        Assert.All(await garden.RigsAsync(Stop), rig => Assert.Equal(1, rig.Revisions));
    }

    [Fact]
    public async Task A_kept_copy_comes_back_and_what_it_replaces_stays_beside()
    {
        await Call.Of("take-in", Repository.School, "--garden", Place);
        var copy = _scratch.At("copy");
        var kept = await Call.Of("keep", copy, "--garden", Place);
        Assert.Equal((Exit.Good, ""), (kept.Exit, kept.Error));
        await Call.Of("take-in", Repository.FoodBank, "--garden", Place);
        var back = await Call.Of("bring-back", copy, "--garden", Place);
        Assert.Equal((Exit.Good, ""), (back.Exit, back.Error));
        await OnlyName();
        var aside = Assert.Single(_scratch.Names, name => name.Contains(".replaced-", StringComparison.Ordinal));
        Assert.Contains(aside, back.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_done_is_told_in_one_line_and_makes_no_empty_garden()
    {
        var letter = _scratch.Write("letter.txt", "Dear all,");
        foreach (
            var (exit, words) in new (int, string[])[]
            {
                (Exit.FaultyFile, ["keep", _scratch.At("copy"), "--garden", Place]),
                (Exit.FaultyFile, ["hand-out", "-", "--garden", Place]),
                (Exit.FaultyFile, ["bring-back", letter, "--garden", Place]),
                (Exit.FaultyFile, ["bring-back", _scratch.At("nothing"), "--garden", Place]),
                (Exit.FaultyFile, ["keep", _scratch.At("copy"), "--garden", letter]),
                (Exit.WrongCall, ["keep", "--garden", Place]),
                (Exit.WrongCall, ["keep", "--gardn", Place]),
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
    public async Task A_rig_with_faults_is_not_taken_in()
    {
        var rig = _scratch.Write("bad.rig.json", """{ "rows": [ { "spacing": "1 foots" } ] }""");
        var call = await Call.Of("take-in", rig, "--garden", Place);
        Assert.Equal(Exit.FaultyFile, call.Exit);
        Assert.Contains("rows[0].spacing", call.Error, StringComparison.Ordinal);
        var broken = _scratch.Write("yard.garden.json", "{ \"gardenFormat\": 1,\n \"setings\": {} }");
        call = await Call.Of("take-in", broken, "--garden", Place);
        Assert.Equal(Exit.FaultyFile, call.Exit);
        Assert.Contains("line 2", call.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Unlock_says_whether_there_was_anything_to_do()
    {
        await Call.Of("take-in", Repository.School, "--garden", Place);
        var call = await Call.Of("unlock", "--garden", Place);
        Assert.Equal(Exit.Good, call.Exit);
        Assert.Contains("is not locked", call.Out, StringComparison.Ordinal);
    }

    private async Task<string> OnlyName()
    {
        await using var garden = await Garden.OpenAsync(GardenPlace.File(Place), stop: Stop);
        return Assert.Single(await garden.RigsAsync(Stop)).Name;
    }
}
