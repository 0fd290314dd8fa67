using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace MarkReader.Service.Hosting.Phones;

/// <summary>The addresses by which phones on the same network reach this machine.</summary>
public static class OwnAddresses
{
    /// <summary>As they are now, those of a network with a router first; of IPv6 only where there is no other.</summary>
    public static IReadOnlyList<string> Now(int port)
    {
        IPAddress[] all = [.. Interfaces().SelectMany(network => network.UnicastAddresses.Select(entry => entry.Address)).Where(IsReachable)];
        IPAddress[] four = [.. all.Where(address => address.AddressFamily == AddressFamily.InterNetwork)];
        return [.. (four.Length > 0 ? four : all).Select(Peer.Plain).Distinct().Select(address => $"http://{new IPEndPoint(address, port)}")];
    }

    private static IEnumerable<IPInterfaceProperties> Interfaces()
    {
        try
        {
            return
            [
                .. NetworkInterface.GetAllNetworkInterfaces()
                    .Where(network => network.OperationalStatus is OperationalStatus.Up or OperationalStatus.Unknown && network.NetworkInterfaceType != NetworkInterfaceType.Loopback)
                    .Select(network => network.GetIPProperties())
                    .OrderBy(network => network.GatewayAddresses.Count == 0),
            ];
        }
        catch (NetworkInformationException)
        {
            return [];
        }
    }

    // 169.254.0.0/16 (RFC 3927) and fe80::/10 hold on one cable only, and no browser takes the latter.
    private static bool IsReachable(IPAddress address) =>
        !IPAddress.IsLoopback(address) && !address.IsIPv6LinkLocal && !(address.GetAddressBytes() is [169, 254, _, _]);
}
