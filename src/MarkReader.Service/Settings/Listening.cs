using System.Globalization;
using System.Net;
using System.Net.Sockets;
using MarkReader.Quantities;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Settings;

/// <summary>The addresses to listen on: of this machine only, or all that it has, where phones are to come in.</summary>
internal static class Listening
{
    /// <summary>The address for a port asked for, or for the usual port while it is free, else for any free one.</summary>
    public static string Address(ServiceSettings settings)
    {
        int port = settings.Port ?? (IsFree(ServiceSettings.UsualPort, settings.Phones) ? ServiceSettings.UsualPort : 0);
        return string.Create(CultureInfo.InvariantCulture, $"http://{(settings.Phones ? "*" : "127.0.0.1")}:{port}");
    }

    public static Failure Taken(int? port) => new(
        ServiceFailures.PortTaken,
        ServiceTexts.Say("listening.portTakenByAnotherProgram", port ?? ServiceSettings.UsualPort),
        ServiceTexts.Word("listening.giveAnotherOneWithPort", ServiceSettings.PortVariable));

    private static bool IsFree(int port, bool everywhere)
    {
        try
        {
            using TcpListener listener = everywhere ? TcpListener.Create(port) : new(IPAddress.Loopback, port);
            listener.Start();
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
