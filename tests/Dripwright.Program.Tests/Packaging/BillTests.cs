using System.Text.Json.Nodes;
using Dripwright.Packaging;

namespace Dripwright.Program.Tests.Packaging;

public sealed class BillTests
{
    [Fact]
    public void The_bill_lists_what_is_in_the_folder_and_what_the_tool_cannot_know_and_nothing_else()
    {
        var folder = Directory.CreateTempSubdirectory("dripwright-bill-").FullName;
        var file = Path.Combine(folder, "bill.json");
        File.WriteAllText(
            file,
            """
            {
              "bomFormat": "CycloneDX", "metadata": { "component": { "bom-ref": "Dripwright@1" } },
              "components": [
                { "bom-ref": "pkg:nuget/A@1", "name": "A", "version": "1" },
                { "bom-ref": "pkg:nuget/OtherSystem@1", "name": "OtherSystem", "version": "1" },
                { "bom-ref": "pkg:nuget/B@2", "name": "B", "version": "2", "scope": "excluded" }
              ],
              "dependencies": [
                { "ref": "Dripwright@1", "dependsOn": ["pkg:nuget/OtherSystem@1"] },
                { "ref": "pkg:nuget/OtherSystem@1", "dependsOn": ["pkg:nuget/A@1"] },
                { "ref": "pkg:nuget/A@1", "dependsOn": ["pkg:nuget/B@2"] }
              ]
            }
            """
        );
        BillOfMaterials.Complete(
            file,
            [new Shipped("A", "1"), new Shipped("B", "2")],
            [new Committed("kernel", "3", "Apache-2.0", "LICENSE", "pkg:npm/kernel@3")],
            folder
        );
        var bill = JsonNode.Parse(File.ReadAllText(file))!;
        Assert.Equal(["A", "B", "kernel"], bill["components"]!.AsArray().Select(one => (string)one!["name"]!));
        Assert.All(bill["components"]!.AsArray(), one => Assert.Equal("required", (string)one!["scope"]!));
        Assert.Equal(["pkg:npm/kernel@3", "pkg:nuget/A@1"], Needs("Dripwright@1"));
        Assert.Equal(["pkg:nuget/B@2"], Needs("pkg:nuget/A@1"));
        Directory.Delete(folder, recursive: true);

        IEnumerable<string> Needs(string name) =>
            bill["dependencies"]!.AsArray().Single(one => (string)one!["ref"]! == name)!["dependsOn"]!
                .AsArray()
                .Select(one => (string)one!);
    }

    [Fact]
    public void Every_work_of_others_in_the_repository_has_its_licence_and_stands_in_the_notice()
    {
        var notice = Repository.Text("NOTICE");
        var all = Committed.Read(Repository.Root);
        Assert.Equal(3, all.Count);
        Assert.All(
            all,
            one =>
            {
                Assert.True(File.Exists(Path.Combine(Repository.Root, one.Text)), one.Text);
                Assert.Contains(one.Text, notice, StringComparison.Ordinal);
            }
        );
    }
}
