using CareRecords.Studies;

return args switch
{
    ["speed", var folder, var count] => Speed.Run(folder, int.Parse(count, System.Globalization.CultureInfo.InvariantCulture)),
    ["pool", var input, var output] => PoolRun.Run(input, output),
    ["many-families", var folder] => ManyFamilies.Run(folder),
    ["reidentify", var families] => Reidentification.Run(int.Parse(families, System.Globalization.CultureInfo.InvariantCulture)),
    ["calibrate", var shares, var recovery] => Calibration.Run(shares, recovery),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("Give a command: many-families FOLDER, reidentify FAMILIES, calibrate STUDIES_OF_SHARES STUDIES_OF_RECOVERY, speed FOLDER COUNT, pool FOLDER OUTPUT");
    return 2;
}
