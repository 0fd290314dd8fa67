using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.Machines;

/// <summary>Refusals of a machine's document and of keeping it.</summary>
public static class MachineFailures
{
    /// <summary>It is not JSON, or a field of it cannot be used.</summary>
    public static readonly FailureCode Unreadable = new("MACHINE_UNREADABLE", FailureKind.BadInput);

    /// <summary>It has more bytes than <see cref="MachineFile.MostBytes"/>.</summary>
    public static readonly FailureCode TooLarge = new("MACHINE_TOO_LARGE", FailureKind.BadInput);

    /// <summary>Its name is empty, too long, or has signs that cannot be shown.</summary>
    public static readonly FailureCode NameInvalid = new("MACHINE_NAME_INVALID", FailureKind.BadInput);

    /// <summary>A field of the form is blank that must be given.</summary>
    public static readonly FailureCode FieldMissing = new("MACHINE_FIELD_MISSING", FailureKind.BadInput);

    /// <summary>A field of the form has a text that cannot be used.</summary>
    public static readonly FailureCode FieldInvalid = new("MACHINE_FIELD_INVALID", FailureKind.BadInput);

    /// <summary>As many machines are kept as there may be.</summary>
    public static readonly FailureCode TooMany = new("TOO_MANY_MACHINES", FailureKind.BadInput);

    internal static Failure NotKept(long id) => new(StorageFailures.NotKept, MachineTexts.Word("machineFailures.noMachineKept", id), MachineTexts.Get("machineFailures.chooseOneFromListMachines"));
}
