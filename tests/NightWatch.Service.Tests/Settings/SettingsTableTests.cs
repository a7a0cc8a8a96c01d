using System.Globalization;
using System.Reflection;
using System.Text;
using NightWatch.Delivery.Mail;
using NightWatch.Service.Settings;
using NightWatch.Service.Tests.Documents;

namespace NightWatch.Service.Tests.Settings;

/// <summary>The list of all settings in deploy/settings.md is made from the records that hold them.</summary>
public sealed class SettingsTableTests
{
    private const string Head = """
        # Settings

        Every setting with its default, made from the records that hold them and kept true by `SettingsTableTests`. They stand in
        `appsettings.json` ([an example with all of them](../appsettings.example.json)); any can come from the environment
        (`NIGHTWATCH__MAIL__HOST` sets `Mail:Host`). A service that finds one out of range does not start, and `nightwatch check`
        names every fault.

        """;

    private readonly DocComments comments = new();

    [Fact]
    public void The_list_of_settings_is_what_the_program_reads()
    {
        var text = new StringBuilder(Head);
        foreach (var section in typeof(AllSettings).GetProperties())
        {
            if (section.PropertyType.GetField("Section")?.GetRawConstantValue() is not string name) continue;
            text.Append(CultureInfo.InvariantCulture, $"\n## {name}\n\n");
            Tell(text, name, Activator.CreateInstance(section.PropertyType)!);
        }

        WrittenFile.Same("deploy/settings.md", text.ToString());
    }

    private void Tell(StringBuilder text, string section, object options)
    {
        foreach (var property in options.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(one => one.CanWrite))
        {
            var value = property.GetValue(options);
            if (value is DkimOptions inner)
            {
                Tell(text, $"{section}:{property.Name}", inner);
                continue;
            }

            var said = comments.Of(property);
            Assert.True(said.Length > 0, $"{section}:{property.Name} does not say what it is.");
            var usual = value switch
            {
                "" or null => "empty",
                bool on => on ? "true" : "false",
                _ => Convert.ToString(value, CultureInfo.InvariantCulture),
            };
            text.Append(WrittenFile.Item($"`{section}:{property.Name}` ({usual}): {said}"));
        }
    }
}
