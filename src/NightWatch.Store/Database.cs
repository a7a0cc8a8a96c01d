namespace NightWatch.Store;

/// <summary>Where the service keeps what must not be lost.</summary>
public sealed class Database;
