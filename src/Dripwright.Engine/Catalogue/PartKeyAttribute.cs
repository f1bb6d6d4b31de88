using Dripwright.Engine.Files;

namespace Dripwright.Engine.Catalogue;

/// <summary>The key of a part, salt, target or crop of the catalogue.</summary>
/// <param name="group">The group in which it must stand.</param>
/// <param name="us">Key assumed in a file that prefers US units; empty where the field must be given.</param>
/// <param name="metric">Key assumed in a file that prefers metric units.</param>
public sealed class PartKeyAttribute(PartGroup group, string us = "", string metric = "") : KeyAttribute(us, metric)
{
    /// <summary>The group in which it must stand.</summary>
    public PartGroup PartGroup { get; } = group;

    /// <inheritdoc/>
    public override string GroupName => PartGroup.ToString();

    /// <inheritdoc/>
    public override string Group =>
        PartGroup switch
        {
            PartGroup.Pipes => "a pipe or hose of the catalogue",
            PartGroup.Tubes => "a stand tube of the catalogue",
            PartGroup.Pots => "a pot of the catalogue",
            PartGroup.Tanks => "a tank of the catalogue",
            PartGroup.Emitters => "an emitter of the catalogue",
            PartGroup.Strainers => "a strainer of the catalogue",
            PartGroup.Pumps => "a pump of the catalogue",
            PartGroup.Outlets => "a pot outlet of the catalogue",
            PartGroup.Wires => "a crop wire of the catalogue",
            PartGroup.Sundries => "the key of a row under \"sundries\"",
            PartGroup.Salts => "a salt of the catalogue",
            PartGroup.Acids => "an acid of the catalogue",
            PartGroup.Targets => "a target of the catalogue",
            PartGroup.Crops => "a crop of the catalogue",
            PartGroup.Media => "a medium of the catalogue",
            PartGroup.Any => "a part of the catalogue",
            _ => throw new InvalidOperationException($"{PartGroup} is not a group."),
        };
}
