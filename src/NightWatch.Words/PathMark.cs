namespace NightWatch.Words;

/// <summary>What is marked on the subject's path across the frame.</summary>
public enum PathMark
{
    /// <summary>The first frame.</summary>
    First,

    /// <summary>The subject comes into the frame.</summary>
    Enters,

    /// <summary>It leaves the frame.</summary>
    Leaves,

    /// <summary>The end of the last frame.</summary>
    Last,
}
