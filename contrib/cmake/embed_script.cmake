# Run by larderloop_embed: writes OUTPUT, a C++ source holding the files named in LIST as raw string literals.
cmake_minimum_required(VERSION 3.25)
file(READ ${LIST} files)

set(entries "")
set(count 0)
set(last_number 0)
foreach(file IN LISTS files)
  file(READ ${file} text)
  string(FIND "${text}" ")embedded\"" clash)
  if(NOT clash EQUAL -1)
    message(FATAL_ERROR "${file} holds the text that ends a raw string literal: )embedded\"")
  endif()
  get_filename_component(stem ${file} NAME_WE)
  if(KIND STREQUAL "migrations")
    if(NOT stem MATCHES "^([0-9][0-9][0-9][0-9])_[a-z0-9_]+$")
      message(FATAL_ERROR "${file}: a migration is named NNNN_name.sql, for example 0001_first.sql")
    endif()
    string(REGEX MATCH "[1-9][0-9]*" number ${CMAKE_MATCH_1})
    math(EXPR expected "${last_number} + 1")
    if(NOT number EQUAL expected)
      message(FATAL_ERROR "${file}: migrations are numbered without gaps; expected ${expected} here")
    endif()
    set(last_number ${number})
    set(key ${number})
  else()
    set(key "\"${stem}\"")
  endif()
  string(APPEND entries "    {${key}, R\"embedded(${text})embedded\"},\n")
  math(EXPR count "${count} + 1")
endforeach()

if(KIND STREQUAL "migrations")
  file(WRITE ${OUTPUT} "// Generated from src/store/sql by contrib/cmake/embed_script.cmake.
#include \"store/migrations.h\"

namespace larderloop {

const std::vector<std::pair<int, std::string_view>>& embedded_migrations() {
  static const std::vector<std::pair<int, std::string_view>> migrations = {
${entries}  };
  return migrations;
}

}  // namespace larderloop
")
elseif(KIND STREQUAL "tables")
  file(WRITE ${OUTPUT} "// Generated from data/tables by contrib/cmake/embed_script.cmake.
#include \"core/embedded.h\"

#include <map>
#include <stdexcept>
#include <string>

namespace larderloop {

std::string_view embedded_table(std::string_view name) {
  static const std::map<std::string_view, std::string_view> tables = {
${entries}  };
  const auto found = tables.find(name);
  if (found == tables.end()) throw std::out_of_range(\"no embedded table '\" + std::string(name) + \"'\");
  return found->second;
}

}  // namespace larderloop
")
else()
  message(FATAL_ERROR "unknown kind '${KIND}'")
endif()
