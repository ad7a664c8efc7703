#include "dav/multistatus.h"

#include <pugixml.hpp>

namespace larderloop::dav {
namespace {

constexpr std::string_view kDav = "DAV:";
constexpr std::string_view kCalDav = "urn:ietf:params:xml:ns:caldav";

std::string_view local_name(const pugi::xml_node& node) {
  const std::string_view name = node.name();
  const std::size_t colon = name.find(':');
  return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

// The name space that a node's prefix stands for (Namespaces in XML 1.0): said on the node or the
// nearest one around it.
std::string_view space_of(const pugi::xml_node& node) {
  const std::string_view name = node.name();
  const std::size_t colon = name.find(':');
  const std::string wanted =
      colon == std::string_view::npos ? "xmlns" : "xmlns:" + std::string(name.substr(0, colon));
  for (pugi::xml_node each = node; each; each = each.parent()) {
    const pugi::xml_attribute said = each.attribute(wanted.c_str());
    if (said) return said.value();
  }
  return {};
}

bool is(const pugi::xml_node& node, std::string_view space, std::string_view name) {
  return node.type() == pugi::node_element && local_name(node) == name && space_of(node) == space;
}

pugi::xml_node child(const pugi::xml_node& parent, std::string_view space, std::string_view name) {
  for (const pugi::xml_node& each : parent.children()) {
    if (is(each, space, name)) return each;
  }
  return {};
}

std::string text_of(const pugi::xml_node& node) {
  std::string text;
  for (const pugi::xml_node& each : node.children()) {
    if (each.type() == pugi::node_pcdata || each.type() == pugi::node_cdata) text += each.value();
  }
  return text;
}

std::string trimmed(std::string text) {
  const char* blank = " \t\r\n";
  const std::size_t first = text.find_first_not_of(blank);
  if (first == std::string::npos) return {};
  return text.substr(first, text.find_last_not_of(blank) - first + 1);
}

// The properties that a response has, those with a status of success.
std::vector<pugi::xml_node> properties(const pugi::xml_node& response) {
  std::vector<pugi::xml_node> found;
  for (const pugi::xml_node& stat : response.children()) {
    if (!is(stat, kDav, "propstat")) continue;
    const std::string status = text_of(child(stat, kDav, "status"));  // "HTTP/1.1 200 OK"
    if (status.find(" 200") == std::string::npos) continue;
    const pugi::xml_node all = child(stat, kDav, "prop");
    for (const pugi::xml_node& each : all.children()) {
      if (each.type() == pugi::node_element) found.push_back(each);
    }
  }
  return found;
}

// External entities are not read by pugixml, and a document type that declares any is left unread.
bool load(pugi::xml_document& document, std::string_view xml) {
  return static_cast<bool>(document.load_buffer(
      xml.data(), xml.size(), pugi::parse_default | pugi::parse_ws_pcdata_single));
}

}  // namespace

std::optional<std::vector<DavItem>> read_items(std::string_view xml) {
  pugi::xml_document document;
  if (!load(document, xml)) return std::nullopt;
  const pugi::xml_node root = document.document_element();
  if (!is(root, kDav, "multistatus")) return std::nullopt;
  std::vector<DavItem> items;
  for (const pugi::xml_node& response : root.children()) {
    if (!is(response, kDav, "response")) continue;
    DavItem item;
    item.href = trimmed(text_of(child(response, kDav, "href")));
    for (const pugi::xml_node& property : properties(response)) {
      if (is(property, kDav, "getetag")) item.etag = trimmed(text_of(property));
      if (is(property, kCalDav, "calendar-data")) item.data = text_of(property);
    }
    if (!item.href.empty() && !item.data.empty()) items.push_back(std::move(item));
  }
  return items;
}

std::optional<CollectionKind> read_kind(std::string_view xml) {
  pugi::xml_document document;
  if (!load(document, xml)) return std::nullopt;
  const pugi::xml_node root = document.document_element();
  if (!is(root, kDav, "multistatus")) return std::nullopt;
  CollectionKind kind;
  for (const pugi::xml_node& property : properties(child(root, kDav, "response"))) {
    if (is(property, kDav, "resourcetype"))
      kind.calendar = static_cast<bool>(child(property, kCalDav, "calendar"));
    if (!is(property, kCalDav, "supported-calendar-component-set")) continue;
    for (const pugi::xml_node& each : property.children()) {
      if (is(each, kCalDav, "comp")) kind.components.insert(each.attribute("name").value());
    }
  }
  return kind;
}

std::string read_rule(std::string_view xml) {
  pugi::xml_document document;
  if (!load(document, xml)) return {};
  const pugi::xml_node root = document.document_element();
  if (!is(root, kDav, "error")) return {};
  for (const pugi::xml_node& each : root.children()) {
    if (each.type() == pugi::node_element) return std::string(local_name(each));
  }
  return {};
}

}  // namespace larderloop::dav
