// find.h - which thing did they mean? One way of naming things for every command.
// Rules:    people, foods and places by key, or by their whole name (upper and lower case of A to Z
// are the same). Lots by number
//           ("17", "#17", "lot 17"), or by a food of which just one lot is on hand. Nothing is
//           guessed: a near miss is named, an ambiguous name lists what it could be.
// Errors:   kNotFound for what does not exist, kBadData for what is ambiguous. Pointers live as
// long as the household.
#pragma once

#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace larderloop {

[[nodiscard]] Result<const Person*> named_person(const Household& household, std::string_view text);
// A food also by the digits under its bars, or by a whole scan of them (intake/gs1.h).
[[nodiscard]] Result<const Food*> named_food(const Household& household, std::string_view text);
// The food with this GTIN (14 digits).
[[nodiscard]] Result<const Food*> food_with_gtin(const Household& household, std::string_view gtin);
[[nodiscard]] std::vector<std::string> known_gtins(const Household& household);
[[nodiscard]] Result<const Place*> named_place(const Household& household, std::string_view text);
[[nodiscard]] Result<const Lot*> named_lot(const Household& household, std::string_view text);
// "512" or "#512".
[[nodiscard]] Result<EntryId> named_entry(const Household& household, std::string_view text);

}  // namespace larderloop
