// gs1_date.h - one date element of a GS1 message as people type it, "(17)270228".
// Source:   GS1 General Specifications 3.4 (AI 11, 13, 15, 16, 17: YYMMDD, day 00 = no day, the
// last of the month) and 7.12.
#pragma once

#include "intake/date_readings.h"

#include <string>
#include <string_view>

namespace larderloop::intake {

struct Gs1Date {
  MarkKind kind = MarkKind::kNone;
  ReadDate date;
};

[[nodiscard]] bool looks_like_gs1(std::string_view text);  // begins with '('
// Blanks are passed over. `shown`: what was typed.
[[nodiscard]] Result<Gs1Date> read_gs1_date(std::string_view text, const std::string& shown,
                                            Day today);

}  // namespace larderloop::intake
