using System.Runtime.InteropServices;

namespace NightWatch.Service.Commands.Checks;

/// <summary>Asks Linux whether a time service steers its clock (adjtimex(2), which every user may read).</summary>
internal static class KernelClock
{
    private const int StatusAt = 40; // of struct timex on 64-bit Linux: modes, offset, freq, maxerror, esterror come before it
    private const int Unsynchronised = 0x40; // STA_UNSYNC

    /// <returns>Null: not known here.</returns>
    public static bool? IsSteered()
    {
        if (!OperatingSystem.IsLinux() || !Environment.Is64BitProcess) return null;
        var timex = new byte[512];
        try
        {
            return Read(ref timex[0]) < 0 ? null : (BitConverter.ToInt32(timex, StatusAt) & Unsynchronised) == 0;
        }
        catch (Exception absent) when (absent is DllNotFoundException or EntryPointNotFoundException)
        {
            return null;
        }
    }

    [DllImport("libc", EntryPoint = "adjtimex")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Read(ref byte timex);
}
