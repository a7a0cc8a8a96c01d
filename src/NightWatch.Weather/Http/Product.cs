namespace NightWatch.Weather.Http;

/// <summary>The program as it names itself to hosts: its version stands in Directory.Build.props and nowhere else.</summary>
public static class Product
{
    /// <summary>"NightWatch/1.2.3".</summary>
    public static string Token { get; } = "NightWatch/" + typeof(Product).Assembly.GetName().Version!.ToString(3);
}
