# The program runs for some milliseconds, and looking up the symbols of thirty shared libraries would take as many again. So libraries
# come in as archives wherever the system has them, and as shared libraries where it does not. The price is the size of the program:
# 46 MB stripped instead of 5, of which 30 are the data of ICU, read only where they are used. Debug builds have a dozen test programs
# and do without.
if(CMAKE_BUILD_TYPE STREQUAL "Debug")
  set(static_by_default OFF)
else()
  set(static_by_default ON)
endif()
option(LARDERLOOP_STATIC_LIBRARIES "Link libraries as archives where the system has them" ${static_by_default})

# Always there, and better taken as they are: parts of the C library.
set(LARDERLOOP_C_LIBRARIES m pthread rt dl c)

# The run-time library of C++, for a program whose other libraries are archives: two copies of it must not meet.
if(LARDERLOOP_STATIC_LIBRARIES)
  set(LARDERLOOP_STATIC_RUNTIME -static-libstdc++ -static-libgcc)
endif()

# larderloop_archives(<result> <name>...): lib<name>.a for each name, or nothing when one is missing.
function(larderloop_archives result)
  set(archives "")
  foreach(name IN LISTS ARGN)
    if(name IN_LIST LARDERLOOP_C_LIBRARIES)
      list(APPEND archives ${name})
      continue()
    endif()
    find_library(LARDERLOOP_ARCHIVE_${name} lib${name}.a HINTS ${CMAKE_CXX_IMPLICIT_LINK_DIRECTORIES})
    mark_as_advanced(LARDERLOOP_ARCHIVE_${name})
    if(NOT LARDERLOOP_ARCHIVE_${name})
      message(STATUS "lib${name}.a is not there: shared libraries instead")
      set(${result} "" PARENT_SCOPE)
      return()
    endif()
    list(APPEND archives ${LARDERLOOP_ARCHIVE_${name}})
  endforeach()
  set(${result} ${archives} PARENT_SCOPE)
endfunction()

# larderloop_package(<name> MODULES <pkg-config module>... [ARCHIVES <name>...]) makes larderloop_package_<name>, to be linked.
# ARCHIVES are what the archives of the modules need besides what pkg-config tells.
function(larderloop_package name)
  cmake_parse_arguments(PARSE_ARGV 1 arg "" "" "MODULES;ARCHIVES")
  pkg_check_modules(${name} REQUIRED IMPORTED_TARGET ${arg_MODULES})
  add_library(larderloop_package_${name} INTERFACE)
  set(archives "")
  if(LARDERLOOP_STATIC_LIBRARIES)
    larderloop_archives(archives ${${name}_STATIC_LIBRARIES} ${arg_ARCHIVES})
  endif()
  if(archives)
    target_include_directories(larderloop_package_${name} SYSTEM INTERFACE ${${name}_INCLUDE_DIRS})
    target_link_libraries(larderloop_package_${name} INTERFACE ${archives})
  else()
    target_link_libraries(larderloop_package_${name} INTERFACE PkgConfig::${name})
    set(LARDERLOOP_STATIC_RUNTIME "" PARENT_SCOPE)
  endif()
endfunction()
