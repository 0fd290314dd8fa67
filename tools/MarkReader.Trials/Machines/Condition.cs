using MarkReader.Practice.Misalignment;

namespace MarkReader.Trials.Machines;

/// <summary>A kind of machine that is tried.</summary>
/// <param name="Name">Its name on the command line and in the table.</param>
/// <param name="Ranges">How far the machines stray from what is stated.</param>
/// <param name="Known">Whether the screws' responses are known from an earlier visit, after which both mirrors were knocked.</param>
internal sealed record Condition(string Name, MisalignmentRanges Ranges, bool Known = false)
{
    // The conditions state no error of the hand: turns are set exactly, and in "hand" to 1/128 turn.
    private static readonly MisalignmentRanges s_plain = new() { HandTurns = 0 };
    private static readonly MisalignmentRanges s_twist = MisalignmentRanges.WithTwist with { HandTurns = 0 };
    private static readonly MisalignmentRanges s_bent = MisalignmentRanges.WithBentRails with { HandTurns = 0 };
    private static readonly MisalignmentRanges s_all = s_twist with { RailBend = s_bent.RailBend };
    private static readonly MisalignmentRanges s_hand = s_all with { HandTurns = 1.0 / 128 };

    public static IReadOnlyList<Condition> All { get; } =
    [
        new("plain", s_plain),
        new("twist", s_twist),
        new("bent", s_bent),
        new("all", s_all),
        new("hand", s_hand),
        new("known", s_plain, Known: true),
        new("known+all", s_all, Known: true),
        new("known+hand", s_hand, Known: true),
    ];
}
