// paper_parts.h - small pieces that several papers are made of.
#pragma once

#include <string>
#include <vector>

#include "larderloop/app/cautions.h"
#include "larderloop/app/paper.h"
#include "larderloop/core/eligible.h"

namespace larderloop::paper {

// A copy in which every name can stand in a sentence on paper: no control characters, no characters that reorder text, and names with
// letters that run from right to left isolated (Unicode Standard Annex 9: U+2068 ... U+2069), so that what stands around them keeps its order.
[[nodiscard]] Household for_paper(Household household);
[[nodiscard]] std::string name_on_paper(std::string_view name);

// The kit itself, then each box with its bags, by key: the walk.
[[nodiscard]] std::vector<PlaceKey> walk(const Household& household, const PlaceKey& kit);
// The kits that are meant; all when none is named. kBadData when there is none.
[[nodiscard]] Result<std::vector<PlaceKey>> kits_of(const Household& household, const PaperRequest& request);

// "sesame, milk (traces are accepted); eats only vegetarian food"; "anything but vegetarian food". Empty when there is nothing. Not for private paper.
[[nodiscard]] std::string avoids(const Person& person);
// A line for each of them who must avoid something: "Mira: sesame".
[[nodiscard]] std::vector<std::string> avoid_lines(const Household& household, const std::vector<PersonKey>& people);
// Everyone whom menu lines of this place name, without the rule for places without lines.
[[nodiscard]] std::vector<PersonKey> named_at(const Household& household, const PlaceKey& place);
// "days 1 to 3", "day 2"; empty when no line names a day.
[[nodiscard]] std::string days_at(const Household& household, const PlaceKey& place);
// "everyone", "Mira", "Ansa and Jorik".
[[nodiscard]] std::string who(const Household& household, const std::vector<PersonKey>& people);
[[nodiscard]] std::string litres(std::int64_t ml);
[[nodiscard]] std::string diet_words(Diet diet);  // "gluten-free"
// "NOT for Mira and Jon: the label says it contains sesame"; in private "NOT for Mira and Jon". Whoever only refuses it is left out:
// that is who_refuses(), "not eaten by Ada".
[[nodiscard]] std::string who_refuses(const Household& household, const std::vector<PersonRefusal>& refusals);
[[nodiscard]] std::string not_for(const Household& household, const std::vector<PersonRefusal>& refusals, bool private_);

// One text a caution, in the order given.
void add_cautions(const std::vector<Caution>& cautions, PaperPage& page);
// Those of every card for an emergency; of infant formula where the kit is concerned (empty: any kit).
void add_emergency_cautions(const Household& household, const PlaceKey& kit, Day today, PaperPage& page);

[[nodiscard]] Result<PaperDocument> labels(const Household& household, const PaperRequest& request, PaperDocument document, Day today);
[[nodiscard]] Result<PaperDocument> box_cards(const Household& household, const PaperRequest& request, PaperDocument document, Day today);
[[nodiscard]] Result<PaperDocument> review_sheets(const Household& household, const PaperRequest& request, PaperDocument document, Day today);
[[nodiscard]] Result<PaperDocument> menu_cards(const Household& household, const PaperRequest& request, PaperDocument document, Day today);
[[nodiscard]] Result<PaperDocument> household_page(const Household& household, const PaperRequest& request, PaperDocument document, Day today);
[[nodiscard]] Result<PaperDocument> replacement_list(const Household& household, const PaperRequest& request, PaperDocument document);

}  // namespace larderloop::paper
