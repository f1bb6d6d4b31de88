using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Rigs;

public sealed class DemoTests
{
    public static TheoryData<string> Files =>
        [
            .. Directory
                .EnumerateFiles(Path.Combine(CommittedText.Root, "demo"), "*.rig.json", SearchOption.AllDirectories)
                .Select(file => Path.GetRelativePath(CommittedText.Root, file).Replace('\\', '/'))
                .Order(StringComparer.Ordinal),
        ];

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_demo_reads_without_a_fault_and_says_that_it_is_invented(string file)
    {
        var bytes = File.ReadAllBytes(Path.Combine(CommittedText.Root, file));
        Assert.Empty(
            RigReader.Read(bytes, file, PartsCatalogue.Default).Faults.Told().Select(fault => fault.ToString())
        );
        Assert.Contains("nvented", System.Text.Encoding.UTF8.GetString(bytes), StringComparison.Ordinal);
    }

    [Fact]
    public void The_two_gardens_and_the_awkward_rigs_are_there() =>
        Assert.Equal(
            [
                "demo/awkward/closed-loop.rig.json",
                "demo/awkward/five-hundred-pots.rig.json",
                "demo/awkward/gravity.rig.json",
                "demo/awkward/level-drain.rig.json",
                "demo/awkward/one-pot.rig.json",
                "demo/awkward/raised-row.rig.json",
                "demo/awkward/undersized.rig.json",
                "demo/food-bank/back-room.rig.json",
                "demo/school/greenhouse.rig.json",
            ],
            Files.Select(row => row.Data)
        );

    [Theory]
    [InlineData("demo/food-bank/back-room.rig.json")]
    [InlineData("demo/school/greenhouse.rig.json")]
    public void The_two_gardens_work(string file)
    {
        var bytes = File.ReadAllBytes(Path.Combine(CommittedText.Root, file));
        var reading = RigReader.Read(bytes, file, PartsCatalogue.Default);
        var plan = Planner.Of(reading.Rig!, reading.Assumed, PartsCatalogue.Default);
        var wrong = plan
            .Findings.Where(finding => finding.Level is not FindingLevel.Note)
            .Select(finding => finding.What);
        Assert.Equal([], wrong);
    }
}
