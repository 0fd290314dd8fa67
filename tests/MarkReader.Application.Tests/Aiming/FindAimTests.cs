using System.Text.Json;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Application.Aiming;
using MarkReader.Application.Measuring;
using MarkReader.Application.Reports;
using MarkReader.Application.Tests.Support;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Aiming;

/// <summary>From rendered photo bytes to the aim point.</summary>
public sealed class FindAimTests
{
    // A beam that meets the tape at (-2.5, 1.5) + L·(11, -9) mrad.
    private const double NearPath = 80, FarPath = 480;

    private static readonly CardPoint s_aim = new(-2.5, 1.5);
    private static readonly (double U, double V) s_near = (-2.5 + (0.011 * NearPath), 1.5 - (0.009 * NearPath));
    private static readonly (double U, double V) s_far = (-2.5 + (0.011 * FarPath), 1.5 - (0.009 * FarPath));

    private static readonly Lazy<byte[]> s_nearPhoto = new(() => LegScene.Photo(1, s_near));
    private static readonly Lazy<byte[]> s_bothPhoto = new(() => LegScene.Photo(2, s_near, s_far));
    private static readonly Lazy<byte[]> s_farPhoto = new(() => LegScene.Photo(3, s_far));
    private static readonly Lazy<byte[]> s_bedPhoto = new(() => LegScene.Photo(4, "bed", s_far));
    private static readonly Lazy<byte[]> s_blankPhoto = new(() => LegScene.Photo(5));

    private static readonly LegInput s_leg = new(NearPath, FarPath);

    [Fact]
    public void Aim_is_within_its_region_and_a_twentieth_of_a_millimetre_of_the_truth_when_the_far_photo_shows_both_marks() =>
        IsTheTruth(FindAim.Run(new AimPhotos.NearAndFar(s_nearPhoto.Value, s_bothPhoto.Value), s_leg));

    [Fact]
    public void Aim_is_the_same_when_the_far_photo_shows_the_far_mark_alone() =>
        IsTheTruth(FindAim.Run(new AimPhotos.NearAndFar(s_nearPhoto.Value, s_farPhoto.Value), s_leg));

    [Fact]
    public void Aim_is_the_same_from_one_photo_of_both_marks_and_turns_round_with_the_other_side() // the closed form with the marks exchanged
    {
        IsTheTruth(FindAim.Run(new AimPhotos.Both(s_bothPhoto.Value, FirstMark.Left), s_leg));
        AimFinding turned = FindAim.Run(new AimPhotos.Both(s_bothPhoto.Value, FirstMark.Right), s_leg).ValueOrThrow();
        Assert.Equal(s_far.U + ((s_far.U - s_near.U) * NearPath / (FarPath - NearPath)), turned.Solution.Aim.Point.U, 0.05);
    }

    [Fact]
    public void Aim_appears_in_the_far_photo_where_the_card_s_projection_puts_it()
    {
        AimFinding finding = FindAim.Run(new AimPhotos.NearAndFar(s_nearPhoto.Value, s_bothPhoto.Value), s_leg).ValueOrThrow();
        Assert.Equal(0, finding.FarView.Projection.ToCard(finding.AimInPhoto).DistanceTo(finding.Solution.Aim.Point), 1e-6);
        Assert.NotNull(finding.NearView);
    }

    [Fact]
    public void Report_has_the_contract_s_names_and_numbers()
    {
        AimFinding finding = FindAim.Run(new AimPhotos.NearAndFar(s_nearPhoto.Value, s_bothPhoto.Value), s_leg).ValueOrThrow();
        using JsonDocument json = JsonDocument.Parse(ReportJson.Write(AimReport.From(finding)));
        JsonElement root = json.RootElement;
        Assert.Equal(finding.Near.Centre.Point.U, root.GetProperty("near").GetProperty("u").GetDouble());
        Assert.Equal(finding.Far.Photo.X, root.GetProperty("far").GetProperty("x").GetDouble());
        JsonElement aim = root.GetProperty("aim");
        Assert.Equal(finding.Solution.Aim.Point.V, aim.GetProperty("v").GetDouble());
        Assert.Equal(finding.AimInPhoto.Y, aim.GetProperty("y").GetDouble());
        Assert.Equal(finding.Solution.Aim.Covariance.Uv, aim.GetProperty("covariance")[0][1].GetDouble());
        Assert.Equal(finding.Solution.Slope.U, root.GetProperty("slope").GetProperty("u").GetDouble());
        Assert.Equal(0.2, root.GetProperty("ratio").GetDouble(), 1e-6);
        Assert.Equal(JsonValueKind.Array, root.GetProperty("warnings").ValueKind);
        Assert.Equal(480, root.GetProperty("leg").GetProperty("farPath").GetDouble());
    }

    [Fact]
    public void Wrong_inputs_are_refused()
    {
        byte[] near = s_nearPhoto.Value;
        Refused("SAME_PHOTO", new AimPhotos.NearAndFar(near, near.ToArray()));
        Refused("CARDS_DIFFER", new AimPhotos.NearAndFar(near, s_bedPhoto.Value));
        Refused("TWO_MARKS_NEEDED", new AimPhotos.Both(near, FirstMark.Left));
        Refused("NO_MARK", new AimPhotos.NearAndFar(near, s_blankPhoto.Value), "far photo: ");
        Refused("PHOTO_EMPTY", new AimPhotos.NearAndFar(Array.Empty<byte>(), near), "near photo: ");
        Refused("PHOTO_FORMAT", new AimPhotos.NearAndFar(near, "not a photo"u8.ToArray()), "far photo: ");
    }

    [Fact]
    public void The_leg_is_checked_before_the_photos_are_opened()
    {
        Assert.False(FindAim.Run(new AimPhotos.NearAndFar(Array.Empty<byte>(), Array.Empty<byte>()), new(480, 80)).TryGet(out _, out Failure? failure));
        Assert.Equal("PATHS_SWAPPED", failure.Code.Name);
    }

    private static void IsTheTruth(Outcome<AimFinding> outcome)
    {
        AimFinding finding = outcome.ValueOrThrow();
        MeasuredPoint aim = finding.Solution.Aim;
        Assert.True(aim.Point.DistanceTo(s_aim) < 0.05, $"{aim.Point} is {aim.Point.DistanceTo(s_aim)} mm off");
        Assert.True(aim.Covariance.MahalanobisSquared(s_aim - aim.Point) < 9.21, "outside the 99 % region");
        Assert.Equal(11, finding.Solution.Slope.U, 0.2);
        Assert.Equal(-9, finding.Solution.Slope.V, 0.2);
    }

    [Fact]
    public void Budget_of_the_aim_adds_up_and_shares_the_print_and_the_tape_between_the_photos()
    {
        MeasureOptions how = new CardInput(40.4, 40.2, 0.2, 0.8, 0.3).ApplyTo(new()).ValueOrThrow();
        AimFinding finding = FindAim.Run(new AimPhotos.NearAndFar(s_nearPhoto.Value, s_farPhoto.Value), s_leg, how).ValueOrThrow();
        foreach ((Mark mark, CameraStand camera) in new[] { (finding.Near, finding.NearView!.Camera), (finding.Far, finding.FarView.Camera) })
        {
            MarkErrors errors = MarkErrorsOf.Errors(mark, camera, how.Tape);
            Assert.Equal(["u", "v", "tape"], errors.Shared.Select(s => s.Name));
            IsEqual(mark.Centre.Covariance, errors.Covariance);
            IsEqual(mark.Centre.Covariance, mark.Budget.Select(c => c.Covariance).Aggregate((a, b) => a + b));
        }

        AimSolution solution = finding.Solution;
        IsEqual(solution.Aim.Covariance, solution.Budget.Select(c => c.Covariance).Aggregate((a, b) => a + b));
        // An error of the scale moves the aim by its own distance from the printed centre.
        Covariance2 print = solution.Budget.Single(c => c.Source == UncertaintySource.PrintScale).Covariance;
        Assert.Equal(0.2 / 40 * Math.Abs(solution.Aim.Point.U), Math.Sqrt(print.Uu), 0.0005);
        Assert.Equal(0.2 / 40 * Math.Abs(solution.Aim.Point.V), Math.Sqrt(print.Vv), 0.0005);
        Assert.Contains(UncertaintySource.PathLengths, solution.Budget.Select(c => c.Source));
    }

    [Fact]
    public void Reported_budgets_hold_every_source_with_its_share()
    {
        AimReport report = AimReport.From(FindAim.Run(new AimPhotos.NearAndFar(s_nearPhoto.Value, s_farPhoto.Value), s_leg).ValueOrThrow());
        foreach ((IReadOnlyList<ComponentReport>? budget, double[][] total) in new[]
        {
            (report.Near.Budget, report.Near.Covariance), (report.Far.Budget, report.Far.Covariance), (report.Aim.Budget, report.Aim.Covariance),
        })
        {
            Assert.Equal(1, budget!.Sum(c => c.Share), 1e-9);
            Assert.Equal(1, budget!.Sum(c => c.Covariance[0][0]) / total[0][0], 1e-9);
            Assert.Equal(1, 2 * budget!.Sum(c => c.StandardUncertainty * c.StandardUncertainty) / (total[0][0] + total[1][1]), 1e-9);
        }

        Assert.Contains("pathLengths", report.Aim.Budget!.Select(c => c.Source));
        Assert.Contains("noise", report.Near.Budget!.Select(c => c.Source));
    }

    [Fact]
    public void Marks_that_the_user_names_are_measured_where_they_are()
    {
        AimFinding sure = FindAim.Run(new AimPhotos.Both(s_bothPhoto.Value, FirstMark.Left), s_leg).ValueOrThrow();
        PixelPoint near = sure.Near.Photo + new PixelVector(6, -4), far = sure.Far.Photo + new PixelVector(-5, 5);
        IsTheTruth(FindAim.Run(new AimPhotos.BothNamed(s_bothPhoto.Value, near, far), s_leg));
        IsTheTruth(FindAim.Run(new AimPhotos.NearAndFar(s_nearPhoto.Value, s_bothPhoto.Value) { FarAt = far }, s_leg));
        Refused("SAME_MARK_NAMED", new AimPhotos.BothNamed(s_bothPhoto.Value, near, near));
        Refused("TAP_OUTSIDE_PHOTO", new AimPhotos.BothNamed(s_bothPhoto.Value, near, new(double.NaN, 3)));
        Refused("TAP_OUTSIDE_PHOTO", new AimPhotos.BothNamed(s_bothPhoto.Value, new(1e300, 0), far));
        Refused("TAP_OUTSIDE_ZONE", new AimPhotos.NearAndFar(s_nearPhoto.Value, s_bothPhoto.Value) { FarAt = new(2, 2) }, "far photo: ");
        Refused("NOTHING_THERE", new AimPhotos.NearAndFar(s_nearPhoto.Value, s_blankPhoto.Value) { FarAt = near }, "far photo: ");
    }

    private static void IsEqual(Covariance2 expected, Covariance2 actual)
    {
        Assert.Equal(1, actual.Uu / expected.Uu, 1e-9);
        Assert.Equal(1, actual.Vv / expected.Vv, 1e-9);
        Assert.Equal(expected.Uv, actual.Uv, 1e-9 * (expected.Uu + expected.Vv));
    }

    private static void Refused(string code, AimPhotos photos, string start = "")
    {
        Assert.False(FindAim.Run(photos, s_leg).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
        Assert.StartsWith(start, failure.Message, StringComparison.Ordinal);
    }
}
