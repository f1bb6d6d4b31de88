namespace Dripwright.Engine.Water;

/// <summary>What a link is, for messages; its behaviour is its law's.</summary>
public enum LinkKind
{
    /// <summary>A pipe.</summary>
    Pipe,

    /// <summary>A pump.</summary>
    Pump,

    /// <summary>A valve that is set by hand.</summary>
    Valve,

    /// <summary>A valve that water shuts when it turns back.</summary>
    CheckValve,
}
