using CareRecords.Studies;

return args switch
{
    ["speed", var folder, var count] => Speed.Run(folder, int.Parse(count, System.Globalization.CultureInfo.InvariantCulture)),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("Give a command: speed FOLDER COUNT");
    return 2;
}
