using System.Text.Json;
using System.Text.RegularExpressions;

namespace Dripwright.Program.Tests.Packaging;

public sealed class PublishTests
{
    private static readonly string[] s_platforms = ["linux-x64", "linux-arm64", "win-x64", "osx-arm64", "osx-x64"];

    [Fact]
    public void The_lock_file_covers_every_platform_that_is_published()
    {
        using var locked = JsonDocument.Parse(Repository.Text("src/Dripwright/packages.lock.json"));
        var covered = locked.RootElement.GetProperty("dependencies").EnumerateObject().Select(one => one.Name).ToList();
        foreach (var platform in s_platforms)
        {
            Assert.Contains($"net10.0/{platform}", covered);
        }
    }

    [Fact]
    public void Script_and_project_name_the_same_platforms()
    {
        var project = Regex
            .Match(
                Repository.Text("src/Dripwright/Publishing.targets"),
                "<RuntimeIdentifiers>(.*?)</RuntimeIdentifiers>",
                RegexOptions.None,
                TimeSpan.FromSeconds(1)
            )
            .Groups[1]
            .Value.Split(';');
        Assert.Equal(s_platforms, project);
        Assert.Contains($"all=({string.Join(' ', s_platforms)})", Repository.Text("publish"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_script_is_sound_and_refuses_a_platform_that_it_does_not_know()
    {
        var script = Path.Combine(Repository.Root, "publish");
        Assert.Equal(0, (await BuiltProgram.End(BuiltProgram.StartOf("bash", "-n", script))).Exit);
        var (exit, _, error) = await BuiltProgram.End(BuiltProgram.StartOf("bash", script, "dos-x64"));
        Assert.Equal(2, exit);
        Assert.Contains("found \"dos-x64\"; expected one of: linux-x64", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_unit_of_the_service_is_one_that_systemd_takes()
    {
        if (!File.Exists("/usr/bin/systemd-analyze"))
        {
            Assert.Skip("systemd-analyze is not on this machine.");
        }

        // It looks for the program where the unit says it is; one that is surely there stands in for it.
        var unit = Repository.Text("packaging/dripwright.service");
        Assert.Contains("ExecStart=/opt/dripwright/dripwright open --service\n", unit, StringComparison.Ordinal);
        var folder = Directory.CreateTempSubdirectory("dripwright-unit-").FullName;
        try
        {
            var file = Path.Combine(folder, "dripwright.service");
            await File.WriteAllTextAsync(
                file,
                unit.Replace("/opt/dripwright/dripwright", "/bin/true", StringComparison.Ordinal),
                TestContext.Current.CancellationToken
            );
            var (exit, said, error) = await BuiltProgram.End(
                BuiltProgram.StartOf("systemd-analyze", "verify", "--man=no", file)
            );
            Assert.Equal("", said + error);
            Assert.Equal(0, exit);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
