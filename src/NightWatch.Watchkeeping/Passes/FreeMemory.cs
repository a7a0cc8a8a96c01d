using System.Runtime.InteropServices;

namespace NightWatch.Watchkeeping.Passes;

/// <summary>What only the start or a large pass needed goes back to the system: a service that does nothing shall be small.</summary>
internal static class FreeMemory
{
    /// <summary>
    /// Gives back what is free of the managed heap, then what the runtime's compiler and the libraries in C freed and their allocator kept.
    /// </summary>
    public static void GiveBack()
    {
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        try
        {
            _ = Trim(0);
        }
        catch (Exception other) when (other is DllNotFoundException or EntryPointNotFoundException)
        {
            // Not glibc, whose call this is.
        }
    }

    // By its name in the ELF header of glibc's programs: "libc" alone finds a linker script where C is developed.
    [DllImport("libc.so.6", EntryPoint = "malloc_trim", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Trim(nuint keepBytes);
}
