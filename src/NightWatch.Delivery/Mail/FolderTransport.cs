using System.Globalization;
using NightWatch.Store.Outbox;

namespace NightWatch.Delivery.Mail;

/// <summary>Writes each letter as an .eml file. The name is the letter's own, so sending it twice leaves one file.</summary>
internal sealed class FolderTransport(string folder) : IMailTransport
{
    public async Task<Handover> SendAsync(OutboxLetter letter, CancellationToken cancellationToken)
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"{letter.Id:D6}.eml");
        var unfinished = Path.Combine(folder, $".{name}.tmp");
        try
        {
            Directory.CreateDirectory(folder);
            await using (var file = new FileStream(unfinished, FileMode.Create, FileAccess.Write))
            {
                await file.WriteAsync(letter.Mime, CancellationToken.None);
                file.Flush(flushToDisk: true);
            }

            File.Move(unfinished, Path.Combine(folder, name), overwrite: true);
            return new Handover.Accepted(name);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return new Handover.Failed(FailureClass.Server, new(null, null, $"Mail:Folder {folder} cannot be written: {fault.Message}"));
        }
    }

    public Task<string?> CheckAsync(CancellationToken cancellationToken)
    {
        try
        {
            Directory.CreateDirectory(folder);
            var probe = Path.Combine(folder, ".probe.tmp");
            File.WriteAllText(probe, "");
            File.Delete(probe);
            return Task.FromResult<string?>(null);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return Task.FromResult<string?>($"Mail:Folder {folder} cannot be written: {fault.Message}");
        }
    }
}
