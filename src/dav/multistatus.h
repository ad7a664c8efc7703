// multistatus.h - the XML of WebDAV answers (RFC 4918 section 13), read by pugixml; names are
// compared with their name spaces.
#pragma once

#include "larderloop/dav/collection.h"

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop::dav {

// The items of an answer to a calendar query that have calendar data. Nothing when it is no such
// answer.
[[nodiscard]] std::optional<std::vector<DavItem>> read_items(std::string_view xml);

// What an answer about the collection itself says. `components`: empty = it does not say, so any.
struct CollectionKind {
  bool calendar = false;
  std::set<std::string> components;
};
[[nodiscard]] std::optional<CollectionKind> read_kind(std::string_view xml);

// The plain words of an error document (DAV:error): the name of the broken rule, "no-uid-conflict";
// empty when it has none.
[[nodiscard]] std::string read_rule(std::string_view xml);

}  // namespace larderloop::dav
