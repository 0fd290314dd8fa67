namespace MarkReader.Service.Samples;

/// <summary>A near and a far photo of an invented leg, for trying the service without a laser.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Near">Address of the near photo.</param>
/// <param name="Far">Address of the far photo.</param>
/// <param name="NearPath">Path length of the near station, mm.</param>
/// <param name="FarPath">Path length of the far station, mm.</param>
internal sealed record SamplePair(string Name, string Near, string Far, double NearPath, double FarPath);

/// <summary>The sample pairs.</summary>
internal sealed record SampleList(IReadOnlyList<SamplePair> Samples);
