// feed_addresses.h - addresses of the served calendar as text and JSON
// (docs/schema/feed_addresses-1, feed_address_made-1), and a code of two dimensions in characters.
// The word of an address is told when it is made and never again.
#pragma once

#include "larderloop/app/feed_address.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace larderloop {

// "the whole household, in full", "the meals of Mira, without food and names".
[[nodiscard]] std::string feed_address_words(const Household& household,
                                             const FeedAddress& address);
// `width`: 0 = not a terminal.
[[nodiscard]] std::string render_feed_addresses(const Household& household,
                                                const std::vector<FeedAddress>& addresses,
                                                std::size_t width);
[[nodiscard]] std::string render_feed_addresses_json(const std::vector<FeedAddress>& addresses,
                                                     Day as_of);

// What was made, with the addresses to subscribe to, or without a base the end of them; a drawn code has its place between the two.
struct FeedAddressTold {
  std::string before, after;
};
[[nodiscard]] FeedAddressTold render_feed_address_made(const Household& household,
                                                       const FeedAddressMade& made,
                                                       const std::optional<FeedBase>& base);
[[nodiscard]] std::string render_feed_address_made_json(const FeedAddressMade& made,
                                                        const std::optional<FeedBase>& base,
                                                        Day as_of);

// A code as characters, with the quiet zone of four modules around it that ISO/IEC 18004 asks for.
// `modules`: '1' dark, '0' light, row by row of a square.
//   kBlocks  two rows a line in half blocks, light drawn as full: for letters that are light on
//   dark kPaint   the same in black on white by colour codes: right on every terminal with colours
//   kPlain   two characters a module, "##" dark: for a terminal without such characters
enum class CodeStyle { kBlocks, kPaint, kPlain };
[[nodiscard]] std::string draw_code(const std::string& modules, CodeStyle style);

}  // namespace larderloop
