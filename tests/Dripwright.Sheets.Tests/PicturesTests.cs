using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Tests;

public sealed class PicturesTests
{
    /// <summary>The README shows what the program draws today, not what it drew once.</summary>
    [Theory]
    [InlineData("front-view")]
    [InlineData("plan-view")]
    public void The_pictures_of_the_readme_are_the_programs_own(string name)
    {
        string root = Root();
        byte[] text = File.ReadAllBytes(Path.Combine(root, "demo", "school", "greenhouse.rig.json"));
        RigReading reading = RigReader.Read(text, "greenhouse.rig.json", PartsCatalogue.Default);
        Plan plan = Planner.Of(reading.Rig!, reading.Assumed, PartsCatalogue.Default);
        var files = BuildPack.Write(plan, Encoding.UTF8.GetString(text), new BuildPackOptions { Paper = Paper.Letter });
        byte[] drawn = files.First(f => f.Key.EndsWith($"{name}.svg", StringComparison.Ordinal)).Value;
        string file = Path.Combine(root, "docs", "pictures", $"{name}.svg");
        if (!File.Exists(file) || !File.ReadAllBytes(file).AsSpan().SequenceEqual(drawn))
        {
            string received = Path.ChangeExtension(file, ".received.svg");
            File.WriteAllBytes(received, drawn);
            Assert.Fail($"The picture is out of step. To accept the new one: mv {received} {file}");
        }
    }

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Dripwright.slnx")))
        {
            folder = folder.Parent;
        }

        return folder!.FullName;
    }
}
