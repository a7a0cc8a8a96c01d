using NightWatch.Delivery.Mail;

namespace NightWatch.Delivery.Tests.Mail;

public sealed class FolderTransportTests : IDisposable
{
    private readonly string folder = Path.Combine(Directory.CreateTempSubdirectory("nightwatch-letters-").FullName, "letters");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_letter_is_one_whole_file_however_often_it_is_sent()
    {
        var transport = new FolderTransport(folder);
        var letter = GivenLetter.InHand();

        Assert.Equal(new Handover.Accepted("000007.eml"), await transport.SendAsync(letter, Cancel));
        await transport.SendAsync(letter, Cancel);

        Assert.Equal("000007.eml", Path.GetFileName(Assert.Single(Directory.GetFiles(folder))));
        Assert.Equal(letter.Mime.ToArray(), await File.ReadAllBytesAsync(Path.Combine(folder, "000007.eml"), Cancel));
    }

    [Fact]
    public async Task A_folder_that_cannot_be_written_holds_the_queue_and_names_the_key()
    {
        await File.WriteAllTextAsync(folder, "a file is in the way", Cancel);
        var transport = new FolderTransport(folder);

        var failed = Assert.IsType<Handover.Failed>(await transport.SendAsync(GivenLetter.InHand(), Cancel));

        Assert.Equal(FailureClass.Server, failed.Class);
        Assert.StartsWith($"Mail:Folder {folder} cannot be written", failed.Reply.Text, StringComparison.Ordinal);
        Assert.StartsWith($"Mail:Folder {folder} cannot be written", await transport.CheckAsync(Cancel), StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(Path.GetDirectoryName(folder)!, recursive: true);
}
