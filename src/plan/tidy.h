// tidy.h - lowers what only ever costs. Private to this room.
#pragma once

#include "plan/mip.h"

namespace larderloop::plan {

// Lowers each column that no level wants high as far as its rows and its bound let it, one after
// the other. The point stays allowed, and no level gets worse. A search for one level leaves such
// columns anywhere: a shortage nobody asked about may be told larger than it is. Pre: the point is
// allowed.
void tidy(const Mip& mip, MipPoint& point);

}  // namespace larderloop::plan
