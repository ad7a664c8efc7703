#include "larderloop/web/module.h"

#include "web/choice.h"
#include "web/server.h"

extern "C" __attribute__((visibility("default"))) const larderloop::WebModule*
larderloop_web_module();

const larderloop::WebModule* larderloop_web_module() {
  static const larderloop::WebModule module = [] {
    larderloop::WebModule made;
    made.build = LARDERLOOP_VERSION " " __VERSION__;
    made.open = larderloop::open_server;
    made.pack = larderloop::packed;
    return made;
  }();
  return &module;
}
