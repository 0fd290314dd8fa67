using System.CommandLine;
using MarkReader.Application.Cameras;
using MarkReader.Cameras.Profiles;
using MarkReader.CommandLine.Input;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>--camera FILE: the profile of the camera that took the photos.</summary>
internal static class CameraOption
{
    public static Option<string> Create() => new("--camera") { Description = CommandTexts.Get("cameraOption.profileCameraAsCommandCamera"), HelpName = "FILE" };

    public static Outcome<CameraProfile> Read(string path) =>
        InputFile.Read(path, CameraProfileFile.MostBytes, CommandTexts.Get("cameraOption.cameraProfile"), CommandTexts.Get("cameraOption.nameFileThatCommandCamera")).TryGet(out InputFile? file, out Failure? failure)
            ? CameraProfileFile.Read(file.Bytes)
            : failure.Code == CommandLineFailures.FileTooLarge ? CameraProfileFile.NoProfile : failure;
}
