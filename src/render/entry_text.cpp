#include "larderloop/render/entry_text.h"

namespace larderloop {

std::string render_scan_text(const Household&, const Scan& scan, const Food* food) {
  std::string text = scan.item.gtin + ": " + (food == nullptr ? std::string("no food has this number") : food->name + " (" + food->key.str() + ")") + "\n";
  const auto row = [&](const std::string& line) { text += "  " + line + "\n"; };
  if (scan.item.carton) row("a case of the item, not the item itself");
  if (scan.item.variable) row("weighed goods");
  if (scan.item.restricted) row("a number of one shop or household: it means nothing elsewhere");
  if (!scan.item.note.empty()) row(scan.item.note + ", not of food");
  for (const DateMark& mark : scan.dates) {
    row(std::string(mark_kind_words(mark.kind)) + " " + plain_day(*mark.day) + (mark.precision == Precision::kMonth ? " (the end of the month)" : "") +
        (mark.kind == MarkKind::kUseBy && !scan.expiry_time.empty() ? ", " + scan.expiry_time : ""));
  }
  if (!scan.lot_code.empty()) row("lot code " + scan.lot_code);
  if (!scan.serial.empty()) row("serial number " + scan.serial);
  if (scan.units) row("holds " + std::to_string(*scan.units));
  if (!scan.net_weight.empty()) row("weighs " + scan.net_weight);
  if (!scan.net_volume.empty()) row("holds " + scan.net_volume);
  if (!scan.price.empty()) row("price " + scan.price);
  return text;
}

}  // namespace larderloop
