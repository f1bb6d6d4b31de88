using System.Runtime.InteropServices;
using Dripwright;

using var stop = new CancellationTokenSource();

// The first Ctrl-C asks for a clean end; a second one is left to the system, which ends the program at once.
void Ask(PosixSignalContext context)
{
    context.Cancel = !stop.IsCancellationRequested;
    stop.Cancel();
}

using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Ask);
using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Ask);
return await CommandLine.Run(args, RealConsole.Open(), stop.Token).ConfigureAwait(false);
