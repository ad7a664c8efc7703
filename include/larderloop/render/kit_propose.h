// kit_propose.h - a proposed kit menu as text and as JSON (docs/schema/kit_proposal-1.schema.json).
#pragma once

#include "larderloop/app/kit_propose.h"

#include <string>

namespace larderloop {

[[nodiscard]] std::string render_kit_proposal_text(const Household& household,
                                                   const KitProposal& proposal, bool written);
[[nodiscard]] std::string render_kit_proposal_json(const KitProposal& proposal, bool written,
                                                   Day as_of);

}  // namespace larderloop
