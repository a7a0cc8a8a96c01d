using System.CommandLine;
using System.Text;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Service.Terminal;
using NightWatch.Store.Watches;
using NightWatch.Words.Documents;

namespace NightWatch.Service.Commands.Keeping;

/// <summary>The saved sites: add, list, show, remove.</summary>
internal static class SiteCommand
{
    public static Command Create(Shell shell, Option<string?> config) => new("site", "The saved sites.")
    {
        Add(shell, config), List(shell, config), Show(shell, config), Remove(shell, config),
    };

    private static Command Add(Shell shell, Option<string?> config)
    {
        var file = new Argument<string>("file") { Description = "A site file: the \"site\" object of a watch file." };
        var command = new Command("add", "Saves a site; one with the same id is replaced, for every watch on it.") { file };
        command.SetAction(async (given, stop) =>
        {
            var path = given.GetRequiredValue(file);
            var site = KeptFiles.ValueOf(SiteFile.Read(Encoding.UTF8.GetString(shell.ReadFile(path, "file")), path));
            await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
            await store.Sites.PutAsync(site, shell.Clock.GetCurrentInstant(), stop);
            shell.Say($"Site {site.Id}, {site.Name}, is kept.");
            return Exit.Ok;
        });
        return command;
    }

    private static Command List(Shell shell, Option<string?> config)
    {
        var json = Given.Json();
        var command = new Command("list", "All sites.") { json };
        command.SetAction(async (given, stop) =>
        {
            await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
            var sites = await store.Sites.ListAsync(stop);
            if (given.GetValue(json)) Document.Write(shell.Output, sites);
            else KeptTables.Sites(shell, sites);
            return Exit.Ok;
        });
        return command;
    }

    private static Command Show(Shell shell, Option<string?> config)
    {
        var id = Id();
        var json = Given.Json();
        var command = new Command("show", "One site, as its file.") { id, json };
        command.SetAction(
            async (given, stop) =>
            {
                await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
                Document.Write(
                    shell.Output,
                    await store.Sites.FindAsync(given.GetRequiredValue(id), stop) ?? throw Unknown(given.GetRequiredValue(id)));
                return Exit.Ok;
            });
        return command;
    }

    private static Command Remove(Shell shell, Option<string?> config)
    {
        var id = Id();
        var command = new Command("remove", "Removes a site that no watch stands on.") { id };
        command.SetAction(async (given, stop) =>
        {
            await using var store = await KeptStore.OpenAsync(shell, given.GetValue(config), stop);
            var name = given.GetRequiredValue(id);
            switch (await store.Sites.RemoveAsync(name, stop))
            {
                case SiteRemoval.NotFound: throw Unknown(name);
                case SiteRemoval.InUse: throw new BadInputException($"id: a watch stands on site '{name}'; remove the watch first.");
            }

            shell.Say($"Site {name} is removed.");
            return Exit.Ok;
        });
        return command;
    }

    private static Argument<string> Id() => new("id") { Description = "The site's id." };

    private static BadInputException Unknown(string id) => new($"id: there is no site '{id}'; 'site list' names them.");
}
