namespace Dripwright.Engine.Printed;

/// <summary>A fitting was asked for with parameters from which it cannot be made.</summary>
/// <param name="fault">The fault.</param>
public sealed class PrintException(PrintFault fault) : Exception(fault.ToString())
{
    /// <summary>The fault.</summary>
    public PrintFault Fault { get; } = fault;
}
