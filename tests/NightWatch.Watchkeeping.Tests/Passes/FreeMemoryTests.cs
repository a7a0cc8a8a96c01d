using NightWatch.Watchkeeping.Passes;

namespace NightWatch.Watchkeeping.Tests.Passes;

public class FreeMemoryTests
{
    private const int Arrays = 256;

    private const int ArrayBytes = 1 << 20;

    // Half of it, since other tests take memory meanwhile.
    [Fact]
    public void What_is_free_goes_back_to_the_system()
    {
        Fill();
        var taken = GC.GetGCMemoryInfo().TotalCommittedBytes;
        FreeMemory.GiveBack();
        Assert.True(GC.GetGCMemoryInfo().TotalCommittedBytes < taken - Arrays / 2 * ArrayBytes);
    }

    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.NoInlining)]
    private static void Fill()
    {
        var held = new List<byte[]>();
        for (var i = 0; i < Arrays; i++)
        {
            held.Add(new byte[ArrayBytes]);
            Array.Fill(held[^1], (byte)1);
        }

        GC.Collect(); // so that the memory's figures know of them
        GC.KeepAlive(held);
    }
}
