// What the calendar tells, its addresses, and what calendar servers were sent: into their tables
// and out of them.
#include "store/load.h"
#include "store/names.h"
#include "store/save.h"

namespace larderloop::store {
namespace {

constexpr const char* kDetail = "SELECT feed_detail, feed_reviews FROM household";
constexpr const char* kKinds = "SELECT kind, in_feed, alarm_days FROM feed_kind";
constexpr const char* kSaveDetail =
    "UPDATE household SET feed_detail = :detail, feed_reviews = :reviews WHERE id = 1";
constexpr const char* kDropKinds = "DELETE FROM feed_kind";
constexpr const char* kAddKind =
    "INSERT INTO feed_kind (kind, in_feed, alarm_days) VALUES (:kind, :in_feed, :alarm_days)";
constexpr const char* kAddresses =
    "SELECT id, name, token_sha256, person, detail, created_at, revoked_at FROM feed_address ORDER "
    "BY id";
constexpr const char* kSaveAddress =
    "INSERT INTO feed_address (id, name, token_sha256, person, detail, created_at, revoked_at) "
    "VALUES (:id, :name, :token_sha256, :person, :detail, :created_at, :revoked_at) "
    "ON CONFLICT (id) DO UPDATE SET name = excluded.name, token_sha256 = excluded.token_sha256,"
    "  person = excluded.person, detail = excluded.detail, created_at = excluded.created_at,"
    "  revoked_at = excluded.revoked_at";
constexpr const char* kPushed =
    "SELECT collection, uid, href, etag, sent FROM pushed_item ORDER BY collection, uid";
constexpr const char* kDropPushed = "DELETE FROM pushed_item";
constexpr const char* kAddPushed =
    "INSERT INTO pushed_item (collection, uid, href, etag, sent) "
    "VALUES (:collection, :uid, :href, :etag, :sent)";
constexpr const char* kTasks = "SELECT uid, day, what FROM task_done ORDER BY uid";
constexpr const char* kAddTask =
    "INSERT INTO task_done (uid, day, what) VALUES (:uid, :day, :what)";

}  // namespace

void load_feed_settings(const Connection& connection, FeedSettings& feed) {
  Query detail(connection, kDetail);
  if (!detail.step()) no_owner("household");
  feed.detail = detail.named(0, parse_feed_detail);
  feed.reviews = detail.named(1, parse_feed_reviews);
  Query kinds(connection, kKinds);
  while (kinds.step()) {
    const FeedKind kind = kinds.named(0, parse_feed_kind);
    if (!kinds.flag(1)) feed.kinds.erase(kind);
    if (const auto days = kinds.maybe_small(2)) feed.alarm_days[kind] = *days;
  }
}

void save_feed_settings(const Connection& connection, const FeedSettings& feed) {
  Query(connection, kSaveDetail)
      .set(":detail", feed_detail_name(feed.detail))
      .set(":reviews", feed_reviews_name(feed.reviews))
      .run();
  connection.run(kDropKinds);
  Query add(connection, kAddKind);
  for (const FeedKind kind : kAllFeedKinds) {
    const bool in_feed = feed.kinds.count(kind) > 0;
    const auto alarm = feed.alarm_days.find(kind);
    const bool rings = alarm != feed.alarm_days.end();
    if (in_feed && !rings) continue;
    add.set(":kind", feed_kind_name(kind)).set(":in_feed", in_feed);
    rings ? add.set(":alarm_days", alarm->second) : add.set_null(":alarm_days");
    add.run();
  }
}

void load_feeds(const Connection& connection, Household& household) {
  Query addresses(connection, kAddresses);
  while (addresses.step()) {
    FeedAddress& each = household.feed_addresses.emplace_back();
    each.id = addresses.id<FeedAddressId>(0);
    each.name = addresses.text(1);
    each.token_sha256 = addresses.text(2);
    if (!addresses.is_null(3)) each.person = addresses.key<PersonKey>(3);
    each.detail = addresses.named(4, parse_feed_detail);
    each.created_at = addresses.instant(5);
    if (!addresses.is_null(6)) each.revoked_at = addresses.instant(6);
  }
  Query items(connection, kPushed);
  while (items.step()) {
    household.pushed.push_back(
        {items.text(0), items.text(1), items.text(2), items.text(3), items.text(4)});
  }
  Query tasks(connection, kTasks);
  while (tasks.step()) household.tasks_done.push_back({tasks.text(0), tasks.day(1), tasks.text(2)});
}

void save_feed_addresses(const Connection& connection, const std::vector<FeedAddress>& addresses) {
  Query save(connection, kSaveAddress);
  for (const FeedAddress& each : addresses) {
    save.set(":id", each.id)
        .set(":name", each.name)
        .set(":token_sha256", each.token_sha256)
        .set(":person", each.person)
        .set(":detail", feed_detail_name(each.detail))
        .set(":created_at", each.created_at)
        .set(":revoked_at", each.revoked_at)
        .run();
  }
}

void replace_pushed(const Connection& connection, const std::vector<PushedItem>& items) {
  connection.run(kDropPushed);
  Query add(connection, kAddPushed);
  for (const PushedItem& each : items) {
    add.set(":collection", each.collection)
        .set(":uid", each.uid)
        .set(":href", each.href)
        .set(":etag", each.etag)
        .set(":sent", each.sent)
        .run();
  }
}

void add_tasks_done(const Connection& connection, const std::vector<TaskDone>& tasks) {
  Query add(connection, kAddTask);
  for (const TaskDone& each : tasks)
    add.set(":uid", each.uid).set(":day", each.on).set(":what", each.what).run();
}

}  // namespace larderloop::store
