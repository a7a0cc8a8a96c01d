namespace NightWatch.Words;

/// <summary>What is left out of the scores of an archive, or taken on trust.</summary>
public enum ArchiveRemark
{
    /// <summary>Nights that the sky or the kit alone decides.</summary>
    SkyAlone,

    /// <summary>Nights whose cloud is not known.</summary>
    CloudUnknown,

    /// <summary>Looks without a run of the day before.</summary>
    NoRun,

    /// <summary>Nights whose rain is not known.</summary>
    RainUnknown,

    /// <summary>Nights whose wind is not known.</summary>
    WindUnknown,
}
