#include "intake/read_sections.h"
#include "larderloop/core/validate.h"
#include "larderloop/intake/document.h"

#include <fmt/format.h>

#include <utility>

namespace larderloop {
namespace {

using intake::Findings;
using intake::JsonNode;
using intake::JsonType;
using intake::Need;
using intake::Path;
using intake::Reader;

constexpr std::string_view kFormat = "larderloop.household";
constexpr std::int64_t kVersion = 1;

// Is it a household document of a version that is known here? If not, nothing else in it can be
// judged.
bool check_head(const JsonNode& document, Findings& findings) {
  const Path root;
  if (document.type != JsonType::kObject) {
    findings.add(root, &document, "a household document is one JSON object",
                 "write it in braces, with the member \"format\" first");
    return false;
  }
  const JsonNode* format = document.find("format");
  if (format == nullptr || format->type != JsonType::kText || format->text != kFormat) {
    findings.add(format == nullptr ? root : Path(root, "format"), format,
                 format == nullptr ? "the document does not say its format"
                                   : "this is not a household document",
                 fmt::format("a household document has \"format\": \"{}\"", kFormat));
    return false;
  }
  const JsonNode* version = document.find("version");
  if (version != nullptr && version->type == JsonType::kInteger && version->integer > kVersion) {
    findings.add(Path(root, "version"), version,
                 fmt::format("version {} of the format is newer than this program, which reads "
                             "version {}",
                             version->integer, kVersion),
                 "use a newer release of the program");
    return false;
  }
  if (version == nullptr || version->type != JsonType::kInteger || version->integer != kVersion) {
    findings.add(version == nullptr ? root : Path(root, "version"), version,
                 version == nullptr ? "the document does not say its version"
                                    : "there is no such version of the format",
                 fmt::format("write \"version\": {}", kVersion));
    return false;
  }
  return true;
}

template <class T, class Read, class... More>
void read_list(Reader& in, std::string_view name, std::vector<T>& out, Read read,
               const More&... more) {
  in.each(name, Need::kOptional, [&](const JsonNode& node, const Path& path) {
    out.push_back(read(node, path, in.findings(), more...));
  });
}

// Lots and foods come before whatever counts in units of a lot, wherever they stand in the text.
Household read_household(const JsonNode& document, Findings& findings) {
  const Path root;
  Reader in(document, root, findings, "the document");
  Household out;
  static_cast<void>(in.member("format", Need::kRequired));
  static_cast<void>(in.member("version", Need::kRequired));
  in.text("book_id", out.book_id, Need::kRequired);
  if (const JsonNode* settings = in.member("settings", Need::kOptional)) {
    out.settings = intake::read_settings(*settings, Path(root, "settings"), findings);
  }
  read_list(in, "own_allergens", out.own_allergens, intake::read_own_allergen);
  read_list(in, "people", out.people, intake::read_person);
  read_list(in, "foods", out.foods, intake::read_food);
  read_list(in, "places", out.places, intake::read_place);
  read_list(in, "review_rules", out.review_rules, intake::read_review_rule);
  read_list(in, "menu", out.menu, intake::read_menu_line);
  read_list(in, "table", out.table, intake::read_seat);
  read_list(in, "exceptions", out.exceptions, intake::read_exception);
  read_list(in, "wishes", out.wishes, intake::read_wish);
  read_list(in, "lots", out.lots, intake::read_lot);
  read_list(in, "readings", out.readings, intake::read_reading);
  const intake::UnitSizes sizes = intake::unit_sizes(out);
  read_list(in, "entries", out.entries, intake::read_entry, sizes);
  read_list(in, "review_events", out.review_events, intake::read_review_event);
  read_list(in, "review_marks", out.review_marks, intake::read_review_mark, sizes);
  read_list(in, "trials", out.trials, intake::read_trial);
  read_list(in, "trial_notes", out.trial_notes, intake::read_trial_note);
  read_list(in, "trial_ends", out.trial_ends, intake::read_trial_end);
  read_list(in, "buy_notes", out.buy_notes, intake::read_buy_note);
  read_list(in, "mappings", out.mappings, intake::read_mapping);
  read_list(in, "shown_meals", out.shown_meals, intake::read_shown_meal, sizes);
  read_list(in, "feed", out.feed, intake::read_feed_stamp);
  read_list(in, "kept_plans", out.kept_plans, intake::read_kept_plan);
  read_list(in, "feed_addresses", out.feed_addresses, intake::read_feed_address);
  read_list(in, "pushed", out.pushed, intake::read_pushed_item);
  read_list(in, "tasks_done", out.tasks_done, intake::read_task_done);
  in.finish();
  return out;
}

}  // namespace

Result<Household> parse_document(std::string_view text) {
  const Result<JsonNode> document = intake::parse_json(text);
  if (!document) return fail(document.error());
  Findings findings;
  if (!check_head(*document, findings)) return fail(findings.as_error(*document));
  Household household = read_household(*document, findings);
  // Values that could not be read would only be found wrong once more.
  if (findings.empty()) findings.add(validate(household));
  if (!findings.empty()) return fail(findings.as_error(*document));
  sort_lists(household);
  return household;
}

}  // namespace larderloop
