namespace MarkReader.Quantities.Tests;

public sealed class WordingTests
{
    [Fact]
    public void A_refusal_is_text_in_millimetres_and_knows_its_lengths()
    {
        Failure failure = new(new("TOO_NEAR", FailureKind.BadInput), $"{new SaidEvent(8)} lies {new SaidLength(12.7)} off, between {new SaidLength(0, HasUnit: false)} and {new SaidLength(25.4, "0.00")}", $"give it in {Wording.Unit}");
        Assert.Equal("TOO_NEAR: event 8 lies 12.7 mm off, between 0 and 25.40 mm; give it in mm", failure.ToString());
        Assert.Equal("event 8 lies [0.5] off, between [0] and [1]", failure.What.In(l => FormattableString.Invariant($"[{l.Millimetres / Length.MillimetresPerInch}]"), "in"));
        Assert.Equal("give it in in", failure.Remedy.In(l => l.ToString(), "in"));
        Assert.Equal("TOO_NEAR: leg 1: event 8 lies 12.7 mm off, between 0 and 25.40 mm; give it in mm", (failure with { What = $"leg 1: {failure.What}" }).ToString());
        Assert.Equal(failure, new(failure.Code, failure.Message, failure.Hint));
    }

    [Fact]
    public void An_event_can_be_called_by_other_words_and_keeps_their_lengths()
    {
        Wording named = ((Wording)$"{new SaidEvent(8)} is wrong").Name(n => Wording.Of("step {0} (mark at {1})", n, new SaidLength(480)));
        Assert.Equal("step 8 (mark at 480 mm) is wrong", named.ToString());
        Assert.Equal("step 8 (mark at L) is wrong", named.In(_ => "L", "in"));
    }

    [Fact]
    public void Numbers_that_are_no_lengths_get_the_readers_sign_and_names_stay()
    {
        Wording said = Wording.Of("{0} is off by {1:0.0} %, {2} times {3}", "view.2.5.jpg", 1.64, 2.5, new SaidLength(0.1));
        Assert.Equal("view.2.5.jpg is off by 1.6 %, 2.5 times 0.1 mm", said.ToString());
        Assert.Equal("view.2.5.jpg is off by 1,6 %, 2,5 times 0,1 mm", said.In(l => l.ToString().Replace('.', ','), "mm", number: n => n.Replace('.', ',')));
    }
}
