#include "larderloop/paper/module.h"

#include "larderloop/paper/qr.h"

extern "C" __attribute__((visibility("default"))) const larderloop::PaperModule* larderloop_paper_module();

const larderloop::PaperModule* larderloop_paper_module() {
  static const larderloop::PaperModule module = [] {
    larderloop::PaperModule made;
    made.build = LARDERLOOP_VERSION " " __VERSION__;
    made.draw = larderloop::draw_pdf;
    made.codes = larderloop::make_codes;
    return made;
  }();
  return &module;
}
