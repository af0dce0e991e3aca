using System.Runtime.InteropServices;

namespace Fretlore.Cli;

/// <summary>The user's wish to stop (Ctrl+C, or the system's): work ends where it leaves nothing half done. Disposed, the usual way of ending holds again.</summary>
internal sealed class StopSignal : IDisposable
{
    private readonly CancellationTokenSource source = new();
    private readonly PosixSignalRegistration interrupt;
    private readonly PosixSignalRegistration end;

    public StopSignal()
    {
        interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        end = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
    }

    public CancellationToken Token => source.Token;

    public void Dispose()
    {
        interrupt.Dispose();
        end.Dispose();
        source.Dispose();
    }

    private void Stop(PosixSignalContext signal)
    {
        signal.Cancel = true;
        source.Cancel();
    }
}
