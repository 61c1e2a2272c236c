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
    FindMachineZone = () => DateTimeZoneProviders.Tzdb.GetSystemDefault().Id,
};
var ended = Tool.Run(args, surroundings);
if (OperatingSystem.IsWindows() && Tool.IsDropped(args, surroundings)) OwnWindow.KeepOpen(surroundings.Error);
return ended;
