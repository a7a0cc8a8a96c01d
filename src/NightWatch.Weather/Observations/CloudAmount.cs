using System.Collections.Frozen;

namespace NightWatch.Weather.Observations;

/// <summary>What one cloud group of an aerodrome report (METAR, SPECI) says about the sky.</summary>
/// <param name="Code">As reported: "FEW", "NCD", ...</param>
/// <param name="LeastOktas">At least so many eighths of the sky are covered.</param>
/// <param name="MostOktas">At most so many by this group alone; null: it sets no upper bound.</param>
public readonly record struct CloudAmount(string Code, int LeastOktas, int? MostOktas)
{
    private static readonly FrozenDictionary<string, CloudAmount> Known = new[]
    {
        // WMO-No. 49 Vol. II, code table D-8 (codes.wmo.int/49-2/CloudAmountReportedAtAerodrome), the aviation subset of BUFR table
        // 0 20 008; the same eighths in ICAO Annex 3, Appendix 1.
        new CloudAmount("SKC", 0, 0),
        new CloudAmount("FEW", 1, 2),
        new CloudAmount("SCT", 3, 4),
        new CloudAmount("BKN", 5, 7),
        new CloudAmount("OVC", 8, 8),

        // Sky obscured by fog, snow or smoke: vertical visibility is given in place of cloud layers (ICAO Annex 3, 4.5).
        new CloudAmount("VV", 8, 8),

        // These do not say that the sky is clear. CLR: an automatic station saw nothing below 12 000 ft (US practice). NSC and CAVOK:
        // nothing of significance to flight, which is nothing with a base below 1500 m (5000 ft). NCD: an automatic station detected
        // nothing, as far up as its instrument reaches (ICAO Annex 3, 4.5).
        new CloudAmount("CLR", 0, null),
        new CloudAmount("NSC", 0, null),
        new CloudAmount("NCD", 0, null),
        new CloudAmount("CAVOK", 0, null),
    }.ToFrozenDictionary(amount => amount.Code, StringComparer.OrdinalIgnoreCase);

    /// <summary>
    /// The share of the sky to hold a forecast of total cloud against: the middle of the reported eighths; null where the group cannot
    /// tell.
    /// </summary>
    public double? Fraction => MostOktas is { } most ? (LeastOktas + most) / 16.0 : null;

    /// <summary>Nothing was seen low down, while higher cloud may cover the sky: good against a forecast of low cloud only.</summary>
    public bool IsClearBelowOnly => MostOktas is null;

    /// <summary>The group of a code; null for one that gives no amount (FRQ, EMBD, ///).</summary>
    public static CloudAmount? Of(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        return Known.TryGetValue(code, out var amount) ? amount : null;
    }
}
