using System.CommandLine;
using System.CommandLine.Invocation;

namespace CareRecords.CommandLine;

/// <summary>
/// <c>--completion SHELL</c>: prints the script that makes a shell complete verbs and options with the Tab key. The scripts ask the program itself,
/// so that they never fall behind it; where a file belongs they leave the shell to complete file names.
/// </summary>
internal static class Completion
{
    private static readonly Dictionary<string, string> Scripts = new()
    {
        ["bash"] = """
            # In ~/.bashrc: source <(carerecords --completion bash)
            _carerecords() {
                local word="${COMP_WORDS[COMP_CWORD]}" line="${COMP_LINE:0:COMP_POINT}"
                COMPREPLY=()
                [[ $COMP_CWORD -gt 1 && $word != -* ]] && return
                mapfile -t COMPREPLY < <(compgen -W "$("${COMP_WORDS[0]}" "[suggest:${#line}]" "$line" 2>/dev/null)" -- "$word")
            }
            complete -o default -F _carerecords carerecords
            """,
        ["zsh"] = """
            # In ~/.zshrc, after compinit: source <(carerecords --completion zsh)
            _carerecords() {
                local line="$BUFFER[1,CURSOR]"
                if (( CURRENT > 2 )) && [[ ${words[CURRENT]} != -* ]]; then
                    _files
                else
                    compadd -- ${(f)"$(${words[1]} "[suggest:${#line}]" "$line" 2>/dev/null)"}
                    (( CURRENT == 2 )) && _files
                fi
            }
            compdef _carerecords carerecords
            """,
        ["fish"] = """
            # In ~/.config/fish/config.fish: carerecords --completion fish | source
            function __carerecords
                set -l line (commandline -cp)
                carerecords "[suggest:"(string length -- $line)"]" $line 2>/dev/null
            end
            complete -c carerecords -n 'test (count (commandline -opc)) -eq 1; or string match -q -- "-*" (commandline -ct)' -a '(__carerecords)'
            """,
        ["powershell"] = """
            # In your profile: carerecords --completion powershell | Out-String | Invoke-Expression
            Register-ArgumentCompleter -Native -CommandName carerecords -ScriptBlock {
                param($word, $tree, $position)
                $line = $tree.ToString()
                if ($tree.CommandElements.Count -gt 2 -and $word -notlike '-*') { return }
                carerecords "[suggest:$position]" "$line" 2>$null | Where-Object { $_ -like "$word*" } | ForEach-Object {
                    [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
                }
            }
            """,
    };

    public static Option<string> Option()
    {
        var option = new Option<string>("--completion") { Description = $"Print the script for Tab completion in a shell: {string.Join(", ", Scripts.Keys)}.", HelpName = "shell" };
        option.CompletionSources.Add([.. Scripts.Keys]);
        option.Action = new Printing(option);
        return option;
    }

    private sealed class Printing(Option<string> option) : SynchronousCommandLineAction
    {
        public override int Invoke(ParseResult parseResult)
        {
            var shell = parseResult.GetValue(option) ?? "";
            if (!Scripts.TryGetValue(shell, out var script)) throw new UserMistakeException($"--completion is '{shell}': it can be {string.Join(", ", Scripts.Keys)}.");
            parseResult.InvocationConfiguration.Output.WriteLine(script);
            return ExitCode.Done;
        }
    }
}
