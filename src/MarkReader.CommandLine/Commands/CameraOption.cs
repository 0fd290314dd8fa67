using System.CommandLine;
using MarkReader.Application.Cameras;
using MarkReader.Cameras.Profiles;
using MarkReader.CommandLine.Input;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>--camera FILE: the profile of the camera that took the photos.</summary>
internal static class CameraOption
{
    public static Option<string> Create() => new("--camera") { Description = "Profile of the camera, as the command 'camera' wrote it", HelpName = "FILE" };

    public static Outcome<CameraProfile> Read(string path) =>
        InputFile.Read(path, CameraProfileFile.MostBytes, "a camera profile", "name the file that the command 'camera' wrote").TryGet(out InputFile? file, out Failure? failure)
            ? CameraProfileFile.Read(file.Bytes)
            : failure;
}
