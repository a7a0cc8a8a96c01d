using NightWatch.Planning.Camera;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Words;

// The blocks of names and figures.
public partial interface ILanguage
{
    /// <summary>What a figure is about, one to three words.</summary>
    string Of(FactName name);

    /// <summary>A shooting window and its length.</summary>
    string Window(Interval run, Speech speech);

    /// <summary>A chance that the night is usable.</summary>
    string LikelyUsable(double chance, Speech speech);

    /// <summary>How many frames, how long, how often.</summary>
    string Frames(Sequence sequence, Speech speech);

    /// <summary>Length of the film.</summary>
    string PlaysFor(Sequence sequence, Speech speech);

    /// <summary>How far stars move within a frame, and the longest exposures by two rules.</summary>
    string StarTrails(Sequence sequence, Speech speech);

    /// <summary>That there is no forecast.</summary>
    string NoneFetched { get; }

    /// <summary>How old a forecast is.</summary>
    /// <param name="issued">When it was issued; null: its feed does not say.</param>
    /// <param name="fetched">When it was fetched.</param>
    /// <param name="age">Of it, when the letter was written.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string HowOld(Instant? issued, Instant fetched, Duration age, Speech speech);

    /// <summary>Whose data were used, under which licence, and that they were changed.</summary>
    string DataFrom(string attribution, string licence);

    /// <summary>A figure of cloud, dew or Moon as it was told before the night.</summary>
    /// <param name="factor">What about.</param>
    /// <param name="value">The figure; null: it was unknown.</param>
    /// <param name="unit">Of the figure.</param>
    /// <param name="severity">How bad it was.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string ToldFigure(Factor factor, double? value, Unit unit, Severity severity, Speech speech);

    /// <summary>That no figure was told.</summary>
    string NoFigureTold { get; }

    /// <summary>Chance, window, leave-by and cloud of a night that could be taken instead.</summary>
    string ChoiceFigures(NightPlan plan, Speech speech);
}
