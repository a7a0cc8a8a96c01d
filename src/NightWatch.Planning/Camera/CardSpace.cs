namespace NightWatch.Planning.Camera;

/// <summary>Room on the cards; decimal units as cards are sold.</summary>
public static class CardSpace
{
    /// <summary>Room a sequence needs, GB (10⁹ bytes).</summary>
    /// <param name="shots">Number of frames.</param>
    /// <param name="fileMb">One file, MB (10⁶ bytes).</param>
    public static double NeedGb(int shots, double fileMb) => shots * fileMb / 1000;

    /// <summary>Frames that fit.</summary>
    /// <param name="roomGb">Room, GB.</param>
    /// <param name="fileMb">One file, MB, above 0.</param>
    public static int ShotsThatFit(double roomGb, double fileMb) => (int)Math.Min(int.MaxValue, Math.Floor(roomGb * 1000 / fileMb + 1e-9));

    /// <summary>Seconds to write one file.</summary>
    /// <param name="fileMb">One file, MB.</param>
    /// <param name="writeMbPerS">Sustained write speed, MB/s, above 0.</param>
    public static double WriteS(double fileMb, double writeMbPerS) => fileMb / writeMbPerS;
}
