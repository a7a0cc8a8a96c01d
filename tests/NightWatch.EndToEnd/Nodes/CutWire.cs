using System.Net;
using System.Net.Sockets;

namespace NightWatch.EndToEnd.Nodes;

/// <summary>
/// The wire between one process and its database. Cut, it is as a network is that lost its way: nothing comes through and nobody is told.
/// Mended, what was sent meanwhile arrives, as TCP sees to it.
/// </summary>
internal sealed class CutWire : IAsyncDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource over = new();
    private readonly int target;
    private readonly Task serving;
    private volatile TaskCompletionSource whole = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public CutWire(int target)
    {
        this.target = target;
        whole.SetResult();
        listener.Start();
        serving = ServeAsync();
    }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    public void Cut() => whole = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);

    public void Mend() => whole.TrySetResult();

    public async ValueTask DisposeAsync()
    {
        await over.CancelAsync();
        await serving;
        // Not before: to accept on a listener that was stopped between two clients is a fault of its own.
        listener.Stop();
        over.Dispose();
    }

    private async Task ServeAsync()
    {
        var wires = new List<Task>();
        try
        {
            while (true) wires.Add(JoinAsync(await listener.AcceptTcpClientAsync(over.Token)));
        }
        catch (Exception fault) when (fault is OperationCanceledException or SocketException)
        {
        }

        await Task.WhenAll(wires);
    }

    private async Task JoinAsync(TcpClient near)
    {
        using var far = new TcpClient();
        using var owned = near;
        try
        {
            await whole.Task.WaitAsync(over.Token);
            await far.ConnectAsync(IPAddress.Loopback, target, over.Token);
            await Task.WhenAny(PumpAsync(near.GetStream(), far.GetStream()), PumpAsync(far.GetStream(), near.GetStream()));
        }
        catch (Exception fault) when (fault is OperationCanceledException or SocketException or IOException)
        {
        }
    }

    private async Task PumpAsync(NetworkStream from, NetworkStream to)
    {
        var some = new byte[16 * 1024];
        try
        {
            while (await from.ReadAsync(some, over.Token) is > 0 and var read)
            {
                await whole.Task.WaitAsync(over.Token);
                await to.WriteAsync(some.AsMemory(0, read), over.Token);
            }
        }
        catch (Exception fault) when (fault is OperationCanceledException or SocketException or IOException)
        {
        }
    }
}
