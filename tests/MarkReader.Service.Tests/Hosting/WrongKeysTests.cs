using System.Net;
using MarkReader.Service.Hosting.Phones;

namespace MarkReader.Service.Tests.Hosting;

public sealed class WrongKeysTests
{
    private static readonly IPAddress s_other = IPAddress.Parse("192.0.2.1");

    [Fact]
    public void The_wait_is_the_address_s_own_and_ends()
    {
        Clock clock = new();
        WrongKeys wrong = new(clock);
        for (int i = 0; i < WrongKeys.Most; i++)
            wrong.Add(IPAddress.Loopback);
        Assert.True(wrong.IsOut(IPAddress.Loopback));
        Assert.False(wrong.IsOut(s_other));
        clock.Now += WrongKeys.Window;
        Assert.False(wrong.IsOut(IPAddress.Loopback));
    }

    [Fact]
    public void Addresses_beyond_those_that_are_counted_share_one_count()
    {
        Clock clock = new();
        WrongKeys wrong = new(clock);
        for (int i = 0; i < WrongKeys.MostAddresses + WrongKeys.Most; i++)
            wrong.Add(new IPAddress(0x0A00_0000L + i));
        Assert.True(wrong.IsOut(s_other));
        clock.Now += WrongKeys.Window;
        wrong.Add(s_other);
        Assert.False(wrong.IsOut(s_other));
    }

    [Theory]
    [InlineData("::ffff:192.0.2.1", "192.0.2.1")]
    [InlineData("2001:db8::1:2:3:4", "2001:db8::")]
    public void One_device_is_counted_once(string address, string counted) =>
        Assert.Equal(IPAddress.Parse(counted), Peer.Counted(IPAddress.Parse(address)));

    private sealed class Clock : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = DateTimeOffset.UnixEpoch;

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
