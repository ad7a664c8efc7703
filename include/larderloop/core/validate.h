// validate.h - is a household consistent in itself? One list of rules for documents, commands and the check of a book.
#pragma once

#include <vector>

#include "larderloop/core/error.h"
#include "larderloop/core/household.h"

namespace larderloop {

// Every inconsistency, in the order of the household's lists. `where` is a JSON pointer into the household document, whose
// lists have the same names and, here, the same order ("/lots/3/food"). Does not rely on the lists being sorted.
// Finds: bad or repeated keys and ids, references to nothing, amounts out of range, ids that do not increase, unknown allergen
// keys (with the nearest known one), contradictory labels, date marks whose day is not what precision and kind demand, wrongly
// nested places, menu lines with neither or both of role and food, pet food without species, GTINs with a wrong check digit,
// records that overdraw a lot. Recurrence rules are not judged here (calendar/rule.h does).
[[nodiscard]] std::vector<Problem> validate(const Household& household);

// Sorts every list by its key or id. Does not touch the order of things inside a record.
void sort_lists(Household& household);

// The nearest of `known` to `text` by edit distance, when it is near enough to be a slip; else empty. Ties: the first.
[[nodiscard]] std::string nearest(std::string_view text, const std::vector<std::string>& known);

// GTIN-8, -12, -13 or -14 to 14 digits, when the check digit is right (GS1 General Specifications, section 7.9); else empty.
[[nodiscard]] std::string normal_gtin(std::string_view digits);
// The right check digit for the digits before the last one; only for digits.
[[nodiscard]] char gtin_check_digit(std::string_view digits_without_check);

}  // namespace larderloop
