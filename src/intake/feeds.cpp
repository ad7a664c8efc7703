// The calendar in a household document: its settings and addresses, what servers were sent, and
// what came back.
#include "intake/names.h"
#include "intake/read_sections.h"
#include "intake/write_sections.h"

namespace larderloop::intake {

FeedSettings read_feed_settings(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "the calendar's settings");
  FeedSettings out;
  in.one_of("detail", out.detail, feed_detail_names());
  in.one_of("reviews", out.reviews, feed_reviews_names());
  if (in.has("kinds")) {
    out.kinds.clear();
    in.set_of("kinds", out.kinds, feed_kind_names());
  }
  if (const JsonNode* alarms = in.member("alarm_days", Need::kOptional)) {
    const Path here(path, "alarm_days");
    Reader days(*alarms, here, findings, "alarms");
    for (const auto& [name, kind] : feed_kind_names()) {
      std::optional<int> before;
      days.whole(name, before);
      if (before) out.alarm_days[kind] = *before;
    }
    days.finish();
  }
  in.finish();
  return out;
}

FeedAddress read_feed_address(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "an address of the calendar");
  FeedAddress out;
  in.id("id", out.id);
  in.text("name", out.name, Need::kRequired);
  in.text("token_sha256", out.token_sha256, Need::kRequired);
  in.key("person", out.person);
  in.one_of("detail", out.detail, feed_detail_names());
  in.instant("created_at", out.created_at);
  if (in.has("revoked_at")) in.instant("revoked_at", out.revoked_at.emplace());
  in.finish();
  return out;
}

PushedItem read_pushed_item(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "an item of a calendar server");
  PushedItem out;
  in.text("collection", out.collection, Need::kRequired);
  in.text("uid", out.uid, Need::kRequired);
  in.text("href", out.href, Need::kRequired);
  in.text("etag", out.etag);
  in.text("sent", out.sent);
  in.finish();
  return out;
}

TaskDone read_task_done(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a to-do that is done");
  TaskDone out;
  in.text("uid", out.uid, Need::kRequired);
  in.day("on", out.on);
  in.text("what", out.what);
  in.finish();
  return out;
}

std::optional<JsonNode> feed_settings_node(const FeedSettings& feed) {
  const FeedSettings usual;
  if (feed == usual) return std::nullopt;
  ObjectWriter alarms;
  for (const auto& [kind, days] : feed.alarm_days)
    alarms.add(name_of(kind, feed_kind_names()), std::int64_t{days});
  ObjectWriter out;
  out.one_of("detail", feed.detail, feed_detail_names(), usual.detail);
  out.one_of("reviews", feed.reviews, feed_reviews_names(), usual.reviews);
  if (feed.kinds != usual.kinds) out.set_of("kinds", feed.kinds, feed_kind_names());
  if (!feed.alarm_days.empty()) out.add("alarm_days", alarms.done());
  return out.done();
}

JsonNode feed_address_node(const FeedAddress& address) {
  ObjectWriter out;
  out.add("id", address.id)
      .add("name", std::string_view(address.name))
      .add("token_sha256", std::string_view(address.token_sha256))
      .maybe("person", address.person)
      .one_of("detail", address.detail, feed_detail_names(), FeedDetail::kFull)
      .add("created_at", address.created_at)
      .maybe("revoked_at", address.revoked_at);
  return out.done();
}

JsonNode pushed_item_node(const PushedItem& item) {
  ObjectWriter out;
  out.add("collection", std::string_view(item.collection))
      .add("uid", std::string_view(item.uid))
      .add("href", std::string_view(item.href))
      .text("etag", item.etag)
      .text("sent", item.sent);
  return out.done();
}

JsonNode task_done_node(const TaskDone& task) {
  ObjectWriter out;
  out.add("uid", std::string_view(task.uid)).add("on", task.on).text("what", task.what);
  return out.done();
}

}  // namespace larderloop::intake
