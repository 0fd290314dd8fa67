using System.Net;
using System.Net.Sockets;

namespace MarkReader.Service.Hosting.Phones;

/// <summary>The far end of a connection, as its socket says; never as a header says.</summary>
public static class Peer
{
    /// <summary>An IPv4 address as such also where a socket of IPv6 has it, and without the number of the interface.</summary>
    public static IPAddress Plain(IPAddress address) => address switch
    {
        { IsIPv4MappedToIPv6: true } => address.MapToIPv4(),
        { AddressFamily: AddressFamily.InterNetworkV6 } => new(address.GetAddressBytes()),
        _ => address,
    };

    /// <summary>Whether it is this machine over loopback; an unknown address is not.</summary>
    public static bool IsLoopback(IPAddress? address) => address is not null && IPAddress.IsLoopback(Plain(address));

    /// <summary>What wrong keys are counted by: the address, of IPv6 its first 64 bits, as one device has all the others.</summary>
    public static IPAddress Counted(IPAddress? address)
    {
        IPAddress plain = Plain(address ?? IPAddress.None);
        if (plain.AddressFamily != AddressFamily.InterNetworkV6)
            return plain;
        byte[] bytes = plain.GetAddressBytes();
        bytes.AsSpan(8).Clear();
        return new(bytes);
    }
}
