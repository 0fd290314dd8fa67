using System.Text.Json;
using MarkReader.Scenes.Output;
using MarkReader.Scenes.Sampling;

namespace MarkReader.Scenes.Tests.Output;

public class SceneTruthTests
{
    [Fact]
    public void A_truth_file_lists_the_marks_by_u_with_card_and_photo_places()
    {
        Scene scene = Scene.Render(SceneSampler.Draw("four", 3).Shrunk(0.1));
        using JsonDocument json = JsonDocument.Parse(scene.Truth.ToJson());
        JsonElement[] marks = [.. json.RootElement.GetProperty("marks").EnumerateArray()];
        Assert.Equal(4, marks.Length);
        double[] u = [.. marks.Select(m => m.GetProperty("u").GetDouble())];
        Assert.Equal(u.Order(), u);
        Assert.All(marks, m => Assert.InRange(m.GetProperty("x").GetDouble(), 0, scene.Spec.Camera.Width));
        Assert.All(marks, m => Assert.InRange(m.GetProperty("y").GetDouble(), 0, scene.Spec.Camera.Height));
        Assert.All(marks, m => Assert.InRange(m.GetProperty("diameter").GetDouble(), 1, 5));
        Assert.Equal("plate", json.RootElement.GetProperty("card").GetProperty("kind").GetString());
        Assert.Equal("four", json.RootElement.GetProperty("scene").GetProperty("kind").GetString());
        Assert.Equal(3, json.RootElement.GetProperty("scene").GetProperty("seed").GetInt32());
        Assert.False(json.RootElement.TryGetProperty("leg", out _));
    }

    [Fact]
    public void Readings_of_rulers_and_tape_are_off_by_their_stated_uncertainty()
    {
        double[] rulers = [.. Enumerable.Range(0, 200).Select(i => SceneSampler.Draw("printScale", i)).Select(s => (s.Measured!.RulerU!.Value - (40 * s.Card!.PrintScaleU)) / s.Measured.RulerUncertainty!.Value)];
        double[] heights = [.. Enumerable.Range(0, 200).Select(i => SceneSampler.Draw("lifted", i)).Select(s => (s.Measured!.TapeHeight!.Value - s.TapeHeight) / s.Measured.TapeHeightUncertainty!.Value)];
        foreach (double[] errors in (double[][])[rulers, heights])
        {
            Assert.Equal(0, errors.Average(), 0.3);
            Assert.Equal(1, errors.Average(e => e * e), 0.4);
        }
    }

    [Fact]
    public void A_photo_without_a_card_has_no_marks_and_no_card()
    {
        Scene scene = Scene.Render(SceneSampler.Draw("noCard", 3).Shrunk(0.1));
        using JsonDocument json = JsonDocument.Parse(scene.Truth.ToJson());
        Assert.Equal(0, json.RootElement.GetProperty("marks").GetArrayLength());
        Assert.False(json.RootElement.TryGetProperty("card", out _));
    }
}
