// Any household, written and read again, is the same household, and written once more the same
// bytes. Any text at all, read as a document, gives findings or a household, never a crash; texts
// near to a document are made by changing single bytes of one.
#include "larderloop/core/validate.h"
#include "larderloop/intake/document.h"
#include "support/household_gen.h"
#include "unit/intake/small_document.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cstdlib>

namespace larderloop {
namespace {

std::string first_finding(const Error& error) {
  if (error.problems.empty()) return error.what;
  const Problem& problem = error.problems.front();
  return problem.where + " [" + problem.value + "] " + problem.what;
}

RC_GTEST_PROP(DocumentRoundtrip, HouseholdsComeBackTheSame, ()) {
  const auto seed = *rc::gen::arbitrary<std::uint64_t>();
  const int size = *rc::gen::inRange(0, 120);
  const Household household = generate_household(seed, size);
  const std::string text = render_document(household);
  const auto back = parse_document(text);
  if (!back) RC_FAIL(first_finding(back.error()));
  RC_ASSERT(*back == household);
  RC_ASSERT(render_document(*back) == text);
}

// Texts of people hold anything that UTF-8 can; the document keeps it.
RC_GTEST_PROP(DocumentRoundtrip, TextsOfAnyKindComeBackTheSame, ()) {
  Household household = generate_household(1, 5);
  const auto code_points = *rc::gen::container<std::u32string>(
      rc::gen::suchThat(rc::gen::inRange<char32_t>(1, 0x110000),
                        [](char32_t c) { return c < 0xD800 || c > 0xDFFF; }));
  std::string text;
  for (const char32_t c : code_points) {
    const auto byte = [&](char32_t bits) {
      text += static_cast<char>(static_cast<unsigned char>(bits));
    };
    if (c < 0x80) {
      byte(c);
    } else if (c < 0x800) {
      byte(0xC0 | (c >> 6));
      byte(0x80 | (c & 0x3F));
    } else if (c < 0x10000) {
      byte(0xE0 | (c >> 12));
      byte(0x80 | ((c >> 6) & 0x3F));
      byte(0x80 | (c & 0x3F));
    } else {
      byte(0xF0 | (c >> 18));
      byte(0x80 | ((c >> 12) & 0x3F));
      byte(0x80 | ((c >> 6) & 0x3F));
      byte(0x80 | (c & 0x3F));
    }
  }
  household.people.front().note = text;
  household.foods.front().note = text;
  household.settings.name = "x" + text;
  const auto back = parse_document(render_document(household));
  if (!back) RC_FAIL(first_finding(back.error()));
  RC_ASSERT(*back == household);
}

RC_GTEST_PROP(DocumentRoundtrip, AChangedByteIsAFindingOrAHousehold, ()) {
  std::string text = kSmallDocument;
  const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
  text[at] = *rc::gen::arbitrary<char>();
  const auto household = parse_document(text);
  if (household) {
    RC_ASSERT(validate(*household).empty());
    RC_ASSERT(*parse_document(render_document(*household)) == *household);
  } else {
    RC_ASSERT(household.error().kind == ErrorKind::kBadData);
    RC_ASSERT(!household.error().problems.empty());
    RC_ASSERT(household.error().problems.size() <= 200U);
  }
}

}  // namespace
}  // namespace larderloop
