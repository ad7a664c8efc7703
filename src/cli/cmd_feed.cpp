// feed add, list, revoke: the addresses under which the calendar is served.
#include "cli/command.h"
#include "cli/option_parts.h"
#include "cli/paper_module.h"
#include "cli/random_bytes.h"
#include "cli/values.h"
#include "larderloop/app/find.h"
#include "larderloop/render/feed_addresses.h"

#include <memory>

namespace larderloop::cli {
namespace {

struct AddOptions {
  std::string name, person, detail, base, code;
  bool plain = false;
};

Result<NewFeedAddress> read_wanted(const Household& household, const AddOptions& given) {
  NewFeedAddress wanted{given.name, std::nullopt, std::nullopt};
  if (!given.person.empty()) {
    auto person = named_person(household, given.person);
    if (!person) return fail(person.error());
    wanted.person = (*person)->key;
  }
  if (!given.detail.empty()) {
    auto detail = read_word<FeedDetail>("--detail", given.detail, parse_feed_detail,
                                        names_of(kAllFeedDetails, feed_detail_name));
    if (!detail) return fail(detail.error());
    wanted.detail = *detail;
  }
  return wanted;
}

// The code of an address in characters. Drawing is the paper's; without it the address alone has to
// do.
std::string drawn(const std::string& address, bool plain, Runtime& runtime) {
  const auto module = paper_module();
  if (!module) {
    runtime.warn("no code is drawn: " + module.error().what);
    return {};
  }
  PaperDocument document;
  document.pages.push_back({{}, {}, {PaperCode{address, {}, {}}}});
  if (const Status made = (*module)->codes(document); !made) {
    runtime.warn("no code is drawn: " + made.error().what);
    return {};
  }
  const auto& code = std::get<PaperCode>(document.pages.front().blocks.front());
  return draw_code(code.modules, plain               ? CodeStyle::kPlain
                                 : runtime.colours() ? CodeStyle::kPaint
                                                     : CodeStyle::kBlocks);
}

Result<int> add(const AddOptions& given, Runtime& runtime) {
  std::optional<FeedBase> base;
  if (!given.base.empty()) {
    auto read = parse_feed_base(given.base);
    if (!read) return fail(read.error());
    base = *read;
  }
  if (!given.code.empty() && given.code != "webcals" && given.code != "https" &&
      given.code != "none")
    return fail(unknown_word("--code", given.code, {"webcals", "https", "none"}));
  auto bits = random_token_bits();
  if (!bits) return fail(bits.error());
  auto made = runtime.write(
      [&](const Household& household, Asked asked) -> Result<Outcome<FeedAddressMade>> {
        auto wanted = read_wanted(household, given);
        if (!wanted) return fail(wanted.error());
        return add_feed_address(household, *wanted, *bits, asked);
      });
  if (!made) return fail(made.error());
  if (base && !base->secure && !base->is_loopback())
    runtime.warn(
        "not protected: everybody in the networks between can read this address and the calendar; "
        "only for a home network that you trust");
  if (runtime.options.json) {
    runtime.print_bytes(render_feed_address_made_json(*made, base, runtime.asked().today));
    return 0;
  }
  std::string code;
  if (base && given.code != "none")
    code = drawn(base->address(made->token, given.code != "https"), given.plain, runtime);
  const FeedAddressTold told = render_feed_address_made(runtime.household(), *made, base);
  runtime.print(told.before);
  if (!code.empty()) runtime.print_bytes(code + "\n");
  runtime.print(told.after);
  return 0;
}

}  // namespace

Action add_feed_add(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<AddOptions>();
  app.add_option("NAME", given->name, "For which phone or person, in your words")->required();
  add_text(app, "--person", given->person, "PERSON",
           "Only the meals in which this person eats; left out: everyone's");
  add_text(app, "--detail", given->detail, "DETAIL",
           "full, or private: neither food nor place nor name (else the setting of the book)");
  add_text(app, "--base", given->base, "URL",
           "Where phones find the server: https://HOST/PATH; the whole address is told then");
  add_text(app, "--code", given->code, "WORD",
           "What the code to scan holds: webcals, https or none (webcals)");
  app.add_flag("--plain", given->plain, "Draw the code with plain characters");
  set_help(app,
           {"larderloop feed add \"Mira's phone\" --person mira --base https://kit.example/feed\n"
            "larderloop feed add Hall --detail private --base https://kit.example/feed\n"
            "larderloop feed add Desk --base http://127.0.0.1:8467\n",
            "An address under which larderloop serve gives the calendar, one for each phone. "
            "It cannot be guessed, is told this once, and is valid until it is revoked. "
            "webcals is https for calendars: a phone that knows it subscribes at once.",
            {}});
  return [given, &runtime]() -> Result<int> { return add(*given, runtime); };
}

Action add_feed_list(CLI::App& app, Runtime& runtime) {
  set_help(app, {"larderloop feed list\nlarderloop feed list --json\n",
                 "The addresses themselves are told only when they are made; a lost one is revoked "
                 "and made anew.",
                 {}});
  return [&runtime]() -> Result<int> {
    return runtime.read([&](const Household& household, Asked asked) -> Result<int> {
      if (runtime.options.json)
        runtime.print_bytes(render_feed_addresses_json(household.feed_addresses, asked.today));
      else
        runtime.print(render_feed_addresses(household, household.feed_addresses, runtime.width()));
      return 0;
    });
  };
}

Action add_feed_revoke(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<std::string>();
  app.add_option("ADDRESS", *given, "Its name or number, as larderloop feed list has them")
      ->required();
  set_help(app, {"larderloop feed revoke \"Mira's phone\"\nlarderloop feed revoke 3\n",
                 "From now on the address gives nothing, also from a server that is running. The "
                 "others stay valid. It cannot be taken back: make a new one.",
                 {}});
  return [given, &runtime]() -> Result<int> {
    auto revoked =
        runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<FeedAddress>> {
          return revoke_feed_address(household, *given, asked);
        });
    if (!revoked) return fail(revoked.error());
    if (runtime.options.json)
      runtime.print_bytes(render_feed_addresses_json({*revoked}, runtime.asked().today));
    runtime.note("revoked address " + std::to_string(revoked->id.value()) + " (" + revoked->name +
                 "); a new one: larderloop feed add");
    return 0;
  };
}

}  // namespace larderloop::cli
