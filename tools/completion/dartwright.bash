# Completion of dartwright for bash: commands, options, the names in a pattern, and files. The program's own help
# says what there is, so that nothing here can fall behind it.

# A word as the shell takes it, without the quotes and backslashes that it was typed with.
_dartwright_plain() {
    local plain
    plain=$(xargs printf '%s' 2> /dev/null <<< "$1")
    [[ $1 == \~/* ]] && plain=$HOME/${plain:2}
    printf '%s' "$plain"
}

# Words of a pattern file by kind (piece, dart, edge, seam), one a line.
_dartwright_names() {
    local kind=$1 file=$2
    [[ -f $file ]] || return
    "$_dartwright_program" show "$file" --format json 2> /dev/null | awk -v kind="$kind" '
        /^  "pieces"/ { part = "piece" }
        /^  "seams"/ { part = "seam" }
        /^      "runs"/ { part = "edge" }
        /^      "darts"/ { part = "dart" }
        /^    },?$/ { if (part != "seam") part = "piece" }
        (/"name": / && part == kind) || (/"edge": / && part == "edge" && kind == "edge") {
            sub(/^[^:]*: "/, ""); sub(/",?$/, ""); print
        }' | sort -u
}

_dartwright_options() {
    "$_dartwright_program" "$1" --help 2> /dev/null | grep -oE -- '^  (-[a-z], )?--[a-z-]+' | grep -oE -- '--[a-z-]+'
}

# The value of a command's option as its help has it: PIECE, text|json, or nothing.
_dartwright_value() {
    "$_dartwright_program" "$1" --help 2> /dev/null | sed -nE "s/^  (-[a-z], )?$2 ([^ ]+)( .*)?$/\2/p"
}

# What the option before the word wants: lines of words, or nothing for a file.
_dartwright_values() {
    local file wanted
    [[ $1 == -* ]] || return
    file=$(_dartwright_plain "${COMP_WORDS[2]}")
    if [[ $1 == --line ]]; then
        _dartwright_names edge "$file"
        return
    fi
    while IFS= read -r -d '|' wanted; do
        case $wanted in
            PIECE | DART | SEAM | EDGE) _dartwright_names "${wanted,,}" "$file" ;;
            PLACE*) _dartwright_names edge "$file" | sed 's/$/@/' ;;
            [a-z]* | A[0-9]) printf '%s\n' "${wanted%WIDTH}" ;;
        esac
    done < <(_dartwright_value "${COMP_WORDS[1]}" "$1" | sed -E '/\||^(PIECE|DART|SEAM|EDGE|PLACE.*)$/!d; s/^\[[^]]*\]//; s/$/|/')
}

_dartwright() {
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} name
    local _dartwright_program
    _dartwright_program=$(_dartwright_plain "${COMP_WORDS[0]}")
    COMPREPLY=()
    if ((COMP_CWORD == 1)); then
        mapfile -t COMPREPLY < <(compgen -W "$("$_dartwright_program" --help 2> /dev/null |
            sed -n '/^Commands:/,/^$/s/^  \([a-z]*\).*/\1/p') help --help --version" -- "$word")
        return
    fi
    if ((COMP_CWORD == 2)) && [[ $before == help ]]; then
        mapfile -t COMPREPLY < <(compgen -W "$("$_dartwright_program" --help 2> /dev/null |
            sed -n '/^Commands:/,/^$/s/^  \([a-z]*\).*/\1/p')" -- "$word")
        return
    fi
    if [[ $word == -* ]]; then
        mapfile -t COMPREPLY < <(compgen -W "$(_dartwright_options "${COMP_WORDS[1]}")" -- "$word")
        return
    fi
    while IFS= read -r name; do
        [[ $name == "${word//\\/}"* ]] && COMPREPLY+=("$(printf '%q' "$name")")
    done < <(_dartwright_values "$before")
    # What ends so goes on: a distance, a width.
    [[ ${COMPREPLY[*]} == *[@:] ]] && compopt -o nospace 2> /dev/null
    ((${#COMPREPLY[@]})) || compopt -o default 2> /dev/null
}

complete -F _dartwright dartwright
