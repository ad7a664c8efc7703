#include "larderloop/dav/collection.h"

#include "dav/http.h"
#include "dav/multistatus.h"

#include <utility>

namespace larderloop {
namespace {

using dav::Answer;
using dav::Request;

constexpr const char* kXml = "Content-Type: application/xml; charset=utf-8";
constexpr const char* kCalendar = "Content-Type: text/calendar; charset=utf-8";
constexpr const char* kKindQuery =
    "<?xml version=\"1.0\" encoding=\"utf-8\"?>"
    "<d:propfind xmlns:d=\"DAV:\" "
    "xmlns:c=\"urn:ietf:params:xml:ns:caldav\"><d:prop><d:resourcetype/>"
    "<c:supported-calendar-component-set/></d:prop></d:propfind>";
constexpr const char* kItemsQuery =
    "<?xml version=\"1.0\" encoding=\"utf-8\"?>"
    "<c:calendar-query xmlns:d=\"DAV:\" "
    "xmlns:c=\"urn:ietf:params:xml:ns:caldav\"><d:prop><d:getetag/><c:calendar-data/></d:prop>"
    "<c:filter><c:comp-filter name=\"VCALENDAR\"/></c:filter></c:calendar-query>";

// What the server said against an item, in plain words with the next step.
std::string refusal(const Answer& answer) {
  const std::string rule = dav::read_rule(answer.body);
  const std::string said =
      " (" + std::to_string(answer.status) + (rule.empty() ? "" : " " + rule) + ")";
  switch (answer.status) {
    case 403:
      return "the server does not allow it" + said + "; see whether the user may write there";
    case 409:
      return "the server has something that stands against it" + said +
             "; see whether another item there has the same UID, or the calendar was removed";
    case 413:
    case 507:
      return "the server has no room for it" + said + "; make room there";
    case 415:
    case 400:
      return "the server does not take this kind of item" + said + "; use a calendar that holds it";
    default:
      return "the server will not do it" + said;
  }
}

}  // namespace

struct DavCollection::Connection {
  DavAccess access;
  DavAddress address;
  std::string url;
  std::unique_ptr<dav::Http> http;

  // Opens the connection when it is first needed.
  Result<Answer> send(Request request) {
    if (!http) {
      auto made = dav::Http::make(access);
      if (!made) return fail(made.error());
      http = std::move(*made);
    }
    auto answer = http->send(request);
    if (!answer) return answer;
    if (answer->status == 401) {
      return fail(ErrorKind::kConfig,
                  "'" + address.authority + "' does not accept the name and password",
                  access.user.empty() ? "put them in a file and name it: --credentials FILE"
                                      : "correct the file of --credentials: the name in its first "
                                        "line, the password in its second");
    }
    if (answer->status >= 300 && answer->status < 400) {
      return fail(ErrorKind::kConfig,
                  "'" + request.url + "' has moved" +
                      (answer->location.empty() ? "" : " to '" + answer->location + "'"),
                  "give the new address of the calendar");
    }
    return answer;
  }

  // kConfig for what says that the collection itself is not usable.
  Status usable(const Answer& answer) const {
    if (answer.status == 404 || answer.status == 410 || answer.status == 405) {
      return fail(ErrorKind::kConfig, "there is no calendar at '" + url + "'",
                  "make one on the server first, or correct the address");
    }
    if (answer.status == 403) {
      return fail(ErrorKind::kConfig, "the user may not look into '" + url + "'",
                  "give the user the right on the server, or correct the address");
    }
    if (answer.status != 207) {
      return fail(
          ErrorKind::kOutput,
          "'" + url + "' answers " + std::to_string(answer.status) + " and is no CalDAV calendar",
          "see the address in the settings of the calendar server");
    }
    return {};
  }

  // The address of an item. Nothing when it lies outside the collection: the password goes nowhere
  // else.
  std::optional<std::string> item_url(const std::string& href) const {
    const std::string origin = address.scheme + "://" + address.authority;
    std::string path = href;
    if (path.substr(0, 7) == "http://" || path.substr(0, 8) == "https://") {
      if (path.substr(0, origin.size() + 1) != origin + "/") return std::nullopt;
      path.erase(0, origin.size());
    }
    const bool odd = path.empty() || path.front() != '/' ||
                     path.find_first_of(" \r\n\t?#") != std::string::npos ||
                     path.find("/../") != std::string::npos;
    if (odd) return std::nullopt;
    return origin + path;
  }

  Result<DavDone> change(Request request) {
    auto answer = send(std::move(request));
    if (!answer) return fail(answer.error());
    DavDone done;
    done.etag = answer->etag;
    if (answer->status >= 200 && answer->status < 300) return done;
    if (answer->status == 412)
      done.result = DavResult::kChanged;
    else if (answer->status == 404 || answer->status == 410)
      done.result = DavResult::kGone;
    else
      done.result = DavResult::kRefused;
    if (done.result == DavResult::kRefused) done.why = refusal(*answer);
    return done;
  }
};

Result<DavCollection> DavCollection::open(DavAccess access) {
  auto address = parse_dav_address(access.url);
  if (!address) {
    return fail(ErrorKind::kUsage, "'" + access.url + "' is no address of a calendar",
                "give https://host/path/, without a name or password in it");
  }
  if (address->scheme != "https" && !address->is_loopback() && !access.allow_plain) {
    return fail(ErrorKind::kUsage,
                "'" + access.url +
                    "' is not protected: everybody on the way reads the calendar and the password",
                "use https://, or add --insecure inside a home network that you trust");
  }
  auto connection = std::make_unique<Connection>();
  connection->url = address->scheme + "://" + address->authority + address->path;
  connection->address = std::move(*address);
  connection->access = std::move(access);
  return DavCollection(std::move(connection));
}

DavCollection::DavCollection(std::unique_ptr<Connection> connection)
    : connection_(std::move(connection)) {}
DavCollection::DavCollection(DavCollection&&) noexcept = default;
DavCollection& DavCollection::operator=(DavCollection&&) noexcept = default;
DavCollection::~DavCollection() = default;

const std::string& DavCollection::url() const {
  return connection_->url;
}

Status DavCollection::check(std::string_view component) {
  auto answer = connection_->send({"PROPFIND", connection_->url, {kXml, "Depth: 0"}, kKindQuery});
  if (!answer) return fail(answer.error());
  if (Status usable = connection_->usable(*answer); !usable) return usable;
  const auto kind = dav::read_kind(answer->body);
  if (!kind || !kind->calendar) {
    return fail(ErrorKind::kConfig, "'" + connection_->url + "' is no calendar",
                "give the address of one calendar, not of the server or the user");
  }
  if (!kind->components.empty() && kind->components.count(std::string(component)) == 0) {
    return fail(ErrorKind::kConfig,
                "the calendar '" + connection_->url + "' holds no " +
                    (component == "VTODO" ? "to-dos" : "events"),
                component == "VTODO"
                    ? "use a task list of the server"
                    : "use a calendar of the server, or add --todos for a task list");
  }
  return {};
}

Result<std::vector<DavItem>> DavCollection::list() {
  auto answer = connection_->send({"REPORT", connection_->url, {kXml, "Depth: 1"}, kItemsQuery});
  if (!answer) return fail(answer.error());
  if (Status usable = connection_->usable(*answer); !usable) return fail(usable.error());
  auto items = dav::read_items(answer->body);
  if (!items) {
    return fail(ErrorKind::kOutput, "'" + connection_->url + "' gives a list that cannot be read",
                "see whether it is a CalDAV server");
  }
  return std::move(*items);
}

Result<std::optional<DavItem>> DavCollection::get(const std::string& href) {
  const auto url = connection_->item_url(href);
  if (!url) return std::optional<DavItem>();
  auto answer = connection_->send({"GET", *url, {}, {}});
  if (!answer) return fail(answer.error());
  if (answer->status != 200) return std::optional<DavItem>();
  return std::optional<DavItem>(DavItem{href, answer->etag, std::move(answer->body)});
}

std::string DavCollection::href_for(std::string_view uid) const {
  return connection_->address.path + std::string(uid) + ".ics";
}

Result<DavDone> DavCollection::put(const std::string& href, const std::string& data,
                                   const std::string& etag) {
  const auto url = connection_->item_url(href);
  if (!url)
    return DavDone{DavResult::kRefused, {}, "the server names a place outside the calendar for it"};
  return connection_->change(
      {"PUT", *url, {kCalendar, etag.empty() ? "If-None-Match: *" : "If-Match: " + etag}, data});
}

Result<DavDone> DavCollection::remove(const std::string& href, const std::string& etag) {
  const auto url = connection_->item_url(href);
  if (!url)
    return DavDone{DavResult::kRefused, {}, "the server names a place outside the calendar for it"};
  if (etag.empty())
    return DavDone{DavResult::kRefused,
                   {},
                   "the server gives it no version mark, so it cannot be removed safely"};
  return connection_->change({"DELETE", *url, {"If-Match: " + etag}, {}});
}

}  // namespace larderloop
