namespace Dripwright.Engine.Files;

/// <summary>Knows the keys that a file may name: what stands under them is no business of the reader.</summary>
internal interface IKeys
{
    /// <summary>Whether the field's group has the key.</summary>
    bool Has(KeyAttribute field, string key);

    /// <summary>All keys of the field's group, in the order in which they are shown.</summary>
    IEnumerable<string> Of(KeyAttribute field);
}
