using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

public sealed class WithoutSolidsTests
{
    [Fact]
    public async Task Where_the_library_for_solids_is_missing_the_pack_is_made_without_them_and_says_so()
    {
        var folder = Directory.CreateTempSubdirectory("dripwright-bare-").FullName;
        try
        {
            var program = Copy(folder);
            var pack = Path.Combine(folder, "pack");
            var rig = Path.Combine(Packaging.Repository.Root, "demo/school/greenhouse.rig.json");
            var (exit, said, error) = await BuiltProgram.End(
                BuiltProgram.StartOf("dotnet", program, "pack", rig, "-o", pack, "--no-simulation")
            );
            Assert.Equal("", error);
            Assert.Equal(Exit.Good, exit);
            Assert.Contains("cannot compute the shapes of printed parts", said, StringComparison.Ordinal);
            Assert.True(File.Exists(Path.Combine(pack, "build-pack.pdf")));
            Assert.Equal(
                ["not-made.txt"],
                Directory.EnumerateFiles(Path.Combine(pack, "fittings")).Select(Path.GetFileName)
            );

            var (refused, _, why) = await BuiltProgram.End(
                BuiltProgram.StartOf("dotnet", program, "print-parts", rig, "-o", Path.Combine(folder, "parts"))
            );
            Assert.Equal(Exit.NotWritten, refused);
            Assert.StartsWith("This build of Dripwright cannot compute", why, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // The built program without one library; what is large is linked, not copied.
    private static string Copy(string folder)
    {
        var from = AppContext.BaseDirectory;
        foreach (var file in Directory.EnumerateFiles(from))
        {
            File.Copy(file, Path.Combine(folder, Path.GetFileName(file)));
        }

        foreach (var native in Directory.EnumerateDirectories(Path.Combine(from, "runtimes"), "linux-*"))
        {
            var to = Directory.CreateDirectory(Path.Combine(folder, "runtimes", Path.GetFileName(native), "native"));
            var natives = new DirectoryInfo(Path.Combine(native, "native"));
            foreach (var file in natives.Exists ? natives.EnumerateFiles().Select(file => file.FullName) : [])
            {
                if (!Path.GetFileName(file).StartsWith("ClearScript", StringComparison.Ordinal))
                {
                    File.CreateSymbolicLink(Path.Combine(to.FullName, Path.GetFileName(file)), file);
                }
            }
        }

        return Path.Combine(folder, "dripwright.dll");
    }
}
