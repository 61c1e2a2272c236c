using CareRecords.Checks;

// Checks of a finished workbook that .ci/run makes with tools from outside the project.
return args switch
{
    ["validate", .. var files] when files.Length > 0 => Validation.Run(files, Console.Out),
    ["recalculated", var written, var recalculated] => Recalculation.Run(written, recalculated, Console.Out),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("validate FILE.xlsx...: Open XML validator errors. recalculated WRITTEN.xlsx RECALCULATED.xlsx: compare every formula cell.");
    return 2;
}
