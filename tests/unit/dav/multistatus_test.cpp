// XML of WebDAV answers: the forms of RFC 4918 section 9.1.5 and RFC 4791 section 7.8, and what
// servers make of them.
#include "dav/multistatus.h"

#include <gtest/gtest.h>

namespace larderloop::dav {
namespace {

TEST(Multistatus, ItemsWhateverThePrefixes) {
  const auto items = read_items(
      "<?xml version='1.0'?><multistatus xmlns='DAV:' xmlns:CAL='urn:ietf:params:xml:ns:caldav'>"
      "<response><href> /me/kit/a.ics </href><propstat><prop><getetag>\"1-a\"</getetag>"
      "<CAL:calendar-data>BEGIN:VCALENDAR&#13;\nX:a &amp; "
      "b\nEND:VCALENDAR\n</CAL:calendar-data></prop>"
      "<status>HTTP/1.1 200 OK</status></propstat></response>"
      "<response><href>/me/kit/b.ics</href><propstat><prop><getetag>\"2\"</getetag></prop>"
      "<status>HTTP/1.1 200 "
      "OK</status></propstat><propstat><prop><CAL:calendar-data>no</CAL:calendar-data></prop>"
      "<status>HTTP/1.1 404 Not Found</status></propstat></response></multistatus>");
  ASSERT_TRUE(items.has_value());
  ASSERT_EQ(items->size(), 1U);
  EXPECT_EQ(items->front().href, "/me/kit/a.ics");
  EXPECT_EQ(items->front().etag, "\"1-a\"");
  EXPECT_NE(items->front().data.find("X:a & b"), std::string::npos);
}

TEST(Multistatus, NamesOfOtherSpacesAreNotMeant) {
  EXPECT_FALSE(read_items("<multistatus xmlns='other:'/>").has_value());
  EXPECT_FALSE(read_items("<html><body>Log in</body></html>").has_value());
  EXPECT_FALSE(read_items("no xml").has_value());
  const auto items = read_items(
      "<d:multistatus xmlns:d='DAV:'><d:response><d:href>/a</d:href><d:propstat><d:prop>"
      "<x:calendar-data xmlns:x='other:'>BEGIN:VCALENDAR</x:calendar-data></d:prop>"
      "<d:status>HTTP/1.1 200 OK</d:status></d:propstat></d:response></d:multistatus>");
  ASSERT_TRUE(items.has_value());
  EXPECT_TRUE(items->empty());
}

TEST(Multistatus, KindOfACollection) {
  const auto kind = read_kind(
      "<d:multistatus xmlns:d='DAV:' "
      "xmlns:c='urn:ietf:params:xml:ns:caldav'><d:response><d:href>/a/</d:href><d:propstat><d:prop>"
      "<d:resourcetype><d:collection/><c:calendar/></d:resourcetype>"
      "<c:supported-calendar-component-set><c:comp "
      "name='VTODO'/></c:supported-calendar-component-set>"
      "</d:prop><d:status>HTTP/1.1 200 OK</d:status></d:propstat></d:response></d:multistatus>");
  ASSERT_TRUE(kind.has_value());
  EXPECT_TRUE(kind->calendar);
  EXPECT_EQ(kind->components, std::set<std::string>{"VTODO"});
}

TEST(Multistatus, TheBrokenRule) {
  EXPECT_EQ(read_rule("<d:error xmlns:d='DAV:'><c:no-uid-conflict "
                      "xmlns:c='urn:ietf:params:xml:ns:caldav'/></d:error>"),
            "no-uid-conflict");
  EXPECT_EQ(read_rule("conflict"), "");
}

TEST(Multistatus, EntitiesOfADocumentTypeAreNotExpanded) {
  const auto items = read_items(
      "<!DOCTYPE x [<!ENTITY e SYSTEM 'file:///etc/passwd'>]><d:multistatus xmlns:d='DAV:' "
      "xmlns:c='urn:ietf:params:xml:ns:caldav'><d:response><d:href>/a</d:href><d:propstat><d:prop>"
      "<c:calendar-data>&e;</c:calendar-data></d:prop><d:status>HTTP/1.1 200 "
      "OK</d:status></d:propstat></d:response></d:multistatus>");
  if (items) {
    for (const DavItem& each : *items) EXPECT_EQ(each.data, "&e;");
  }
}

}  // namespace
}  // namespace larderloop::dav
