"""What a shell reads to complete finishlog: a few lines that ask the program itself.

The program is handed the line as typed and answers one candidate a line; leaving with 1 it says
that a file is wanted.
"""

from __future__ import annotations

from finishlog.errors import UsageFault

BASH = r"""
_finishlog() {
    local answer line said
    answer=$("$1" --complete bash "${COMP_LINE:0:COMP_POINT}" "$COMP_WORDBREAKS" 2>/dev/null)
    said=$?
    COMPREPLY=()
    if [ "$said" -eq 1 ]; then
        compopt -o default 2>/dev/null
    elif [ -n "$answer" ]; then
        while IFS= read -r line; do COMPREPLY+=("$line"); done <<<"$answer"
        case ${COMPREPLY[0]} in *[/:]) compopt -o nospace 2>/dev/null ;; esac
    fi
}
complete -F _finishlog finishlog fl
"""

ZSH = r"""
_finishlog() {
    local answer said
    answer=$("${(Q)words[1]}" --complete zsh "${(j: :)words[1,CURRENT-1]} $PREFIX" 2>/dev/null)
    said=$?
    if [ "$said" -eq 1 ]; then
        _files
    elif [ -n "$answer" ]; then
        compadd -- "${(@f)answer}"
    fi
}
compdef _finishlog finishlog fl
"""

FISH = r"""
function __finishlog_complete
    set -l words (commandline -opc)
    set -l answer ($words[1] --complete fish (commandline -cp | string collect) 2>/dev/null)
    if test $status -eq 1
        __fish_complete_path (commandline -ct)
    else if set -q answer[1]
        printf '%s\n' $answer
    end
end
complete -c finishlog -f -a '(__finishlog_complete)'
complete -c fl -f -a '(__finishlog_complete)'
"""

_SCRIPTS = {"bash": BASH, "zsh": ZSH, "fish": FISH}


def script(shell: str) -> str:
    """Return the lines for a shell to read; UsageFault for one that we do not know."""
    if shell not in _SCRIPTS:
        raise UsageFault(f"no completion for {shell!r}", f"type one of: {', '.join(_SCRIPTS)}")
    return _SCRIPTS[shell].lstrip("\n")
