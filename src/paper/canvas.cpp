#include "paper/canvas.h"

#include <algorithm>

namespace larderloop::paper {
namespace {

constexpr double kPoint = 72.0 / 25.4;  // points in a millimetre

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

double mm(int pango_units) { return static_cast<double>(pango_units) / PANGO_SCALE / kPoint; }

}  // namespace

bool has_fonts() {
  PangoFontFamily** families = nullptr;
  int count = 0;
  pango_font_map_list_families(pango_cairo_font_map_get_default(), &families, &count);
  g_free(families);
  return count > 0;
}

Canvas::Canvas(PaperSheet sheet, const std::string& title, Instant now) {
  surface_.reset(cairo_pdf_surface_create_for_stream(append, &bytes_, sheet.width_mm() * kPoint, sheet.height_mm() * kPoint));
  cairo_pdf_surface_set_metadata(surface_.get(), CAIRO_PDF_METADATA_TITLE, title.c_str());
  cairo_pdf_surface_set_metadata(surface_.get(), CAIRO_PDF_METADATA_CREATOR, "larderloop");
  cairo_pdf_surface_set_metadata(surface_.get(), CAIRO_PDF_METADATA_CREATE_DATE, iso_instant(now).c_str());
  cairo_.reset(cairo_create(surface_.get()));
  cairo_scale(cairo_.get(), kPoint, kPoint);
  cairo_set_source_rgb(cairo_.get(), 0, 0, 0);
}

SetText Canvas::set(const std::string& text, Style style, double width_mm) {
  SetText made;
  // The text is set in points, whatever the scale of the drawing.
  cairo_save(cairo_.get());
  cairo_identity_matrix(cairo_.get());
  made.layout_ = std::shared_ptr<PangoLayout>(pango_cairo_create_layout(cairo_.get()), Unref{});
  cairo_restore(cairo_.get());
  PangoLayout* layout = made.layout_.get();
  pango_cairo_context_set_resolution(pango_layout_get_context(layout), 72);  // a unit of the drawing is a point
  pango_layout_context_changed(layout);
  const Handle<PangoFontDescription> font(pango_font_description_from_string("DejaVu Sans, Noto Sans, sans-serif"));
  pango_font_description_set_size(font.get(), static_cast<int>(style.points * PANGO_SCALE));
  if (style.bold) pango_font_description_set_weight(font.get(), PANGO_WEIGHT_BOLD);
  pango_layout_set_font_description(layout, font.get());
  pango_layout_set_auto_dir(layout, FALSE);  // every column begins at its left; names keep their own direction by their isolates
  pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_width(layout, static_cast<int>(width_mm * kPoint * PANGO_SCALE));
  pango_layout_set_text(layout, text.data(), static_cast<int>(text.size()));
  if (pango_layout_get_unknown_glyphs_count(layout) > 0 && std::find(no_glyphs_.begin(), no_glyphs_.end(), text) == no_glyphs_.end()) no_glyphs_.push_back(text);
  PangoLayoutIter* at = pango_layout_get_iter(layout);
  do {
    PangoRectangle logical;
    pango_layout_iter_get_line_extents(at, nullptr, &logical);
    PangoLayoutLine* line = pango_layout_iter_get_line_readonly(at);
    made.lines_.push_back({mm(logical.y), mm(logical.y + logical.height), mm(pango_layout_iter_get_baseline(at)), line, mm(logical.x)});
    const auto start = static_cast<std::size_t>(line->start_index);
    if (start > 0 && start < text.size() && line->is_paragraph_start == 0) {
      const auto letter = [](char each) { return (static_cast<unsigned char>(each) & 0x80U) == 0 && g_ascii_isalnum(each); };
      made.broken_word_ = made.broken_word_ || (letter(text[start - 1]) && letter(text[start]));
    }
  } while (pango_layout_iter_next_line(at) != 0);
  pango_layout_iter_free(at);
  return made;
}

double Canvas::draw(const SetText& text, double x, double y, std::size_t from, std::size_t to) {
  if (from >= to) return 0;
  const double top = text.lines()[from].top;
  for (std::size_t each = from; each < to; ++each) {
    const SetLine& line = text.lines()[each];
    cairo_save(cairo_.get());
    cairo_translate(cairo_.get(), x + line.x, y + line.baseline - top);
    cairo_scale(cairo_.get(), 1 / kPoint, 1 / kPoint);
    cairo_move_to(cairo_.get(), 0, 0);
    pango_cairo_show_layout_line(cairo_.get(), line.line);
    cairo_restore(cairo_.get());
  }
  return text.lines()[to - 1].bottom - top;
}

void Canvas::line(double x1, double y1, double x2, double y2, double width) {
  cairo_set_line_width(cairo_.get(), width);
  cairo_move_to(cairo_.get(), x1, y1);
  cairo_line_to(cairo_.get(), x2, y2);
  cairo_stroke(cairo_.get());
}

void Canvas::frame(double x, double y, double width, double height, double line_width) {
  cairo_set_line_width(cairo_.get(), line_width);
  cairo_rectangle(cairo_.get(), x, y, width, height);
  cairo_stroke(cairo_.get());
}

void Canvas::filled(double x, double y, double width, double height) {
  cairo_rectangle(cairo_.get(), x, y, width, height);
  cairo_fill(cairo_.get());
}

void Canvas::next_sheet() {
  cairo_show_page(cairo_.get());
  sheets_ += 1;
}

Result<std::string> Canvas::finish() {
  cairo_show_page(cairo_.get());
  cairo_surface_finish(surface_.get());
  const cairo_status_t status = cairo_surface_status(surface_.get());
  if (status != CAIRO_STATUS_SUCCESS) return fail(ErrorKind::kOutput, std::string("the PDF could not be made: ") + cairo_status_to_string(status));
  return bytes_;
}

}  // namespace larderloop::paper
