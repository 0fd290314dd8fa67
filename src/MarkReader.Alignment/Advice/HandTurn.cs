using static MarkReader.Quantities.Texts<MarkReader.Alignment.Texts.AdviserTexts>;

namespace MarkReader.Alignment.Advice;

/// <summary>A turn in parts that a hand can set: sixteenths of a turn, or down to 1/128 where that is needed.</summary>
public sealed record HandTurn
{
    private HandTurn(double turns) => Turns = turns;

    /// <summary>No turn.</summary>
    public static HandTurn None { get; } = new(0);

    /// <summary>A multiple of 1/128 turn; positive clockwise, as seen facing the knob.</summary>
    public double Turns { get; }

    /// <summary>"3/16 turn", "5/64 turn (28°)", "no turn".</summary>
    public string Size => Turns == 0 ? Get("turn.none") : HandParts.Size(Turns);

    /// <summary>The size with its direction: "3/16 turn clockwise", "1/8 turn counter-clockwise", "no turn".</summary>
    public string Text => Turns == 0 ? Get("turn.none") : HandParts.Say(Turns);

    /// <summary>What a hand is told to do: <see cref="Text"/>, or where that is finer than 1/32 turn the nearest such part, with the side on which the rest lies.</summary>
    public string Advice => Turns == 0 ? Get("turn.none") : HandParts.Advise(Turns);

    /// <summary>Whether a part of it is finer than a hand sets.</summary>
    public bool IsFine => HandParts.IsFine(Turns);

    /// <summary>The coarsest part of a turn within <paramref name="allowed"/> turns of the wanted turn, else the nearest 1/128.</summary>
    public static HandTurn Nearest(double turns, double allowed) => new(HandParts.Round(turns, allowed) + 0.0);

    /// <summary>The same size clockwise.</summary>
    public HandTurn Clockwise() => new(Math.Abs(Turns));
}
