namespace Dripwright.Program.Tests;

public sealed class CureTests
{
    private const string NoLid = """{ "rows": [ { "pots": 4 } ], "reservoir": { "lid": false } }""";
    private const string Cure = "reservoir, lid: no → yes";

    [Fact]
    public async Task A_cure_is_listed_then_tried_then_taken_into_the_file()
    {
        using var here = new Scratch();
        var file = Path.Combine(here.Folder, "lid.rig.json");
        await File.WriteAllTextAsync(file, NoLid, TestContext.Current.CancellationToken);
        var listed = await Call.Of("cures", file);
        var line = listed.Out.Split('\n').First(l => l.Contains(Cure, StringComparison.Ordinal));
        var number = line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[0];

        var tried = await Call.Of("cures", file, "--try", number);
        Assert.Contains(Cure, tried.Out, StringComparison.Ordinal);
        Assert.Contains("goes: reservoir: Without a lid", tried.Out, StringComparison.Ordinal);
        Assert.Equal(NoLid, await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));

        Assert.Equal(0, (await Call.Of("cures", file, "--take", number)).Exit);
        Assert.DoesNotContain("Without a lid", (await Call.Of("cures", file)).Out, StringComparison.Ordinal);
        Assert.NotEqual(0, (await Call.Of("cures", file, "--try", "99.1")).Exit);
    }

    [Fact]
    public async Task A_rig_is_made_to_work_in_its_file()
    {
        using var here = new Scratch();
        var file = Path.Combine(here.Folder, "lid.rig.json");
        await File.WriteAllTextAsync(file, NoLid, TestContext.Current.CancellationToken);
        var made = await Call.Of("make-it-work", file, "--take", "fewest");
        Assert.Equal(0, made.Exit);
        Assert.Contains(Cure, made.Out, StringComparison.Ordinal);

        // Nothing that works is changed.
        var again = await Call.Of("make-it-work", file);
        Assert.Equal(0, again.Exit);
        Assert.DoesNotContain(Cure, again.Out, StringComparison.Ordinal);
    }
}
