namespace Dripwright.Engine.Catalogue.Salts;

/// <summary>The order in which things go into a tank, the same on the wall sheet and in every correction.</summary>
public static class MixingOrder
{
    /// <summary>Place in the order: acid first, then what may stand in can B, calcium, and chelates at the end.</summary>
    /// <param name="salt">The salt.</param>
    public static int Of(Salt salt)
    {
        ArgumentNullException.ThrowIfNull(salt);
        return salt.Kind == SaltKind.Acid ? 0
            : salt.Kind == SaltKind.Chelate ? 3
            : salt.Part == StockPart.A ? 2
            : 1;
    }
}
