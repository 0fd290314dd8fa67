using System.Globalization;
using System.Net;
using System.Net.Sockets;
using MarkReader.Quantities;

namespace MarkReader.Service.Settings;

/// <summary>The address to listen on; of this machine only.</summary>
internal static class Listening
{
    /// <summary>The address for a port asked for, or for the usual port while it is free, else for any free one.</summary>
    public static string Address(int? port) =>
        string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port ?? (IsFree(ServiceSettings.UsualPort) ? ServiceSettings.UsualPort : 0)}");

    public static Failure Taken(int? port) => new(
        ServiceFailures.PortTaken,
        string.Create(CultureInfo.InvariantCulture, $"port {port ?? ServiceSettings.UsualPort} is taken by another program"),
        $"give another one with --port or {ServiceSettings.PortVariable}, 0 for any free one");

    private static bool IsFree(int port)
    {
        try
        {
            using TcpListener listener = new(IPAddress.Loopback, port);
            listener.Start();
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
