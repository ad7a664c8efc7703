# larderloop_embed(<target> <kind> FILES <file>...): compile text files into <target>.
# kind "migrations": implements src/store/migrations.h, kind "tables": implements src/core/embedded.h.
# The work is done by embed_script.cmake at build time, again whenever one of the files changes.
function(larderloop_embed target kind)
  cmake_parse_arguments(PARSE_ARGV 2 arg "" "" "FILES")
  set(script ${PROJECT_SOURCE_DIR}/contrib/cmake/embed_script.cmake)
  set(output ${CMAKE_CURRENT_BINARY_DIR}/embedded_${kind}.cpp)
  # The list of names is an input too: without it a deleted file would stay in the program.
  set(list_file ${CMAKE_CURRENT_BINARY_DIR}/embedded_${kind}.txt)
  file(CONFIGURE OUTPUT ${list_file} CONTENT "${arg_FILES}" @ONLY)
  add_custom_command(
    OUTPUT ${output}
    COMMAND ${CMAKE_COMMAND} -DKIND=${kind} -DLIST=${list_file} -DOUTPUT=${output} -P ${script}
    DEPENDS ${script} ${list_file} ${arg_FILES}
    COMMENT "Embedding ${kind}"
    VERBATIM)
  # clang warns of literals over 65,536 bytes, the least a C++ compiler must take; both of ours take more.
  set_source_files_properties(${output} PROPERTIES COMPILE_OPTIONS -Wno-overlength-strings)
  target_sources(${target} PRIVATE ${output})
endfunction()
