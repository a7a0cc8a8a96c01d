namespace NightWatch.Letters.Layout;

/// <summary>
/// The letters' look: ink on paper, one accent a verdict. Every pair of text and ground below is at least 4.5:1 (WCAG 2.2, 1.4.3),
/// which a test computes.
/// </summary>
internal static class LetterStyles
{
    /// <summary>Inlined into the elements, for the many mail programs that drop style blocks.</summary>
    public const string Light = """
        <style>
        .page { margin: 0; padding: 0; background: #edeae3; color: #1b1f24;
                font-family: Verdana, 'DejaVu Sans', Geneva, sans-serif; font-size: 15px; line-height: 1.45; }
        .preview { display: none; max-height: 0; overflow: hidden; }
        .frame { width: 100%; max-width: 640px; margin: 0 auto; border-collapse: collapse; }
        .sheet { padding: 14px; background: #ffffff; color: #1b1f24; }
        .greeting { margin: 0 0 10px; }
        .verdict { padding: 9px 12px; margin: 4px 0 12px; }
        .word { font-size: 22px; font-weight: bold; letter-spacing: 1px; }
        .place { font-size: 15px; }
        .go { background: #14514a; color: #ffffff; border: 3px solid #14514a; }
        .marginal { background: #fff4d9; color: #5a3a00; border: 3px dashed #8a5a00; }
        .nogo { background: #5b2330; color: #ffffff; border: 3px double #ffffff; }
        .hazard { margin: 0 0 10px; padding: 8px 10px; border-left: 8px solid #9a1b1b; background: #fbe9e7; color: #4a0d0d; }
        .headline { font-size: 21px; line-height: 1.25; margin: 0 0 6px; }
        .because { margin: 0 0 10px; font-size: 16px; }
        .next { margin: 0 0 14px; padding: 9px 10px; border: 2px solid #1b1f24; font-size: 16px; }
        .head { font-size: 17px; margin: 20px 0 6px; padding-bottom: 3px; border-bottom: 1px solid #b9b3a5; }
        .day { font-size: 15px; margin: 10px 0 2px; }
        .grid { width: 100%; border-collapse: collapse; margin: 0 0 8px; font-size: 15px; }
        .name { text-align: left; vertical-align: top; font-weight: bold; padding: 3px 10px 3px 0; width: 27%; }
        .th { text-align: left; font-weight: bold; padding: 3px 10px 3px 0; border-bottom: 1px solid #b9b3a5; }
        .td { vertical-align: top; padding: 3px 6px 3px 0; }
        .now { font-weight: bold; }
        .time { text-align: left; vertical-align: top; font-weight: normal; padding: 3px 10px 3px 8px; width: 48px;
                border-left: 4px solid #ffffff; }
        .act { font-weight: bold; border-left: 4px solid #1b1f24; }
        .why { color: #525a63; font-size: 14px; }
        .mark { vertical-align: top; padding: 3px 10px 3px 0; width: 64px; font-size: 14px; }
        .caution { font-weight: bold; color: #6b4400; }
        .stop { font-weight: bold; color: #8c1c1c; text-transform: uppercase; }
        .ok, .unknown { color: #525a63; }
        .list { margin: 0 0 16px; padding-left: 22px; }
        .item { margin: 0 0 5px; }
        .chart { display: block; width: 100%; max-width: 612px; height: auto; margin: 12px 0; border: 0; }
        .answer { margin: 8px 0; }
        .choice { display: inline-block; padding: 10px 14px; border: 2px solid #0b4f8a; color: #0b4f8a; text-decoration: underline; }
        .link { color: #0b4f8a; text-decoration: underline; }
        .footer { margin-top: 22px; border-top: 3px solid #1b1f24; }
        .foothead { font-size: 15px; margin: 10px 0 4px; }
        .card { margin: 0 0 14px; font-size: 15px; }
        .tag { display: inline-block; padding: 0 8px; font-weight: bold; font-size: 14px; }
        .foot { margin-top: 8px; }
        .small { font-size: 14px; color: #525a63; margin: 0 0 6px; }
        </style>
        """;

    /// <summary>Stays a block; its rules beat the inlined ones on a dark screen.</summary>
    public static string Dark => "<style id=\"dark\">@media (prefers-color-scheme: dark) {\n" + DarkRules + "}</style>";

    internal const string DarkRules = """
        .page { background: #0e1114 !important; color: #e4e1d8 !important; }
        .sheet { background: #171b20 !important; color: #e4e1d8 !important; }
        .go { background: #1d6a61 !important; color: #ffffff !important; border-color: #1d6a61 !important; }
        .marginal { background: #33270d !important; color: #ffdf9e !important; border-color: #d9a441 !important; }
        .nogo { background: #6b2a39 !important; color: #ffffff !important; border-color: #171b20 !important; }
        .hazard { background: #3a1513 !important; color: #ffd9d4 !important; border-color: #e06a5c !important; }
        .next { border-color: #e4e1d8 !important; }
        .head, .th { border-color: #5a626c !important; }
        .time { border-color: #171b20 !important; }
        .act { border-color: #e4e1d8 !important; }
        .why, .ok, .unknown, .small { color: #a9b0b8 !important; }
        .caution { color: #f3c56b !important; }
        .stop { color: #ff9c90 !important; }
        .link, .choice { color: #8fc4f5 !important; border-color: #8fc4f5 !important; }
        .footer { border-color: #e4e1d8 !important; }

        """;
}
