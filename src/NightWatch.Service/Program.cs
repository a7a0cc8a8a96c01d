using NightWatch.Service.Commands;
using NightWatch.Service.Terminal;
using NodaTime;

#pragma warning disable RS0030 // The composition root is the one place that names the system clock.
IClock clock = SystemClock.Instance;
#pragma warning restore RS0030

await using var output = new BufferedStream(Console.OpenStandardOutput(), 64 * 1024);
return await CommandLine.RunAsync(args, new Shell(output, Console.Error, clock, Environment.CurrentDirectory));
