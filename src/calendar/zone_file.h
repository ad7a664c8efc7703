// zone_file.h - one file of the system's time zone database (TZif, RFC 8536): the distance from
// universal time at an instant. Only the zone that is asked for is read.
#pragma once

#include "larderloop/core/date.h"

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop {

using UtcOffset = std::chrono::seconds;  // to be added to universal time

// Of the zone whose file has these bytes; absent when they are no file of version 2 or later.
[[nodiscard]] std::optional<UtcOffset> offset_in_file(std::string_view bytes, Instant at);

// By the rule at the end of such a file, for instants after its table: "CET-1CEST,M3.5.0,M10.5.0/3"
// (POSIX.1-2017, section 8.3, with the hours of RFC 8536, section 3.3.1). Absent when it cannot be
// read.
[[nodiscard]] std::optional<UtcOffset> offset_by_rule(std::string_view rule, Instant at);

// The bytes of the file of a zone, "Europe/Lisbon", or of the system's zone when the name is empty;
// absent when there is none.
[[nodiscard]] std::optional<std::string> zone_file(std::string_view zone);

// Every zone of the system, in order.
[[nodiscard]] std::vector<std::string> zone_names();

}  // namespace larderloop
