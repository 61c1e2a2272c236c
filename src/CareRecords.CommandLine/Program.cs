using CareRecords.CommandLine;
using NodaTime;

NativeParts.Offer();
// The console's own writer goes to the system at every line; a long reading has two million.
using var output = new StreamWriter(Console.OpenStandardOutput(), Console.OutputEncoding, 32_768);
var surroundings = new Surroundings
{
    Output = output,
    Error = Console.Error,
    ErrorIsTerminal = !Console.IsErrorRedirected,
    WorkingFolder = Environment.CurrentDirectory,
    FindMachineZone = () => DateTimeZoneProviders.Tzdb.GetSystemDefault().Id,
};
var ended = Tool.Run(args, surroundings);
output.Flush();
if (OperatingSystem.IsWindows() && Tool.IsDropped(args, surroundings)) OwnWindow.KeepOpen(surroundings.Error);
return ended;
