// problem_file_parts.h - values, ids and references of planning problems in JSON, each read
// strictly. Private to this room. Rule:     `null` stands for an optional member that is absent. An
// id that could not be read counts as known, so that one fault is told once.
#pragma once

#include "larderloop/intake/reader.h"
#include "larderloop/plan/problem.h"

#include <algorithm>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop::problem_file {

using intake::Findings;
using intake::JsonNode;
using intake::JsonType;
using intake::Need;
using intake::Path;
using intake::Reader;
using Ids = std::set<std::string>;

struct Range {
  std::int64_t least = 0;
  std::int64_t most = 0;
};
inline constexpr std::int64_t kMost =
    1'000'000'000'000'000;  // sums of products of such numbers stay within the checker's arithmetic
inline constexpr Range kAmount{0, kMost};
inline constexpr Range kPositive{1, kMost};
inline constexpr Range kDay{-kMost, kMost};

void number(Reader& in, std::string_view name, std::int64_t& out, Range range,
            Need need = Need::kRequired);
void number(Reader& in, std::string_view name, std::optional<std::int64_t>& out, Range range);
// A flag; absent or null keeps `out`.
void flag(Reader& in, std::string_view name, bool& out);
// The member "id": required, not empty, without '|', and new among `taken`.
void own_id(Reader& in, std::string& out, Ids& taken);
// An id of something that need not be in the problem.
void any_id(Reader& in, std::string_view name, std::string& out);
// The id of something that has to be among `known`; `thing` says what, as "an eater".
void reference(Reader& in, std::string_view name, std::string& out, const Ids& known,
               std::string_view thing, Need need = Need::kRequired);
[[nodiscard]] std::optional<std::string> read_reference(const JsonNode& node, const Path& path,
                                                        Findings& findings, const Ids& known,
                                                        std::string_view thing);
// A list of different ids of `known`; they come out sorted.
void references(Reader& in, std::string_view name, std::vector<std::string>& out, const Ids& known,
                std::string_view thing);
// A list of different words.
void words(Reader& in, std::string_view name, std::set<std::string>& out);
// An object {id: number} whose names are among `known`.
void numbers_by_id(Reader& in, std::string_view name, plan::NumbersById& out,
                   const Ids& known, std::string_view thing, Range range);
// Rated products and tags to avoid.
void tastes(Reader& in, plan::Eater& out, const Ids& products);

[[nodiscard]] plan::EatDownProblem read_eat_down(Reader& in);
[[nodiscard]] plan::RefillProblem read_refill(Reader& in);

// Calls read(reader) for the object in each element of a list, then finishes it.
template <class Function>
void each_object(Reader& in, std::string_view name, Need need, std::string_view thing,
                 Function read) {
  in.each(name, need, [&](const JsonNode& node, const Path& path) {
    Reader one(node, path, in.findings(), thing);
    read(one);
    one.finish();
  });
}

template <class T>
void sort_by_id(std::vector<T>& list) {
  std::sort(list.begin(), list.end(), [](const T& a, const T& b) { return a.id < b.id; });
}

}  // namespace larderloop::problem_file
