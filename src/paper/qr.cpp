#include "larderloop/paper/qr.h"

#include <qrencode.h>

#include <memory>

namespace larderloop {
namespace {

Result<std::string> modules_of(const std::string& payload) {
  // Level M restores 15 % of a damaged code.
  const std::unique_ptr<QRcode, void (*)(QRcode*)> code(QRcode_encodeData(static_cast<int>(payload.size()), reinterpret_cast<const unsigned char*>(payload.data()), 0, QR_ECLEVEL_M),
                                                        QRcode_free);
  if (code == nullptr) return fail(ErrorKind::kBadData, "'" + payload.substr(0, 60) + "' is too long for a code", "give a shorter address: --url");
  std::string modules;
  for (int each = 0; each < code->width * code->width; ++each) modules += (code->data[each] & 1) != 0 ? '1' : '0';
  return modules;
}

}  // namespace

Status make_codes(PaperDocument& document) {
  for (PaperPage& page : document.pages) {
    for (PaperBlock& block : page.blocks) {
      auto* code = std::get_if<PaperCode>(&block);
      if (code == nullptr) continue;
      auto modules = modules_of(code->payload);
      if (!modules) return fail(modules.error());
      code->modules = std::move(*modules);
    }
  }
  return {};
}

}  // namespace larderloop
