namespace CareRecords.Pooling;

/// <summary>Reads a tidy folder back, one row group of every table at a time.</summary>
internal static class TidyReader
{
    public static IEnumerable<SharedInput> Read(string folder, string name)
    {
        var missing = TidyTable.All.Select(t => t.Table.Name + ".parquet").FirstOrDefault(f => !File.Exists(Path.Combine(folder, f)));
        if (missing is not null)
        {
            yield return new RefusedInput(name, $"looks like a tidy folder, but {missing} is missing");
            yield break;
        }

        var files = new List<ParquetFile>();
        try
        {
            if (Open(folder, files) is { } why)
            {
                yield return new RefusedInput(name, why);
                yield break;
            }

            for (var g = 0; g < files[0].Groups; g++)
            {
                var (children, failed) = ChildrenOf(files, g, name);
                foreach (var child in children) yield return child;
                if (failed is not null)
                {
                    yield return new RefusedInput(name, failed);
                    yield break;
                }
            }
        }
        finally
        {
            foreach (var file in files) file.Dispose();
        }
    }

    private static string? Open(string folder, List<ParquetFile> files)
    {
        try
        {
            foreach (var table in TidyTable.All) files.Add(new ParquetFile(table, Path.Combine(folder, table.Table.Name + ".parquet")));
        }
        catch (InvalidDataException e)
        {
            return e.Message;
        }
        catch (IOException)
        {
            return "cannot be read: a Parquet file is damaged or open in another program";
        }

        return files.Exists(f => f.Groups != files[0].Groups) ? "its tables do not belong together" : null;
    }

    private static (IReadOnlyList<SharedInput> Children, string? Failed) ChildrenOf(List<ParquetFile> files, int group, string name)
    {
        try
        {
            var rows = files.ConvertAll(f => f.RowsByChild(group));
            var codes = rows[0].Keys.ToList();
            if (rows.Exists(r => r.Keys.Any(code => !rows[0].ContainsKey(code)))) return ([], "holds rows of a child that is not in its table of children");
            return ([.. codes.Select(code => ChildOf(code, rows, name))], null);
        }
        catch (InvalidDataException e)
        {
            return ([], e.Message);
        }
        catch (IOException)
        {
            return ([], "cannot be read: a Parquet file is damaged");
        }
    }

    private static SharedInput ChildOf(string code, List<Dictionary<string, List<object?[]>>> rows, string name)
    {
        var child = $"{name}, child {(ChildCode.TryRead(code, out var known) ? known.Text[..8] : "without a code")}";
        try
        {
            var findings = SharedTables.Assemble(table => RowsOf(table, code, rows));
            var seal = rows[0][code][0][^1] as string;
            return SharedTables.Seal(findings) == seal ? new SharedChild(child, findings) : new RefusedInput(child, "was changed after it was written: its rows do not fit its seal");
        }
        catch (InvalidDataException e)
        {
            return new RefusedInput(child, $"was changed after it was written: {e.Message}");
        }
    }

    private static IEnumerable<object?[]> RowsOf(SharedTable table, string code, List<Dictionary<string, List<object?[]>>> rows)
    {
        var place = SharedTables.All.ToList().IndexOf(table);
        return rows[place].TryGetValue(code, out var found) ? found.Select(TidyTable.All[place].Shared) : [];
    }
}
