using System.Runtime.Loader;
using CareRecords.CommandLine;
using NodaTime;

NativeParts.OfferTo(AssemblyLoadContext.Default);
var surroundings = new Surroundings
{
    Output = Console.Out,
    Error = Console.Error,
    ErrorIsTerminal = !Console.IsErrorRedirected,
    WorkingFolder = Environment.CurrentDirectory,
    MachineZone = DateTimeZoneProviders.Tzdb.GetSystemDefault().Id,
};
return Tool.Run(args, surroundings);
