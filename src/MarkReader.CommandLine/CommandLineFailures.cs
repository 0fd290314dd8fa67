using MarkReader.Quantities;

namespace MarkReader.CommandLine;

/// <summary>Refusals of the call itself and of files.</summary>
internal static class CommandLineFailures
{
    public static readonly FailureCode CommandMissing = Bad("COMMAND_MISSING");
    public static readonly FailureCode CommandUnknown = Bad("COMMAND_UNKNOWN");
    public static readonly FailureCode ArgumentUnknown = Bad("ARGUMENT_UNKNOWN");
    public static readonly FailureCode ArgumentMissing = Bad("ARGUMENT_MISSING");
    public static readonly FailureCode OptionMissing = Bad("OPTION_MISSING");
    public static readonly FailureCode OptionWithoutValue = Bad("OPTION_WITHOUT_VALUE");
    public static readonly FailureCode OptionRepeated = Bad("OPTION_REPEATED");
    public static readonly FailureCode OptionsConflict = Bad("OPTIONS_CONFLICT");
    public static readonly FailureCode ChoiceUnknown = Bad("CHOICE_UNKNOWN");
    public static readonly FailureCode TrialsInvalid = Bad("TRIALS_INVALID");
    public static readonly FailureCode SeedInvalid = Bad("SEED_INVALID");
    public static readonly FailureCode CallWrong = Bad("CALL_WRONG");
    public static readonly FailureCode FileMissing = Bad("FILE_MISSING");
    public static readonly FailureCode FileIsFolder = Bad("FILE_IS_FOLDER");
    public static readonly FailureCode FileUnreadable = Bad("FILE_UNREADABLE");
    public static readonly FailureCode FileTooLarge = Bad("FILE_TOO_LARGE");
    public static readonly FailureCode OutputIsInput = Bad("OUTPUT_IS_INPUT");
    public static readonly FailureCode OutputNotWritable = Bad("OUTPUT_NOT_WRITABLE");

    /// <summary>Faults of the program or its installation: exit status 1, whatever the kind says.</summary>
    public const string InternalFault = "INTERNAL_FAULT";

    public const string NativeLibraryMissing = "NATIVE_LIBRARY_MISSING";

    private static FailureCode Bad(string name) => new(name, FailureKind.BadInput);
}
