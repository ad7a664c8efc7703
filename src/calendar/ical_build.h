// ical_build.h - what writers of calendars share: building components, and what may stand in them.
#pragma once

#include "calendar/ical_handles.h"
#include "calendar/ical_text.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

namespace larderloop::ical {

// Without a version number: otherwise every release would change every event for readers that
// compare whole items.
inline constexpr const char* kProductId = "-//larderloop//household feed//EN";
inline constexpr std::size_t kSummaryOctets = 255;  // RFC 5545 section 5: a reader may cut there
inline constexpr std::size_t kDescriptionOctets = 2048;

// libical escapes neither commas nor semicolons in X- values, so the name has none.
inline std::string calendar_name(std::string_view name) {
  std::string plain(name);
  for (char& c : plain) {
    if (c == ',' || c == ';' || c == '\\') c = ' ';
  }
  plain = clean_line(plain);
  return plain.empty() ? "larderloop" : cut_text(plain, kSummaryOctets);
}

// libical escapes no punctuation in categories.
inline bool is_plain_category(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) {
    return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == ' ';
  });
}

inline bool is_uid(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) {
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F') || c == '-';
  });
}

// Builds one component; remembers when libical could not make a part of it.
class Builder {
 public:
  explicit Builder(icalcomponent_kind kind)
      : component_(icalcomponent_new(kind)), ok_(component_ != nullptr) {}

  void add(icalproperty* made) {
    Property property(made);
    if (!ok_ || !property) {
      ok_ = false;
      return;
    }
    icalcomponent_add_property(component_.get(), property.release());
  }

  void add_extension(const char* name, const std::string& value) {
    Property property(icalproperty_new_x(value.c_str()));
    if (property) icalproperty_set_x_name(property.get(), name);
    add(property.release());
  }

  void add(Builder child) {
    ok_ = ok_ && child.ok_;
    if (ok_) icalcomponent_add_component(component_.get(), child.component_.release());
  }

  void add_component(icalcomponent* made) {
    Component component(made);
    ok_ = ok_ && component;
    if (ok_) icalcomponent_add_component(component_.get(), component.release());
  }

  [[nodiscard]] std::string text() const {
    if (!ok_) return {};
    const Buffer buffer(icalcomponent_as_ical_string_r(component_.get()));
    return buffer ? std::string(buffer.get()) : std::string();
  }

 private:
  Component component_;
  bool ok_;
};

}  // namespace larderloop::ical
