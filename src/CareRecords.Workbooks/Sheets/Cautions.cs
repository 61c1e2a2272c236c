namespace CareRecords.Workbooks.Sheets;

/// <summary>The cautions in full.</summary>
internal static class Cautions
{
    public static IReadOnlyList<string> Full { get; } =
    [
        "CareRecords puts notes in order and counts them. It is not a medical device. It does not diagnose, watch over a child, raise alarms, or choose or change any treatment, oxygen flow, session, feed or medicine.",
        "The plan is the one your child's own team gave you. Where a number here (for example 30 minutes after stopping a feed, or 15 minutes after an inhaler) differs from that plan, the plan is right. Numbers marked \"default\" are only starting values. Local rules come before anything printed here.",
        "The 30-minute figure is about stopping a continuous tube feed. After a bolus feed or a meal, teams often ask for an hour or more. Ask which applies. Not every inhaled medicine goes before a session.",
        "Do not shorten, skip or add sessions, or alter oxygen or medicines, because of a chart in this file. Take the chart to the team and decide together. Stepping down is the team's decision.",
        "Stop a session and do what your plan says if the child has trouble breathing, changes colour (blue, grey or very pale), has saturations below the limit in the plan, vomits or chokes, has pain, bleeds or coughs blood, goes floppy, very sleepy or hard to rouse, or simply seems wrong to you.",
        "Do not wait for this program. For severe trouble breathing, pauses in breathing, blue or grey colour, a child who cannot be woken, or a large bleed, call your emergency number now. For the first signs of illness, use the plan's contact. Your own worry is reason enough to call.",
        "Do not start a session on a child the team has said should not have one, or when something new has happened (fall, fracture, operation, bleeding, new air leak, chest pain, high fever, wheezing attack) until you have asked.",
        "Fingertip saturation readings are estimates. The same child can read several points apart from one minute to the next; movement, cold hands, nail varnish and the device all matter; readings can be falsely high, and more so in darker skin. A good number does not outweigh how the child looks. Write the oxygen flow and whether asleep or awake beside every reading.",
        "Times written by hand are rounded, and some entries are written later. Where the notes cannot say whether a gap was kept, the answer shown is \"cannot tell\". A blank is not a missed session.",
        "Illness and recovery dates are worked out by the rule printed beside them. Other sensible rules give other dates; with one month and one or two illnesses, no chart can show that one thing caused another.",
        "Nothing here marks a carer. Not doing a session can be the right decision; note the reason if you can.",
        "Check the sheet \"What was read\" before a visit. Keep the original notes.",
        "A shared copy has names and dates taken out, but a rare condition can still point to one child. Share only with people and studies you agreed to, and ask how to withdraw.",
    ];
}
