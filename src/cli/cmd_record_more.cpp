// record corrected, list.
#include "cli/command.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/find.h"
#include "larderloop/app/record.h"
#include "larderloop/render/json_things.h"
#include "larderloop/render/text_things.h"

#include <memory>

namespace larderloop::cli {
namespace {

constexpr std::int64_t kMostRows = 1'000'000;

struct CorrectOptions {
  std::vector<std::string> entries;
  std::string note;
};

struct ListOptions {
  std::string lot, since, limit;
};

Result<std::vector<EntryRow>> rows_of(const Household& household, const ListOptions& given,
                                      Day today) {
  EntryFilter filter;
  if (!given.lot.empty()) {
    auto lot = named_lot(household, given.lot);
    if (!lot) return fail(lot.error());
    filter.lot = (*lot)->id;
  }
  if (!given.since.empty()) {
    auto day = read_day("--since", given.since, today);
    if (!day) return fail(day.error());
    filter.since = *day;
  }
  if (!given.limit.empty()) {
    auto limit = read_count("--limit", given.limit, 1, kMostRows);
    if (!limit) return fail(limit.error());
    filter.limit = static_cast<std::size_t>(*limit);
  }
  return list_entries(household, filter);
}

}  // namespace

Action add_record_corrected(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<CorrectOptions>();
  app.add_option("ENTRY", given->entries, "Numbers of entries, reversed in this order")->required();
  add_text(app, "--note", given->note, "TEXT", "Why");
  set_help(
      app,
      {"larderloop record corrected 512\nlarderloop record corrected 513 512 --note 'wrong lot'\n",
       "The record is never overwritten: a further entry takes the effect of the old one back.",
       {}});
  return [given, &runtime]() -> Result<int> {
    auto done =
        runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<Corrected>> {
          std::vector<EntryId> which;
          for (const std::string& text : given->entries) {
            auto entry = named_entry(household, text);
            if (!entry) return fail(entry.error());
            which.push_back(*entry);
          }
          return correct(household, which, given->note, asked);
        });
    if (!done) return fail(done.error());
    if (runtime.options.json)
      runtime.print_bytes(render_corrected_json(*done, runtime.asked().today));
    runtime.note(corrected_line(runtime.household(), *done));
    return 0;
  };
}

Action add_record_list(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<ListOptions>();
  add_text(app, "--lot", given->lot, "LOT", "Only entries of this lot");
  add_text(app, "--since", given->since, "DATE", "Only what happened on this day or later");
  add_text(app, "--limit", given->limit, "N", "At most so many");
  set_help(
      app,
      {"larderloop record list --limit 20\nlarderloop record list --lot 17 --since 2027-01-01\n",
       "Newest first.",
       {}});
  return [given, &runtime]() -> Result<int> {
    return runtime.read([&](const Household& household, Asked asked) -> Result<int> {
      auto rows = rows_of(household, *given, asked.today);
      if (!rows) return fail(rows.error());
      if (runtime.options.json)
        runtime.print_bytes(render_entries_json(*rows, asked.today));
      else
        runtime.print(render_entries(household, *rows, runtime.width()));
      return 0;
    });
  };
}

}  // namespace larderloop::cli
