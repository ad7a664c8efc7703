# fish completion for larderloop: commands, options, and what the book has.
function __larderloop_candidates
    set -l words (commandline -opc)
    larderloop complete -- $words[2..-1] (commandline -ct) 2>/dev/null
end
complete -c larderloop -f -a '(__larderloop_candidates)'
complete -c larderloop -n '__fish_prev_arg_in --book --from --output -o --problem --dump-problem --export-model' -F
