// small_document.h - a household document with one record of every kind, to be broken in one place
// at a time.
#pragma once

#include <string>

namespace larderloop {

// Canonical to the byte.
inline const std::string kSmallDocument = R"({
  "format": "larderloop.household",
  "version": 1,
  "book_id": "0b5f0c9e-2c5d-4d8e-9a53-6f2d1c0a7e11",
  "settings": {
    "name": "Small house",
    "region": "eu",
    "tolerance": 3.5,
    "feed": {"detail": "private", "reviews": "series", "kinds": ["eat_soon", "review"], "alarm_days": {"review": 7}}
  },
  "own_allergens": [
    {"key": "kiwi", "since": "2026-02-01"}
  ],
  "people": [
    {"key": "ada", "name": "Ada", "born": "1985-09-17", "avoid": [{"key": "kiwi"}, {"key": "milk", "accept_may_contain": true}], "diets": ["vegetarian"], "ratings": {"lentil-pouch": 2}},
    {"key": "ben", "name": "Ben", "appetite": 0.5, "tolerance": 2, "energy_kcal": 1750, "sex": "male", "height_cm": 141, "mass_g": 35500, "activity": "low_active"},
    {"key": "minka", "name": "Minka", "species": "cat"}
  ],
  "foods": [
    {"key": "cat-tin", "name": "Cat tin", "kind": "pet_food", "species": "cat", "unit": "tin", "roles": ["pet_meal"]},
    {
      "key": "lentil-pouch",
      "name": "Lentil pouch",
      "gtin": "09520000000011",
      "unit": "pouch",
      "servings": 2,
      "mass_g": 260,
      "energy_kcal": 310,
      "sodium_mg": 640,
      "label": {"contains": ["celery"], "may_contain": ["milk"], "suits": ["vegan"], "read_by": "Ada", "read_on": "2026-04-01"},
      "needs_spoon": true,
      "meals": ["dinner", "lunch"],
      "roles": ["main"],
      "packs": [{"shop": "Corner shop", "units": 2, "price_cents": 498}],
      "storage": {"months_short": 24, "months_long": 60, "opened_days": 0, "source": "made up"},
      "rotate": "yes",
      "par_level": 4
    },
    {"key": "water-bottle", "name": "Water bottle", "kind": "water", "unit": "bottle", "volume_ml": 1500, "roles": ["water"]}
  ],
  "places": [
    {"key": "ada-bag", "name": "Ada's bag", "kind": "bag", "parent": "home-kit", "mass_limit_g": 6000},
    {"key": "home-kit", "name": "Home kit", "kind": "kit"},
    {"key": "pantry", "name": "Pantry", "kind": "pantry", "hot": true}
  ],
  "review_rules": [
    {"kit": "home-kit", "rule": "FREQ=YEARLY;BYMONTH=4,10;BYDAY=1SA", "starts": "2026-04-04", "slack_days": 10}
  ],
  "menu": [
    {"id": 1, "place": "ada-bag", "people": ["ada"], "day": 1, "meal": "dinner", "role": "main", "units": 2},
    {"id": 2, "place": "home-kit", "everyone": true, "food": "lentil-pouch", "priority": 7},
    {"id": 3, "place": "home-kit", "everyone": true, "role": "water", "ml": 6000}
  ],
  "table": [
    {"weekday": "monday", "meal": "dinner", "people": ["ada", "ben"]}
  ],
  "exceptions": [
    {"from": "2026-12-24", "through": "2026-12-26", "meals": ["dinner"], "away": ["ben"], "note": "Away over the holidays."}
  ],
  "wishes": [
    {"id": 1, "kind": "want", "food": "lentil-pouch", "from": "2026-11-27", "through": "2026-11-27", "meal": "dinner", "person": "ben"},
    {"id": 3, "kind": "not", "food": "lentil-pouch", "from": "2026-12-01", "through": "2026-12-07"},
    {"id": 4, "kind": "not", "from": "2026-12-24", "through": "2026-12-24", "meal": "dinner"}
  ],
  "lots": [
    {"id": 1, "food": "lentil-pouch", "mark": {"text": "BBE 08 2027", "kind": "best_before", "precision": "month", "day": "2027-08-31"}, "lot_code": "L7A", "received": "2026-04-01"},
    {"id": 2, "food": "cat-tin", "mark": {"kind": "none"}, "received": "2026-04-02", "state": "doubtful"}
  ],
  "readings": [
    {"id": 1, "lot": 2, "on": "2026-05-01", "by": "Ben", "mark": {"text": "01.02.2028", "kind": "use_by", "day": "2028-02-01"}, "state": "ok"}
  ],
  "entries": [
    {"id": 1, "kind": "received", "on": "2026-04-01", "written_at": "2026-04-01T09:30:00Z", "lot": 1, "place": "pantry", "units": 4, "paid_cents": 996},
    {"id": 2, "kind": "moved", "on": "2026-04-01", "written_at": "2026-04-01T09:31:00Z", "lot": 1, "place": "pantry", "to": "ada-bag", "units": 2},
    {"id": 3, "kind": "opened", "on": "2026-05-03", "written_at": "2026-05-03T18:00:00Z", "lot": 1, "place": "pantry", "units": 1},
    {"id": 4, "kind": "eaten", "on": "2026-05-03", "written_at": "2026-05-03T18:01:00Z", "lot": 1, "place": "pantry", "opened_on": "2026-05-03", "half_servings": 3, "who": "ada", "meal": "dinner"},
    {"id": 5, "kind": "received", "on": "2026-05-04", "written_at": "2026-05-04T08:00:00Z", "lot": 2, "place": "pantry", "units": 6},
    {"id": 6, "kind": "counted", "on": "2026-05-05", "written_at": "2026-05-05T08:00:00Z", "lot": 2, "place": "pantry", "units": 5, "change_half_servings": -2},
    {"id": 7, "kind": "lost", "on": "2026-05-06", "written_at": "2026-05-06T08:00:00Z", "lot": 2, "place": "pantry", "units": 1},
    {"id": 8, "kind": "corrected", "on": "2026-05-07", "written_at": "2026-05-07T08:00:00Z", "corrects": 7, "note": "Found behind the rice."}
  ],
  "review_events": [
    {"id": 1, "kit": "home-kit", "slot": "2026-04-04", "kind": "moved", "on": "2026-04-01", "moved_to": "2026-04-11"},
    {"id": 2, "kit": "home-kit", "slot": "2026-04-04", "kind": "started", "on": "2026-04-11"}
  ],
  "review_marks": [
    {"id": 1, "kit": "home-kit", "slot": "2026-04-04", "lot": 1, "place": "ada-bag", "what": "missing", "on": "2026-04-11", "units": 1}
  ],
  "trials": [
    {"id": 1, "kit": "home-kit", "from": "2026-05-09", "through": "2026-05-10", "people": ["ada", "ben"], "note": "Rain."}
  ],
  "trial_notes": [
    {"id": 1, "trial": 1, "food": "lentil-pouch", "person": "ben", "verdict": "hard_to_open", "on": "2026-05-09"}
  ],
  "trial_ends": [
    {"trial": 1, "on": "2026-05-10"}
  ],
  "buy_notes": [
    {"id": 1, "food": "lentil-pouch", "kit": "home-kit", "on": "2026-05-11", "kind": "not_available"},
    {"id": 2, "food": "lentil-pouch", "on": "2026-05-12", "kind": "bought_instead", "instead": "cat-tin", "note": "By mistake."}
  ],
  "mappings": [
    {"name": "my list", "sheet": "lots", "columns": {"Best before": "date", "Shelf": ""}}
  ],
  "shown_meals": [
    {"day": "2026-11-26", "meal": "dinner", "servings": [{"lot": 1, "place": "pantry", "opened_on": "2026-05-03", "person": "ben", "half_servings": 1}]}
  ],
  "feed": [
    {"key": "review|home-kit|2026-10-03", "generation": 2, "in_feed": false, "sequence": 3, "changed_at": "2026-10-04T06:00:00Z", "content": "SUMMARY:Review\r\n"}
  ],
  "feed_addresses": [
    {
      "id": 1,
      "name": "Ada's phone",
      "token_sha256": "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa",
      "person": "ada",
      "created_at": "2026-10-04T06:00:00Z",
      "revoked_at": "2026-11-04T06:00:00Z"
    },
    {"id": 2, "name": "Hall", "token_sha256": "bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb", "detail": "private", "created_at": "2026-10-05T06:00:00Z"}
  ],
  "pushed": [
    {"collection": "https://cal.example/kit/", "uid": "0b5c6a52-7d1e-5c36-9a57-3f1f2d1c8e44", "href": "/kit/a.ics", "etag": "\"7\"", "sent": "BEGIN:VCALENDAR\r\n"}
  ],
  "tasks_done": [
    {"uid": "0b5c6a52-7d1e-5c36-9a57-3f1f2d1c8e45", "on": "2026-11-20", "what": "Bought two pouches"}
  ]
}
)";

}  // namespace larderloop
