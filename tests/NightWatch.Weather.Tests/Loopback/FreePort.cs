using System.Net;
using System.Net.Sockets;

namespace NightWatch.Weather.Tests.Loopback;

/// <summary>Ports of loopback for what must be told its port beforehand, and for what must find nobody there.</summary>
/// <remarks>
/// They lie below the range from which a system serves who asks for any port, and every connection that goes out (32768 and up on Linux,
/// 49152 elsewhere), so that none of those comes by one between the look and the use.
/// </remarks>
internal static class FreePort
{
    private const int First = 20_000;
    private const int Many = 12_000;

    // Test programs run side by side: each begins somewhere else, and gives none twice.
    private static int last = Random.Shared.Next(Many);

    public static int Take()
    {
        for (var tries = 0; tries < Many; tries++)
        {
            var port = First + Interlocked.Increment(ref last) % Many;
            try
            {
                using var listener = new TcpListener(IPAddress.Loopback, port);
                listener.Start();
                return port;
            }
            catch (SocketException)
            {
                // Somebody else's; the next one.
            }
        }

        throw new InvalidOperationException($"No port from {First} to {First + Many - 1} is free on loopback.");
    }
}
