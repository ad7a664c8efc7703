// place add, change, list, show.
#include "cli/command.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/find.h"
#include "larderloop/app/look.h"
#include "larderloop/app/things.h"
#include "larderloop/render/json_things.h"
#include "larderloop/render/text_things.h"

#include <memory>

namespace larderloop::cli {
namespace {

struct PlaceOptions {
  std::string name, key, rename, kind, parent, mass_limit, volume_limit, note;
  bool hot = false, not_hot = false, all = false;
};

Result<PlaceKind> read_place_kind(const std::string& word) {
  return read_word<PlaceKind>("--kind", word, parse_place_kind,
                              names_of(kAllPlaceKinds, place_kind_name));
}

void add_place_options(CLI::App& app, PlaceOptions& given) {
  add_text(app, "--in", given.parent, "PLACE",
           "Inside this place: kit > box > bag, pantry > shelf");
  add_text(app, "--mass-limit", given.mass_limit, "AMOUNT", "What may be in it at most, as 12kg");
  add_text(app, "--volume-limit", given.volume_limit, "AMOUNT", "As 40l");
  add_text(app, "--note", given.note, "TEXT", "A remark");
  app.add_flag("--hot", given.hot, "30 C or more at times: a car, an attic");
}

Status apply(const Household& household, const PlaceOptions& given, Place& place) {
  if (!given.kind.empty()) {
    auto kind = read_place_kind(given.kind);
    if (!kind) return fail(kind.error());
    place.kind = *kind;
  }
  if (!given.parent.empty()) {
    auto parent = named_place(household, given.parent);
    if (!parent) return fail(parent.error());
    place.parent = (*parent)->key;
  }
  if (given.mass_limit == "none") {
    place.mass_limit_g.reset();
  } else if (!given.mass_limit.empty()) {
    auto mass = read_mass("--mass-limit", given.mass_limit);
    if (!mass) return fail(mass.error());
    place.mass_limit_g = *mass;
  }
  if (given.volume_limit == "none") {
    place.volume_limit_ml.reset();
  } else if (!given.volume_limit.empty()) {
    auto volume = read_volume("--volume-limit", given.volume_limit);
    if (!volume) return fail(volume.error());
    place.volume_limit_ml = *volume;
  }
  if (!given.note.empty()) place.note = given.note == "none" ? "" : given.note;
  if (given.hot) place.hot = true;
  if (given.not_hot) place.hot = false;
  return {};
}

Result<int> save(const PlaceOptions& given, bool fresh, Runtime& runtime) {
  auto saved =
      runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<PlaceSaved>> {
        Place place;
        if (fresh) {
          place.name = given.name;
          place.key = PlaceKey(given.key);
        } else {
          auto found = named_place(household, given.name);
          if (!found) return fail(found.error());
          place = **found;
          if (!given.rename.empty()) place.name = given.rename;
        }
        if (Status applied = apply(household, given, place); !applied) return fail(applied.error());
        return fresh ? add_place(household, place, asked) : change_place(household, place, asked);
      });
  if (!saved) return fail(saved.error());
  const Place& place = saved->place;
  if (runtime.options.json) {
    runtime.print_bytes(
        render_place_saved_json(runtime.household(), *saved, runtime.asked().today));
  }
  runtime.note(std::string(fresh ? "added" : "changed") + " place " + place.key.str() + " (" +
               place_path(runtime.household(), place.key) + "); see: larderloop place show " +
               place.key.str());
  return 0;
}

}  // namespace

Action add_place_add(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<PlaceOptions>();
  app.add_option("NAME", given->name, "The name, as people say it")->required();
  add_text(app, "--kind", given->kind, "KIND", "kit, box, bag, pantry or shelf")->required();
  add_text(app, "--key", given->key, "KEY",
           "A short key for commands (made from the name if left out)");
  add_place_options(app, *given);
  set_help(app, {"larderloop place add 'Home kit' --kind kit\n"
                 "larderloop place add 'Box 1' --kind box --in home-kit --mass-limit 12kg\n"
                 "larderloop place add 'Bag of Mira' --kind bag --in box-1\n",
                 "",
                 {}});
  return [given, &runtime] { return save(*given, true, runtime); };
}

Action add_place_change(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<PlaceOptions>();
  app.add_option("PLACE", given->name, "Key or name")->required();
  add_text(app, "--name", given->rename, "NAME", "Another name");
  add_place_options(app, *given);
  app.add_flag("--no-hot", given->not_hot, "No longer hot");
  set_help(
      app,
      {"larderloop place change box-1 --mass-limit 10kg\nlarderloop place change car-kit --hot\n",
       "What is not named stays; none takes away a limit or a remark.",
       {}});
  return [given, &runtime] { return save(*given, false, runtime); };
}

Action add_place_list(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<PlaceOptions>();
  add_text(app, "--kind", given->kind, "KIND", "Only kit, box, bag, pantry or shelf");
  add_text(app, "--at", given->parent, "PLACE", "Only this place and what is inside it");
  app.add_flag("--all", given->all, "Also what is retired");
  set_help(app,
           {"larderloop place list\nlarderloop place list --at home-kit --kind bag\n", "", {}});
  return [given, &runtime]() -> Result<int> {
    return runtime.read([&](const Household& household, Asked asked) -> Result<int> {
      std::optional<PlaceKind> kind;
      if (!given->kind.empty()) {
        auto wanted = read_place_kind(given->kind);
        if (!wanted) return fail(wanted.error());
        kind = *wanted;
      }
      PlaceKey outer;
      if (!given->parent.empty()) {
        auto found = named_place(household, given->parent);
        if (!found) return fail(found.error());
        outer = (*found)->key;
      }
      std::vector<Place> places;
      for (const Place& each : household.places) {
        if (each.retired && !given->all) continue;
        if (kind && each.kind != *kind) continue;
        if (!outer.empty() && !is_within(household, each.key, outer)) continue;
        places.push_back(each);
      }
      if (runtime.options.json)
        runtime.print_bytes(render_places_json(household, places, asked.today));
      else
        runtime.print(render_places(household, places, runtime.width()));
      return 0;
    });
  };
}

Action add_place_show(CLI::App& app, Runtime& runtime) {
  auto name = std::make_shared<std::string>();
  app.add_option("PLACE", *name, "Key or name")->required();
  set_help(app, {"larderloop place show bag-mira\n",
                 "Shows what lies there, who eats from it, and what is wrong there.",
                 {}});
  return [name, &runtime]() -> Result<int> {
    return runtime.read([&](const Household& household, Asked asked) -> Result<int> {
      auto place = named_place(household, *name);
      if (!place) return fail(place.error());
      auto show = show_place(household, (*place)->key, asked.today);
      if (!show) return fail(show.error());
      if (runtime.options.json)
        runtime.print_bytes(render_place_json(household, *show, asked.today));
      else
        runtime.print(render_place(household, *show));
      return 0;
    });
  };
}

}  // namespace larderloop::cli
