using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Models;
using MarkReader.Cameras.Profiles;
using MarkReader.Cards;

namespace MarkReader.Imaging.Boards;

/// <summary>A photo of a card, its printed edges located; everything in the sensor's frame, whichever way the phone was held.</summary>
/// <param name="View">Where the edges were seen.</param>
/// <param name="Camera">The profile's camera for a photo of this size.</param>
/// <param name="Traits">What the file says of camera and lens.</param>
public sealed record CardPhoto(CardKind Kind, BoardView View, CameraModel Camera, CameraTraits Traits);
