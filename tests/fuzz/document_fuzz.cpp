// Any bytes as a household document: findings, or a valid household whose canonical text reads back
// as the same.
#include "larderloop/core/validate.h"
#include "larderloop/intake/document.h"
#include "require.h"

#include <cstddef>
#include <cstdint>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace larderloop;
  const auto household = parse_document({reinterpret_cast<const char*>(data), size});
  if (!household) {
    require(!household.error().problems.empty(), "a refusal names at least one finding");
    require(household.error().problems.size() <= 200, "at most 200 findings are listed");
    return 0;
  }
  require(validate(*household).empty(), "what is read is valid");
  const std::string text = render_document(*household);
  const auto back = parse_document(text);
  require(back.has_value(), "what is written is read");
  require(*back == *household, "and is the same household");
  require(render_document(*back) == text, "and gives the same bytes");
  return 0;
}
