// qr.h - two-dimensional codes as ISO/IEC 18004 defines them, by libqrencode.
#pragma once

#include "larderloop/app/paper.h"

namespace larderloop {

// Fills the modules of every code of the document. kBadData when a payload is too long for one.
[[nodiscard]] Status make_codes(PaperDocument& document);

}  // namespace larderloop
