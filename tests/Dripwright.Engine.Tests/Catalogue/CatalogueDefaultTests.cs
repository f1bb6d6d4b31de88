using System.Reflection;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Tests.Catalogue;

public sealed class CatalogueDefaultTests
{
    private static readonly PartsCatalogue s_parts = PartsCatalogue.Default;

    [Fact]
    public void Every_part_assumed_in_a_rig_stands_in_its_group()
    {
        var assumed =
            from type in typeof(Rig).Assembly.GetTypes()
            where type.Namespace == typeof(Rig).Namespace
            from property in type.GetProperties()
            let part = property.GetCustomAttribute<PartKeyAttribute>()
            where part is not null
            from key in new[] { part.Us, part.Metric }
            where key.Length > 0
            select (part.PartGroup, key);
        foreach (var (group, key) in assumed)
        {
            var found = group switch
            {
                PartGroup.Pipes => s_parts.Pipes.ContainsKey(key),
                PartGroup.Tubes => s_parts.Tubes.ContainsKey(key),
                PartGroup.Pots => s_parts.Pots.ContainsKey(key),
                PartGroup.Tanks => s_parts.Tanks.ContainsKey(key),
                PartGroup.Emitters => s_parts.Emitters.ContainsKey(key),
                PartGroup.Strainers => s_parts.Strainers.ContainsKey(key),
                PartGroup.Pumps => s_parts.Pumps.ContainsKey(key),
                PartGroup.Outlets => s_parts.Outlets.ContainsKey(key),
                PartGroup.Acids => key == "none",
                PartGroup.Targets => key == "usual",
                PartGroup.Crops => key == "none",
                PartGroup.Media => s_parts.Media.ContainsKey(key),
                PartGroup.Wires => key == "none" || s_parts.Wires.ContainsKey(key),
                _ => s_parts.TryFind(key) is not null,
            };
            Assert.True(found, $"{group} has no {key}");
        }
    }
}
