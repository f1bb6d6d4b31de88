namespace Dripwright.Terminal;

/// <summary>Waits for what cannot be interrupted itself, such as a person or a pipe.</summary>
internal static class Interruptible
{
    /// <summary>The result of the work, which goes on in the background when the wait is given up.</summary>
    /// <exception cref="OperationCanceledException">A stop was asked for.</exception>
    public static T Wait<T>(Func<T> work, CancellationToken stop) =>
        // There is no synchronisation context here, so blocking the one foreground thread is safe.
        Task.Run(work, stop).WaitAsync(stop).GetAwaiter().GetResult();
}
