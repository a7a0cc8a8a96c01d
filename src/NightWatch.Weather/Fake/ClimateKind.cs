namespace NightWatch.Weather.Fake;

/// <summary>Kinds of climate that weather is invented for, each drawn after the typical year of one station.</summary>
public enum ClimateKind
{
    /// <summary>Tucson, Arizona.</summary>
    DryDesert,

    /// <summary>Aurora, Colorado.</summary>
    SemiAridHighPlain,

    /// <summary>Chicago, Illinois.</summary>
    HumidContinental,

    /// <summary>Port Angeles, Washington.</summary>
    MarineCoast,
}
