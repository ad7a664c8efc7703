# bash completion for larderloop: commands, options, and what the book has.
_larderloop() {
  local line
  COMPREPLY=()
  while IFS= read -r line; do
    COMPREPLY+=("${line%%$'\t'*}")
  done < <("${COMP_WORDS[0]}" complete -- "${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null)
}
complete -o default -F _larderloop larderloop
