using System.Net;
using Microsoft.AspNetCore.Http;
using NightWatch.Pages.Security;

namespace NightWatch.Pages.Tests.Security;

public sealed class MetricsReadersTests
{
    [Theory]
    [InlineData("", "127.0.0.1", true)]
    [InlineData("", "::1", true)]
    [InlineData("", "::ffff:127.0.0.1", true)]
    [InlineData("", "192.0.2.7", false)]
    [InlineData("192.0.2.7", "192.0.2.7", true)]
    [InlineData("192.0.2.7", "192.0.2.8", false)]
    [InlineData("192.0.2.0/24, 2001:db8::/32", "192.0.2.200", true)]
    [InlineData("192.0.2.0/24, 2001:db8::/32", "::ffff:192.0.2.200", true)]
    [InlineData("192.0.2.0/24, 2001:db8::/32", "2001:db8::17", true)]
    [InlineData("192.0.2.0/24, 2001:db8::/32", "2001:db9::17", false)]
    public void This_machine_and_those_named_may_read(string setting, string from, bool may) =>
        Assert.Equal(may, new MetricsReaders(setting).May(From(from)));

    [Theory]
    [InlineData("X-Forwarded-For")]
    [InlineData("X-Original-For")]
    [InlineData("Forwarded")]
    [InlineData("X-Forwarded-Host")]
    [InlineData("X-Real-IP")]
    [InlineData("Via")]
    public void Nobody_may_through_a_proxy_which_would_look_like_this_machine(string header)
    {
        var http = From("127.0.0.1");
        http.Request.Headers[header] = "127.0.0.1";

        Assert.False(new MetricsReaders("").May(http));
    }

    [Theory]
    [InlineData("", null)]
    [InlineData("10.0.0.7, fd00::/8", null)]
    [InlineData("10.0.0.7,prometheus.example.org", "prometheus.example.org")]
    [InlineData("10.0.0.0/33", "10.0.0.0/33")]
    public void What_is_no_network_is_named(string setting, string? fault) => Assert.Equal(fault, MetricsReaders.Fault(setting));

    private static DefaultHttpContext From(string address) => new() { Connection = { RemoteIpAddress = IPAddress.Parse(address) } };
}
