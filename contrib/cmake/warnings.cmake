# larderloop_warnings: linked privately by every target of this project, never passed on to users of the library.
add_library(larderloop_warnings INTERFACE)
target_compile_options(larderloop_warnings INTERFACE
  -Werror
  -Wall
  -Wextra
  -Wpedantic
  -Wshadow
  -Wconversion
  -Wsign-conversion
  -Wold-style-cast
  -Wnon-virtual-dtor
  -Woverloaded-virtual
  -Wswitch-enum
  -Wimplicit-fallthrough
  $<$<CXX_COMPILER_ID:GNU>:-Wduplicated-cond>
  $<$<CXX_COMPILER_ID:GNU>:-Wlogical-op>)
