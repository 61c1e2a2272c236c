using CareRecords.Studies;

return args switch
{
    ["speed", var folder, var count] => Speed.Run(folder, int.Parse(count, System.Globalization.CultureInfo.InvariantCulture)),
    ["many-families", var folder] => ManyFamilies.Run(folder),
    ["reidentify", var families] => Reidentification.Run(int.Parse(families, System.Globalization.CultureInfo.InvariantCulture)),
    ["calibrate", var studies] => Calibration.Run(studies),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("Give a command: many-families FOLDER, reidentify FAMILIES, calibrate STUDIES, speed FOLDER COUNT");
    return 2;
}
