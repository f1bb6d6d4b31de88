using Dripwright.Store.Ground;

namespace Dripwright.Store.Tests.Places;

/// <summary>Hands out places at which no garden is yet, and clears them away in the end.</summary>
public interface ITestPlaces : IAsyncDisposable
{
    /// <summary>A place of its own for each call.</summary>
    GardenPlace New();
}
