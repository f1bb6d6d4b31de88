using Dripwright.Packaging;

namespace Dripwright.Program.Tests.Packaging;

public sealed class NativeLibraryTests
{
    [Fact]
    public void The_natives_of_this_build_are_told_by_their_own_heads()
    {
        // The build for any platform has the natives of all, each in a folder that names its platform.
        var all = Path.Combine(AppContext.BaseDirectory, "runtimes");
        foreach (var platform in new[] { "linux-x64", "linux-arm64", "win-x64", "osx-arm64", "osx-x64" })
        {
            var here = NativeLibrary.Of(Path.Combine(all, platform, "native"));
            Assert.NotEmpty(here);
            Assert.All(here, one => Assert.True(one.IsFor(platform), $"{one} in {platform}"));
        }

        var windows = NativeLibrary.Of(Path.Combine(all, "win-x64", "native"));
        Assert.DoesNotContain(windows, one => one.IsFor("linux-x64"));
        Assert.DoesNotContain(
            NativeLibrary.Of(Path.Combine(all, "linux-arm64", "native")),
            one => one.IsFor("linux-x64")
        );
    }

    [Fact]
    public void An_assembly_of_dotnet_is_no_machine_code()
    {
        var folder = Directory.CreateTempSubdirectory("dripwright-native-").FullName;
        File.Copy(typeof(NativeLibraryTests).Assembly.Location, Path.Combine(folder, "one.dll"));
        File.WriteAllText(Path.Combine(folder, "short.so"), "\x7fELF");
        Assert.Empty(NativeLibrary.Of(folder));
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void What_a_build_cannot_do_is_told_by_the_library_that_it_lacks()
    {
        var all = NativeLibrary.Of(Path.Combine(AppContext.BaseDirectory, "runtimes", "linux-x64", "native"));
        Assert.Empty(Feature.LackingIn(all));
        var without = all.Where(one => !one.Name.StartsWith("ClearScript", StringComparison.Ordinal)).ToList();
        var lacking = Assert.Single(Feature.LackingIn(without));
        Assert.Equal("printed parts", lacking.Name);
        Assert.Contains(lacking.Without, ReadMe.Of("linux-arm64", [lacking]), StringComparison.Ordinal);
        Assert.DoesNotContain("cannot do", ReadMe.Of("linux-x64", []), StringComparison.Ordinal);
    }
}
