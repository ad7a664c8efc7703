-- A whole book of schema 7 as SQL: the household of tests/unit/store/sample.h, written by 'sqlite3 FILE .dump'.
-- Never changed: every later version of the program must open it.
PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE household (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  book_id TEXT NOT NULL CHECK (length(book_id) = 36),
  name TEXT NOT NULL,
  time_zone TEXT NOT NULL,
  region TEXT NOT NULL CHECK (region IN ('other', 'eu', 'us')),
  currency TEXT NOT NULL,
  margin_days INTEGER NOT NULL CHECK (margin_days >= 0),
  slack_days INTEGER NOT NULL CHECK (slack_days >= 0),
  donate_days INTEGER NOT NULL CHECK (donate_days >= 0),
  late_days INTEGER NOT NULL CHECK (late_days >= 0),
  tolerance_half_servings INTEGER NOT NULL CHECK (tolerance_half_servings >= 0),
  monotony_half_servings INTEGER NOT NULL CHECK (monotony_half_servings >= 0),
  variety_cap INTEGER NOT NULL CHECK (variety_cap >= 0),
  week_starts TEXT NOT NULL CHECK (week_starts IN
    ('monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday')),
  shopping_day TEXT NOT NULL CHECK (shopping_day IN
    ('monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'))
, date_order TEXT NOT NULL DEFAULT 'none' CHECK (date_order IN ('none', 'dmy', 'mdy', 'ymd')), feed_detail TEXT NOT NULL DEFAULT 'full' CHECK (feed_detail IN ('full', 'private')), feed_reviews TEXT NOT NULL DEFAULT 'dated' CHECK (feed_reviews IN ('dated', 'series'))) STRICT;
INSERT INTO household VALUES(1,'0b5c6a52-7d1e-4c36-9a57-3f1f2d1c8e44','The attic','Europe/Lisbon','eu','CHF',1,15,31,8,9,5,3,'sunday','tuesday','dmy','private','series');
CREATE TABLE own_allergen (
  key TEXT NOT NULL PRIMARY KEY,
  since TEXT NOT NULL CHECK (date(since, '+0 days') IS since)
) STRICT, WITHOUT ROWID;
INSERT INTO own_allergen VALUES('kiwi','2026-02-03');
CREATE TABLE statement (
  id INTEGER PRIMARY KEY,
  read_by TEXT NOT NULL CHECK (read_by <> ''),
  read_on TEXT NOT NULL CHECK (date(read_on, '+0 days') IS read_on)
) STRICT;
INSERT INTO statement VALUES(1,'Mira','2026-03-01');
INSERT INTO statement VALUES(2,'Ned','2026-04-04');
INSERT INTO statement VALUES(3,'Ned','2026-04-05');
INSERT INTO statement VALUES(4,'Mira','2026-05-01');
CREATE TABLE statement_allergen (
  statement INTEGER NOT NULL REFERENCES statement (id),
  allergen TEXT NOT NULL CHECK (allergen <> ''),
  declared TEXT NOT NULL CHECK (declared IN ('contains', 'may_contain')),
  PRIMARY KEY (statement, allergen)
) STRICT, WITHOUT ROWID;
INSERT INTO statement_allergen VALUES(1,'celery','contains');
INSERT INTO statement_allergen VALUES(1,'tree_nut:almond','may_contain');
INSERT INTO statement_allergen VALUES(2,'milk','may_contain');
INSERT INTO statement_allergen VALUES(4,'milk','contains');
CREATE TABLE statement_diet (
  statement INTEGER NOT NULL REFERENCES statement (id),
  diet TEXT NOT NULL CHECK (diet IN ('vegan', 'vegetarian', 'pescatarian', 'gluten_free', 'halal', 'kosher')),
  PRIMARY KEY (statement, diet)
) STRICT, WITHOUT ROWID;
INSERT INTO statement_diet VALUES(1,'gluten_free');
INSERT INTO statement_diet VALUES(1,'halal');
INSERT INTO statement_diet VALUES(1,'kosher');
INSERT INTO statement_diet VALUES(1,'pescatarian');
INSERT INTO statement_diet VALUES(1,'vegan');
INSERT INTO statement_diet VALUES(1,'vegetarian');
INSERT INTO statement_diet VALUES(2,'kosher');
CREATE TABLE food (
  key TEXT NOT NULL PRIMARY KEY
    CHECK (key GLOB '[a-z0-9]*' AND key NOT GLOB '*[^a-z0-9-]*' AND length(key) <= 48),
  name TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('food', 'drink', 'water', 'pet_food', 'thing')),
  species TEXT NOT NULL,
  gtin TEXT NOT NULL CHECK (gtin = '' OR (length(gtin) = 14 AND gtin NOT GLOB '*[^0-9]*')),
  unit TEXT NOT NULL,
  servings INTEGER NOT NULL CHECK (servings >= 1),
  mass_g INTEGER CHECK (mass_g >= 0),
  volume_ml INTEGER CHECK (volume_ml >= 0),
  energy_kcal INTEGER CHECK (energy_kcal >= 0),
  label INTEGER UNIQUE REFERENCES statement (id),
  no_cook INTEGER NOT NULL CHECK (no_cook IN (0, 1)),
  needs_hot_water INTEGER NOT NULL CHECK (needs_hot_water IN (0, 1)),
  needs_water_ml INTEGER NOT NULL CHECK (needs_water_ml >= 0),
  needs_opener INTEGER NOT NULL CHECK (needs_opener IN (0, 1)),
  infant_formula INTEGER NOT NULL CHECK (infant_formula IN (0, 1)),
  home_canned INTEGER NOT NULL CHECK (home_canned IN (0, 1)),
  self_filled INTEGER NOT NULL CHECK (self_filled IN (0, 1)),
  staple INTEGER NOT NULL CHECK (staple IN (0, 1)),
  storage_months_short INTEGER CHECK (storage_months_short >= 0),
  storage_months_long INTEGER CHECK (storage_months_long >= 0),
  opened_days INTEGER NOT NULL CHECK (opened_days >= 0),
  storage_source TEXT NOT NULL,
  rotate TEXT NOT NULL CHECK (rotate IN ('auto', 'yes', 'no')),
  par_level INTEGER CHECK (par_level >= 0),
  note TEXT NOT NULL
, sodium_mg INTEGER CHECK (sodium_mg >= 0), needs_spoon INTEGER NOT NULL DEFAULT 0 CHECK (needs_spoon IN (0, 1)), refrigerate INTEGER NOT NULL DEFAULT 0 CHECK (refrigerate IN (0, 1)), choking_risk INTEGER NOT NULL DEFAULT 0 CHECK (choking_risk IN (0, 1)), honey INTEGER NOT NULL DEFAULT 0 CHECK (honey IN (0, 1)), is_opener INTEGER NOT NULL DEFAULT 0 CHECK (is_opener IN (0, 1)), is_cutlery INTEGER NOT NULL DEFAULT 0 CHECK (is_cutlery IN (0, 1)), retired TEXT CHECK (date(retired, '+0 days') IS retired)) STRICT, WITHOUT ROWID;
INSERT INTO food VALUES('bar','Food named bar','food','','','pack',1,NULL,NULL,NULL,NULL,1,0,0,0,1,1,0,0,NULL,NULL,0,'','auto',NULL,'',NULL,0,0,1,1,0,0,NULL);
INSERT INTO food VALUES('cat-food','Food named cat-food','pet_food','cat','','pack',1,NULL,NULL,NULL,NULL,1,0,0,0,0,0,0,0,NULL,NULL,0,'','no',NULL,'',NULL,0,0,0,0,0,0,NULL);
INSERT INTO food VALUES('coffee','Food named coffee','drink','','','pack',4,NULL,NULL,NULL,NULL,0,1,200,0,0,0,0,0,NULL,NULL,0,'','auto',NULL,'',NULL,0,1,0,0,0,0,NULL);
INSERT INTO food VALUES('lentils','Linsen "süß"; ''--'' 🍲','food','','00012345678905','can',3,400,380,420,1,1,0,0,1,0,0,0,1,24,60,3,'storage table, row 7','yes',4,replace('two\nlines','\n',char(10)),980,1,0,0,0,0,0,NULL);
INSERT INTO food VALUES('opener','Food named opener','thing','','','pack',1,NULL,NULL,NULL,NULL,1,0,0,0,0,0,0,0,NULL,NULL,0,'','auto',NULL,'',NULL,0,0,0,0,1,1,NULL);
INSERT INTO food VALUES('soup','Food named soup','food','','','pack',2,NULL,NULL,NULL,NULL,1,0,0,0,0,0,0,0,NULL,NULL,0,'','auto',NULL,'',NULL,0,0,0,0,0,0,'2026-06-01');
INSERT INTO food VALUES('water','Food named water','water','','','pack',1,NULL,1500,NULL,NULL,1,0,0,0,0,0,1,0,NULL,NULL,0,'','auto',NULL,'',NULL,0,0,0,0,0,0,NULL);
CREATE TABLE food_meal (
  food TEXT NOT NULL REFERENCES food (key),
  meal TEXT NOT NULL CHECK (meal IN ('breakfast', 'lunch', 'dinner', 'snack')),
  PRIMARY KEY (food, meal)
) STRICT, WITHOUT ROWID;
INSERT INTO food_meal VALUES('lentils','breakfast');
INSERT INTO food_meal VALUES('lentils','dinner');
INSERT INTO food_meal VALUES('lentils','lunch');
INSERT INTO food_meal VALUES('lentils','snack');
CREATE TABLE food_role (
  food TEXT NOT NULL REFERENCES food (key),
  role TEXT NOT NULL CHECK (role IN
    ('main', 'side', 'fruit', 'snack', 'drink', 'comfort', 'pet_meal', 'water', 'thing')),
  PRIMARY KEY (food, role)
) STRICT, WITHOUT ROWID;
INSERT INTO food_role VALUES('bar','comfort');
INSERT INTO food_role VALUES('bar','fruit');
INSERT INTO food_role VALUES('bar','snack');
INSERT INTO food_role VALUES('cat-food','pet_meal');
INSERT INTO food_role VALUES('coffee','drink');
INSERT INTO food_role VALUES('lentils','main');
INSERT INTO food_role VALUES('lentils','side');
INSERT INTO food_role VALUES('opener','thing');
INSERT INTO food_role VALUES('water','water');
CREATE TABLE pack (
  food TEXT NOT NULL REFERENCES food (key),
  number INTEGER NOT NULL CHECK (number >= 1),
  shop TEXT NOT NULL,
  units INTEGER NOT NULL CHECK (units >= 1),
  price_cents INTEGER NOT NULL CHECK (price_cents >= 0),
  PRIMARY KEY (food, number)
) STRICT, WITHOUT ROWID;
INSERT INTO pack VALUES('lentils',1,'Corner shop',6,899);
INSERT INTO pack VALUES('lentils',2,'',1,179);
INSERT INTO pack VALUES('lentils',3,'Corner shop',6,899);
CREATE TABLE person (
  key TEXT NOT NULL PRIMARY KEY
    CHECK (key GLOB '[a-z0-9]*' AND key NOT GLOB '*[^a-z0-9-]*' AND length(key) <= 48),
  name TEXT NOT NULL,
  species TEXT NOT NULL,
  born TEXT CHECK (date(born, '+0 days') IS born),
  appetite_half_servings INTEGER NOT NULL CHECK (appetite_half_servings >= 0),
  tolerance_half_servings INTEGER CHECK (tolerance_half_servings >= 0),
  energy_kcal INTEGER CHECK (energy_kcal >= 0),
  note TEXT NOT NULL
, sex TEXT CHECK (sex IN ('female', 'male')), height_cm INTEGER CHECK (height_cm BETWEEN 20 AND 250), mass_g INTEGER CHECK (mass_g >= 1), activity TEXT CHECK (activity IN ('inactive', 'low_active', 'active', 'very_active')), retired TEXT CHECK (date(retired, '+0 days') IS retired)) STRICT, WITHOUT ROWID;
INSERT INTO person VALUES('mira','Mira','human','1984-02-29',2,6,2000,'soft food','female',171,64500,'low_active',NULL);
INSERT INTO person VALUES('ned','Ned','human',NULL,1,NULL,NULL,'','male',NULL,NULL,'very_active',NULL);
INSERT INTO person VALUES('tom','Tom','cat',NULL,2,NULL,NULL,'',NULL,NULL,4200,NULL,NULL);
INSERT INTO person VALUES('uma','Uma','human',NULL,2,NULL,NULL,'',NULL,NULL,NULL,NULL,'2026-06-02');
CREATE TABLE person_avoid (
  person TEXT NOT NULL REFERENCES person (key),
  allergen TEXT NOT NULL CHECK (allergen <> ''),
  accept_may_contain INTEGER NOT NULL CHECK (accept_may_contain IN (0, 1)),
  PRIMARY KEY (person, allergen)
) STRICT, WITHOUT ROWID;
INSERT INTO person_avoid VALUES('mira','kiwi',0);
INSERT INTO person_avoid VALUES('mira','milk',0);
INSERT INTO person_avoid VALUES('mira','sesame',1);
CREATE TABLE person_diet (
  person TEXT NOT NULL REFERENCES person (key),
  diet TEXT NOT NULL CHECK (diet IN ('vegan', 'vegetarian', 'pescatarian', 'gluten_free', 'halal', 'kosher')),
  PRIMARY KEY (person, diet)
) STRICT, WITHOUT ROWID;
INSERT INTO person_diet VALUES('mira','halal');
INSERT INTO person_diet VALUES('mira','vegetarian');
CREATE TABLE rating (
  person TEXT NOT NULL REFERENCES person (key),
  food TEXT NOT NULL REFERENCES food (key),
  rating INTEGER NOT NULL CHECK (rating BETWEEN -2 AND 2),
  PRIMARY KEY (person, food)
) STRICT, WITHOUT ROWID;
INSERT INTO rating VALUES('mira','bar',2);
INSERT INTO rating VALUES('mira','coffee',-2);
INSERT INTO rating VALUES('mira','lentils',-1);
INSERT INTO rating VALUES('ned','bar',1);
CREATE TABLE place (
  key TEXT NOT NULL PRIMARY KEY
    CHECK (key GLOB '[a-z0-9]*' AND key NOT GLOB '*[^a-z0-9-]*' AND length(key) <= 48),
  name TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('kit', 'box', 'bag', 'pantry', 'shelf')),
  parent TEXT REFERENCES place (key) DEFERRABLE INITIALLY DEFERRED,
  mass_limit_g INTEGER CHECK (mass_limit_g >= 0),
  volume_limit_ml INTEGER CHECK (volume_limit_ml >= 0),
  hot INTEGER NOT NULL CHECK (hot IN (0, 1)),
  note TEXT NOT NULL
, retired TEXT CHECK (date(retired, '+0 days') IS retired)) STRICT, WITHOUT ROWID;
INSERT INTO place VALUES('bag','Place bag','bag','box',NULL,NULL,0,'',NULL);
INSERT INTO place VALUES('box','Place box','box','kit',12000,40000,1,'in the hall',NULL);
INSERT INTO place VALUES('kit','Place kit','kit',NULL,NULL,NULL,0,'',NULL);
INSERT INTO place VALUES('old-kit','Place old-kit','kit',NULL,NULL,NULL,0,'','2026-06-03');
INSERT INTO place VALUES('pantry','Place pantry','pantry',NULL,NULL,NULL,0,'',NULL);
INSERT INTO place VALUES('shelf','Place shelf','shelf','pantry',NULL,NULL,0,'',NULL);
CREATE TABLE review_rule (
  kit TEXT NOT NULL PRIMARY KEY REFERENCES place (key),
  rule TEXT NOT NULL,
  starts TEXT NOT NULL CHECK (date(starts, '+0 days') IS starts),
  slack_days INTEGER CHECK (slack_days >= 0)
) STRICT, WITHOUT ROWID;
INSERT INTO review_rule VALUES('kit','FREQ=MONTHLY;INTERVAL=6','2026-04-04',21);
CREATE TABLE menu_line (
  id INTEGER PRIMARY KEY,
  place TEXT NOT NULL REFERENCES place (key),
  everyone INTEGER NOT NULL CHECK (everyone IN (0, 1)),
  day INTEGER NOT NULL CHECK (day >= 0),
  meal TEXT CHECK (meal IN ('breakfast', 'lunch', 'dinner', 'snack')),
  role TEXT CHECK (role IN
    ('main', 'side', 'fruit', 'snack', 'drink', 'comfort', 'pet_meal', 'water', 'thing')),
  food TEXT REFERENCES food (key),
  units INTEGER NOT NULL CHECK (units >= 0),
  ml INTEGER NOT NULL CHECK (ml >= 0),
  priority INTEGER NOT NULL CHECK (priority >= 0),
  CHECK ((role IS NULL) <> (food IS NULL))
) STRICT;
INSERT INTO menu_line VALUES(3,'bag',0,1,'lunch','main',NULL,1,0,0);
INSERT INTO menu_line VALUES(6,'bag',0,1,'dinner','side',NULL,1,0,0);
INSERT INTO menu_line VALUES(9,'bag',0,1,'snack','fruit',NULL,1,0,0);
INSERT INTO menu_line VALUES(12,'bag',0,1,'breakfast','snack',NULL,1,0,0);
INSERT INTO menu_line VALUES(15,'bag',0,1,'lunch','drink',NULL,1,0,0);
INSERT INTO menu_line VALUES(18,'bag',0,1,'dinner','comfort',NULL,1,0,0);
INSERT INTO menu_line VALUES(21,'bag',0,1,'snack','pet_meal',NULL,1,0,0);
INSERT INTO menu_line VALUES(24,'bag',0,1,'breakfast','water',NULL,1,3000,0);
INSERT INTO menu_line VALUES(27,'bag',0,0,NULL,'thing',NULL,1,0,0);
INSERT INTO menu_line VALUES(100,'kit',1,0,NULL,NULL,'water',1,4000,7);
CREATE TABLE menu_line_person (
  menu_line INTEGER NOT NULL REFERENCES menu_line (id),
  person TEXT NOT NULL REFERENCES person (key),
  PRIMARY KEY (menu_line, person)
) STRICT, WITHOUT ROWID;
INSERT INTO menu_line_person VALUES(3,'mira');
INSERT INTO menu_line_person VALUES(3,'ned');
INSERT INTO menu_line_person VALUES(6,'mira');
INSERT INTO menu_line_person VALUES(6,'ned');
INSERT INTO menu_line_person VALUES(9,'mira');
INSERT INTO menu_line_person VALUES(9,'ned');
INSERT INTO menu_line_person VALUES(12,'mira');
INSERT INTO menu_line_person VALUES(12,'ned');
INSERT INTO menu_line_person VALUES(15,'mira');
INSERT INTO menu_line_person VALUES(15,'ned');
INSERT INTO menu_line_person VALUES(18,'mira');
INSERT INTO menu_line_person VALUES(18,'ned');
INSERT INTO menu_line_person VALUES(21,'tom');
INSERT INTO menu_line_person VALUES(24,'mira');
INSERT INTO menu_line_person VALUES(24,'ned');
CREATE TABLE table_seat (
  weekday TEXT NOT NULL CHECK (weekday IN
    ('monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday')),
  meal TEXT NOT NULL CHECK (meal IN ('breakfast', 'lunch', 'dinner', 'snack')),
  PRIMARY KEY (weekday, meal)
) STRICT, WITHOUT ROWID;
INSERT INTO table_seat VALUES('friday','breakfast');
INSERT INTO table_seat VALUES('friday','dinner');
INSERT INTO table_seat VALUES('friday','lunch');
INSERT INTO table_seat VALUES('friday','snack');
INSERT INTO table_seat VALUES('monday','breakfast');
INSERT INTO table_seat VALUES('monday','dinner');
INSERT INTO table_seat VALUES('monday','lunch');
INSERT INTO table_seat VALUES('monday','snack');
INSERT INTO table_seat VALUES('saturday','breakfast');
INSERT INTO table_seat VALUES('saturday','dinner');
INSERT INTO table_seat VALUES('saturday','lunch');
INSERT INTO table_seat VALUES('saturday','snack');
INSERT INTO table_seat VALUES('sunday','breakfast');
INSERT INTO table_seat VALUES('sunday','dinner');
INSERT INTO table_seat VALUES('sunday','lunch');
INSERT INTO table_seat VALUES('sunday','snack');
INSERT INTO table_seat VALUES('thursday','breakfast');
INSERT INTO table_seat VALUES('thursday','dinner');
INSERT INTO table_seat VALUES('thursday','lunch');
INSERT INTO table_seat VALUES('thursday','snack');
INSERT INTO table_seat VALUES('tuesday','breakfast');
INSERT INTO table_seat VALUES('tuesday','dinner');
INSERT INTO table_seat VALUES('tuesday','lunch');
INSERT INTO table_seat VALUES('tuesday','snack');
INSERT INTO table_seat VALUES('wednesday','breakfast');
INSERT INTO table_seat VALUES('wednesday','dinner');
INSERT INTO table_seat VALUES('wednesday','lunch');
INSERT INTO table_seat VALUES('wednesday','snack');
CREATE TABLE table_seat_person (
  weekday TEXT NOT NULL,
  meal TEXT NOT NULL,
  person TEXT NOT NULL REFERENCES person (key),
  PRIMARY KEY (weekday, meal, person),
  FOREIGN KEY (weekday, meal) REFERENCES table_seat (weekday, meal)
) STRICT, WITHOUT ROWID;
INSERT INTO table_seat_person VALUES('friday','breakfast','mira');
INSERT INTO table_seat_person VALUES('friday','breakfast','ned');
INSERT INTO table_seat_person VALUES('friday','dinner','mira');
INSERT INTO table_seat_person VALUES('friday','dinner','ned');
INSERT INTO table_seat_person VALUES('friday','lunch','mira');
INSERT INTO table_seat_person VALUES('friday','lunch','ned');
INSERT INTO table_seat_person VALUES('friday','snack','mira');
INSERT INTO table_seat_person VALUES('friday','snack','ned');
INSERT INTO table_seat_person VALUES('monday','breakfast','mira');
INSERT INTO table_seat_person VALUES('monday','breakfast','ned');
INSERT INTO table_seat_person VALUES('monday','dinner','mira');
INSERT INTO table_seat_person VALUES('monday','dinner','ned');
INSERT INTO table_seat_person VALUES('monday','lunch','mira');
INSERT INTO table_seat_person VALUES('monday','lunch','ned');
INSERT INTO table_seat_person VALUES('monday','snack','mira');
INSERT INTO table_seat_person VALUES('monday','snack','ned');
INSERT INTO table_seat_person VALUES('saturday','breakfast','mira');
INSERT INTO table_seat_person VALUES('saturday','breakfast','ned');
INSERT INTO table_seat_person VALUES('saturday','dinner','mira');
INSERT INTO table_seat_person VALUES('saturday','dinner','ned');
INSERT INTO table_seat_person VALUES('saturday','lunch','mira');
INSERT INTO table_seat_person VALUES('saturday','lunch','ned');
INSERT INTO table_seat_person VALUES('saturday','snack','mira');
INSERT INTO table_seat_person VALUES('saturday','snack','ned');
INSERT INTO table_seat_person VALUES('sunday','breakfast','mira');
INSERT INTO table_seat_person VALUES('sunday','breakfast','ned');
INSERT INTO table_seat_person VALUES('sunday','dinner','mira');
INSERT INTO table_seat_person VALUES('sunday','dinner','ned');
INSERT INTO table_seat_person VALUES('sunday','lunch','mira');
INSERT INTO table_seat_person VALUES('sunday','lunch','ned');
INSERT INTO table_seat_person VALUES('thursday','breakfast','mira');
INSERT INTO table_seat_person VALUES('thursday','breakfast','ned');
INSERT INTO table_seat_person VALUES('thursday','dinner','mira');
INSERT INTO table_seat_person VALUES('thursday','dinner','ned');
INSERT INTO table_seat_person VALUES('thursday','lunch','mira');
INSERT INTO table_seat_person VALUES('thursday','lunch','ned');
INSERT INTO table_seat_person VALUES('thursday','snack','mira');
INSERT INTO table_seat_person VALUES('thursday','snack','ned');
INSERT INTO table_seat_person VALUES('tuesday','breakfast','mira');
INSERT INTO table_seat_person VALUES('tuesday','breakfast','ned');
INSERT INTO table_seat_person VALUES('tuesday','dinner','mira');
INSERT INTO table_seat_person VALUES('tuesday','dinner','ned');
INSERT INTO table_seat_person VALUES('tuesday','lunch','mira');
INSERT INTO table_seat_person VALUES('tuesday','lunch','ned');
INSERT INTO table_seat_person VALUES('tuesday','snack','mira');
INSERT INTO table_seat_person VALUES('tuesday','snack','ned');
INSERT INTO table_seat_person VALUES('wednesday','breakfast','mira');
INSERT INTO table_seat_person VALUES('wednesday','breakfast','ned');
INSERT INTO table_seat_person VALUES('wednesday','dinner','mira');
INSERT INTO table_seat_person VALUES('wednesday','dinner','ned');
INSERT INTO table_seat_person VALUES('wednesday','lunch','mira');
INSERT INTO table_seat_person VALUES('wednesday','lunch','ned');
INSERT INTO table_seat_person VALUES('wednesday','snack','mira');
INSERT INTO table_seat_person VALUES('wednesday','snack','ned');
CREATE TABLE table_exception (
  id INTEGER PRIMARY KEY,
  from_day TEXT NOT NULL CHECK (date(from_day, '+0 days') IS from_day),
  through_day TEXT NOT NULL CHECK (date(through_day, '+0 days') IS through_day),
  nobody INTEGER NOT NULL CHECK (nobody IN (0, 1)),
  note TEXT NOT NULL,
  CHECK (from_day <= through_day)
) STRICT;
INSERT INTO table_exception VALUES(1,'2026-07-01','2026-07-01',1,'');
INSERT INTO table_exception VALUES(2,'2026-12-24','2026-12-26',0,'away');
CREATE TABLE table_exception_meal (
  exception INTEGER NOT NULL REFERENCES table_exception (id),
  meal TEXT NOT NULL CHECK (meal IN ('breakfast', 'lunch', 'dinner', 'snack')),
  PRIMARY KEY (exception, meal)
) STRICT, WITHOUT ROWID;
INSERT INTO table_exception_meal VALUES(2,'dinner');
INSERT INTO table_exception_meal VALUES(2,'lunch');
CREATE TABLE table_exception_person (
  exception INTEGER NOT NULL REFERENCES table_exception (id),
  person TEXT NOT NULL REFERENCES person (key),
  PRIMARY KEY (exception, person)
) STRICT, WITHOUT ROWID;
INSERT INTO table_exception_person VALUES(2,'ned');
CREATE TABLE lot (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  food TEXT NOT NULL REFERENCES food (key),
  mark_text TEXT NOT NULL,
  mark_kind TEXT NOT NULL CHECK (mark_kind IN
    ('none', 'best_before', 'use_by', 'sell_by', 'packed_on', 'produced_on')),
  mark_precision TEXT NOT NULL CHECK (mark_precision IN ('day', 'month', 'year')),
  mark_day TEXT CHECK (date(mark_day, '+0 days') IS mark_day),
  lot_code TEXT NOT NULL,
  received TEXT NOT NULL CHECK (date(received, '+0 days') IS received),
  label INTEGER UNIQUE REFERENCES statement (id),
  state TEXT NOT NULL CHECK (state IN ('ok', 'doubtful', 'recalled')),
  note TEXT NOT NULL,
  CHECK ((mark_day IS NULL) = (mark_kind = 'none'))
) STRICT;
INSERT INTO lot VALUES(1,'lentils','','none','day',NULL,'L1','2026-04-04',2,'doubtful','');
INSERT INTO lot VALUES(2,'bar','as printed','best_before','year','2028-12-31','L2','2026-04-04',NULL,'recalled','dented');
INSERT INTO lot VALUES(3,'lentils','as printed','use_by','day','2028-12-31','L3','2026-04-04',3,'ok','');
INSERT INTO lot VALUES(4,'bar','as printed','sell_by','month','2028-12-31','L4','2026-04-04',NULL,'doubtful','');
INSERT INTO lot VALUES(5,'lentils','as printed','packed_on','year','2028-12-31','L5','2026-04-04',NULL,'recalled','');
INSERT INTO lot VALUES(6,'bar','as printed','produced_on','day','2028-12-31','L6','2026-04-04',NULL,'ok','');
CREATE TABLE reading (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  lot INTEGER NOT NULL REFERENCES lot (id),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  told_by TEXT NOT NULL,
  mark_text TEXT,
  mark_kind TEXT CHECK (mark_kind IN ('none', 'best_before', 'use_by', 'sell_by', 'packed_on', 'produced_on')),
  mark_precision TEXT CHECK (mark_precision IN ('day', 'month', 'year')),
  mark_day TEXT CHECK (date(mark_day, '+0 days') IS mark_day),
  label INTEGER UNIQUE REFERENCES statement (id),
  state TEXT CHECK (state IN ('ok', 'doubtful', 'recalled')),
  note TEXT NOT NULL,
  CHECK ((mark_text IS NULL) = (mark_kind IS NULL) AND (mark_precision IS NULL) = (mark_kind IS NULL)),
  CHECK ((mark_day IS NULL) = (mark_kind IS NULL OR mark_kind = 'none')),
  CHECK (mark_kind IS NOT NULL OR label IS NOT NULL OR state IS NOT NULL)
) STRICT;
INSERT INTO reading VALUES(2,1,'2026-05-01','Mira','BEST BEFORE 03 2028','best_before','month','2028-03-31',4,'recalled','notice in the shop');
INSERT INTO reading VALUES(5,2,'2026-05-02','Ned','','none','day',NULL,NULL,NULL,'');
INSERT INTO reading VALUES(6,2,'2026-05-03','Ned',NULL,NULL,NULL,NULL,NULL,'ok','');
CREATE TABLE entry (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  kind TEXT NOT NULL CHECK (kind IN ('received', 'found', 'moved', 'opened', 'eaten', 'given_away', 'thrown_out',
    'lost', 'counted', 'corrected')),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  written_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%SZ', written_at, '+0 days') IS written_at),
  lot INTEGER REFERENCES lot (id),
  place TEXT REFERENCES place (key),
  opened_on TEXT CHECK (date(opened_on, '+0 days') IS opened_on),
  to_place TEXT REFERENCES place (key),
  half_servings INTEGER NOT NULL CHECK (half_servings >= 0),
  change_half_servings INTEGER NOT NULL,
  corrects INTEGER UNIQUE REFERENCES entry (id),
  who TEXT REFERENCES person (key),
  meal TEXT CHECK (meal IN ('breakfast', 'lunch', 'dinner', 'snack')),
  paid_cents INTEGER CHECK (paid_cents >= 0),
  note TEXT NOT NULL,
  CHECK (kind = 'corrected' OR (lot IS NOT NULL AND place IS NOT NULL)),
  CHECK ((corrects IS NOT NULL) = (kind = 'corrected')),
  CHECK ((to_place IS NOT NULL) = (kind = 'moved')),
  CHECK (change_half_servings = 0 OR kind = 'counted')
) STRICT;
INSERT INTO entry VALUES(1,'received','2026-04-04','2026-06-01T23:59:59Z',1,'pantry',NULL,NULL,48,0,NULL,NULL,NULL,899,'it''s "new"');
INSERT INTO entry VALUES(3,'moved','2026-04-05','2026-06-01T23:59:59Z',1,'pantry',NULL,'bag',18,0,NULL,NULL,NULL,NULL,'');
INSERT INTO entry VALUES(4,'opened','2026-04-06','2026-06-01T23:59:59Z',1,'pantry',NULL,NULL,6,0,NULL,NULL,NULL,NULL,'');
INSERT INTO entry VALUES(5,'eaten','2026-04-06','2026-06-01T23:59:59Z',1,'pantry','2026-04-06',NULL,1,0,NULL,'ned','snack',NULL,'');
INSERT INTO entry VALUES(6,'counted','2026-04-07','2026-06-01T23:59:59Z',1,'pantry',NULL,NULL,12,-12,NULL,NULL,NULL,NULL,'');
INSERT INTO entry VALUES(7,'corrected','2026-04-08','2026-06-01T23:59:59Z',NULL,NULL,NULL,NULL,0,0,6,NULL,NULL,NULL,'');
INSERT INTO entry VALUES(8,'found','2026-04-09','2026-06-01T23:59:59Z',1,'pantry',NULL,NULL,6,0,NULL,NULL,NULL,NULL,'');
INSERT INTO entry VALUES(9,'given_away','2026-04-10','2026-06-01T23:59:59Z',1,'pantry',NULL,NULL,6,0,NULL,NULL,NULL,NULL,'');
INSERT INTO entry VALUES(10,'thrown_out','2026-04-11','2026-06-01T23:59:59Z',1,'pantry',NULL,NULL,6,0,NULL,NULL,NULL,NULL,'');
INSERT INTO entry VALUES(11,'lost','2026-04-12','2026-06-01T23:59:59Z',1,'pantry',NULL,NULL,6,0,NULL,NULL,NULL,NULL,'');
CREATE TABLE review_event (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  kit TEXT NOT NULL REFERENCES place (key),
  slot TEXT NOT NULL CHECK (date(slot, '+0 days') IS slot),
  kind TEXT NOT NULL CHECK (kind IN ('started', 'finished', 'skipped', 'moved')),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  moved_to TEXT CHECK (date(moved_to, '+0 days') IS moved_to),
  note TEXT NOT NULL,
  CHECK ((moved_to IS NOT NULL) = (kind = 'moved'))
) STRICT;
INSERT INTO review_event VALUES(1,'kit','2026-10-04','started','2026-10-03',NULL,'n1');
INSERT INTO review_event VALUES(2,'kit','2026-10-04','finished','2026-10-03',NULL,'n2');
INSERT INTO review_event VALUES(3,'kit','2026-10-04','skipped','2026-10-03',NULL,'n3');
INSERT INTO review_event VALUES(4,'kit','2026-10-04','moved','2026-10-03','2026-10-11','n4');
CREATE TABLE review_mark (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  kit TEXT NOT NULL REFERENCES place (key),
  slot TEXT NOT NULL CHECK (date(slot, '+0 days') IS slot),
  lot INTEGER NOT NULL REFERENCES lot (id),
  place TEXT NOT NULL REFERENCES place (key),
  opened_on TEXT CHECK (date(opened_on, '+0 days') IS opened_on),
  what TEXT NOT NULL CHECK (what IN ('there', 'missing', 'damaged', 'redated')),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  half_servings INTEGER NOT NULL CHECK (half_servings >= 0),
  mark_text TEXT,
  mark_kind TEXT CHECK (mark_kind IN ('none', 'best_before', 'use_by', 'sell_by', 'packed_on', 'produced_on')),
  mark_precision TEXT CHECK (mark_precision IN ('day', 'month', 'year')),
  mark_day TEXT CHECK (date(mark_day, '+0 days') IS mark_day),
  CHECK ((mark_text IS NULL) = (mark_kind IS NULL) AND (mark_precision IS NULL) = (mark_kind IS NULL)),
  CHECK ((mark_day IS NULL) = (mark_kind IS NULL OR mark_kind = 'none'))
) STRICT;
INSERT INTO review_mark VALUES(1,'kit','2026-10-04',1,'bag',NULL,'there','2026-10-04',6,NULL,NULL,NULL,NULL);
INSERT INTO review_mark VALUES(2,'kit','2026-10-04',1,'bag',NULL,'missing','2026-10-04',6,NULL,NULL,NULL,NULL);
INSERT INTO review_mark VALUES(3,'kit','2026-10-04',1,'bag',NULL,'damaged','2026-10-04',6,NULL,NULL,NULL,NULL);
INSERT INTO review_mark VALUES(4,'kit','2026-10-04',1,'bag',NULL,'redated','2026-10-04',6,'2027','use_by','year','2027-12-31');
CREATE TABLE shown_meal (
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  meal TEXT NOT NULL CHECK (meal IN ('breakfast', 'lunch', 'dinner', 'snack')),
  PRIMARY KEY (day, meal)
) STRICT, WITHOUT ROWID;
INSERT INTO shown_meal VALUES('2026-11-25','breakfast');
INSERT INTO shown_meal VALUES('2026-11-25','dinner');
INSERT INTO shown_meal VALUES('2026-11-26','lunch');
CREATE TABLE shown_serving (
  day TEXT NOT NULL,
  meal TEXT NOT NULL,
  number INTEGER NOT NULL CHECK (number >= 1),
  lot INTEGER NOT NULL REFERENCES lot (id),
  place TEXT NOT NULL REFERENCES place (key),
  opened_on TEXT CHECK (date(opened_on, '+0 days') IS opened_on),
  person TEXT NOT NULL REFERENCES person (key),
  half_servings INTEGER NOT NULL CHECK (half_servings >= 0),
  PRIMARY KEY (day, meal, number),
  FOREIGN KEY (day, meal) REFERENCES shown_meal (day, meal)
) STRICT, WITHOUT ROWID;
INSERT INTO shown_serving VALUES('2026-11-25','breakfast',1,1,'pantry','2026-04-06','mira',2);
INSERT INTO shown_serving VALUES('2026-11-25','breakfast',2,2,'pantry',NULL,'ned',1);
INSERT INTO shown_serving VALUES('2026-11-26','lunch',1,2,'pantry',NULL,'ned',1);
CREATE TABLE feed_stamp (
  key TEXT NOT NULL,
  generation INTEGER NOT NULL CHECK (generation >= 1),
  in_feed INTEGER NOT NULL CHECK (in_feed IN (0, 1)),
  sequence INTEGER NOT NULL CHECK (sequence >= 0),
  changed_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%SZ', changed_at, '+0 days') IS changed_at),
  content TEXT NOT NULL,
  PRIMARY KEY (key, generation)
) STRICT, WITHOUT ROWID;
INSERT INTO feed_stamp VALUES('meal|2026-11-25',1,0,3,'2026-11-20T06:00:00Z',replace(replace('a\r\nb','\r',char(13)),'\n',char(10)));
INSERT INTO feed_stamp VALUES('meal|2026-11-25',2,1,0,'2026-11-21T06:00:00Z','');
INSERT INTO feed_stamp VALUES('review|kit|2026-10-04',1,1,1,'2026-11-21T06:00:01Z','text');
CREATE TABLE wish (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  kind TEXT NOT NULL CHECK (kind IN ('want', 'not')),
  food TEXT REFERENCES food (key),      -- NULL: nothing of the kit
  from_day TEXT CHECK (date(from_day, '+0 days') IS from_day),
  through_day TEXT CHECK (date(through_day, '+0 days') IS through_day),  -- both NULL: always
  meal TEXT CHECK (meal IN ('breakfast', 'lunch', 'dinner', 'snack')),   -- NULL: every meal
  person TEXT REFERENCES person (key),  -- NULL: everyone
  CHECK ((from_day IS NULL) = (through_day IS NULL)),
  CHECK (from_day <= through_day),
  CHECK (kind = 'not' OR (food IS NOT NULL AND meal IS NOT NULL AND from_day IS NOT NULL AND from_day = through_day)),
  CHECK (food IS NOT NULL OR from_day IS NOT NULL)
) STRICT;
INSERT INTO wish VALUES(1,'want','bar','2026-11-27','2026-11-27','snack','ned');
INSERT INTO wish VALUES(2,'want','lentils','2026-11-27','2026-11-27','dinner',NULL);
INSERT INTO wish VALUES(4,'not','lentils',NULL,NULL,NULL,'mira');
INSERT INTO wish VALUES(5,'not','coffee','2026-11-27','2026-12-06','breakfast',NULL);
INSERT INTO wish VALUES(9,'not',NULL,'2026-11-27','2026-11-27','lunch',NULL);
CREATE TABLE kept_plan (
  name TEXT PRIMARY KEY CHECK (length(name) > 0),  -- 'eat-down', or 'refill' and the kit
  problem TEXT NOT NULL,                           -- fingerprint of the problem
  plan TEXT NOT NULL
) STRICT;
INSERT INTO kept_plan VALUES('eat-down','00ff',replace('waste	12	1\n','\n',char(10)));
CREATE TABLE trial (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  kit TEXT NOT NULL REFERENCES place (key),
  from_day TEXT NOT NULL CHECK (date(from_day, '+0 days') IS from_day),
  through_day TEXT NOT NULL CHECK (date(through_day, '+0 days') IS through_day),
  note TEXT NOT NULL,
  CHECK (from_day <= through_day)
) STRICT;
INSERT INTO trial VALUES(2,'kit','2026-09-12','2026-09-13','first');
INSERT INTO trial VALUES(3,'kit','2026-11-21','2026-11-21','');
CREATE TABLE trial_person (
  trial INTEGER NOT NULL REFERENCES trial (id),
  person TEXT NOT NULL REFERENCES person (key),
  PRIMARY KEY (trial, person)
) STRICT, WITHOUT ROWID;
INSERT INTO trial_person VALUES(2,'mira');
INSERT INTO trial_person VALUES(2,'tom');
CREATE TABLE trial_note (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  trial INTEGER NOT NULL REFERENCES trial (id),
  food TEXT NOT NULL REFERENCES food (key),
  person TEXT NOT NULL REFERENCES person (key),
  verdict TEXT NOT NULL CHECK (verdict IN
    ('liked', 'tired', 'hard_to_open', 'hard_to_prepare', 'needed_water', 'not_enough')),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  note TEXT NOT NULL
) STRICT;
INSERT INTO trial_note VALUES(5,2,'lentils','ned','liked','2026-09-13','twice');
INSERT INTO trial_note VALUES(6,2,'lentils','mira','tired','2026-09-13','');
INSERT INTO trial_note VALUES(7,2,'lentils','ned','hard_to_open','2026-09-13','');
INSERT INTO trial_note VALUES(8,3,'lentils','mira','hard_to_prepare','2026-09-13','');
INSERT INTO trial_note VALUES(9,3,'lentils','ned','needed_water','2026-09-13','');
INSERT INTO trial_note VALUES(10,3,'lentils','mira','not_enough','2026-09-13','');
CREATE TABLE trial_end (
  trial INTEGER PRIMARY KEY REFERENCES trial (id),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  note TEXT NOT NULL
) STRICT;
INSERT INTO trial_end VALUES(2,'2026-09-14','over');
CREATE TABLE table_exception_guest (
  exception INTEGER NOT NULL REFERENCES table_exception (id),
  person TEXT NOT NULL REFERENCES person (key),
  PRIMARY KEY (exception, person)
) STRICT, WITHOUT ROWID;
INSERT INTO table_exception_guest VALUES(2,'mira');
CREATE TABLE buy_note (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  food TEXT NOT NULL REFERENCES food (key),
  kit TEXT REFERENCES place (key),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  kind TEXT NOT NULL CHECK (kind IN ('not_available', 'bought_instead')),
  instead TEXT REFERENCES food (key),
  note TEXT NOT NULL,
  CHECK ((kind = 'bought_instead') = (instead IS NOT NULL))
) STRICT;
INSERT INTO buy_note VALUES(1,'lentils','kit','2026-10-05','not_available',NULL,'');
INSERT INTO buy_note VALUES(3,'lentils',NULL,'2026-10-06','bought_instead','bar','cheaper');
CREATE TABLE import_mapping (
  name TEXT NOT NULL PRIMARY KEY CHECK (length(name) > 0),
  sheet TEXT NOT NULL CHECK (sheet IN ('foods', 'lots', 'people', 'menu'))
) STRICT, WITHOUT ROWID;
INSERT INTO import_mapping VALUES('m1','foods');
INSERT INTO import_mapping VALUES('m2','lots');
INSERT INTO import_mapping VALUES('m3','people');
INSERT INTO import_mapping VALUES('m4','menu');
CREATE TABLE import_column (
  mapping TEXT NOT NULL REFERENCES import_mapping (name),
  header TEXT NOT NULL,
  field TEXT NOT NULL,
  PRIMARY KEY (mapping, header)
) STRICT, WITHOUT ROWID;
INSERT INTO import_column VALUES('m1','Best before','date');
INSERT INTO import_column VALUES('m1','Shelf; row','');
INSERT INTO import_column VALUES('m2','Best before','date');
INSERT INTO import_column VALUES('m2','Shelf; row','');
INSERT INTO import_column VALUES('m3','Best before','date');
INSERT INTO import_column VALUES('m3','Shelf; row','');
INSERT INTO import_column VALUES('m4','Best before','date');
INSERT INTO import_column VALUES('m4','Shelf; row','');
CREATE TABLE feed_kind (
  kind TEXT NOT NULL PRIMARY KEY CHECK (kind IN ('review', 'eat_soon', 'shop', 'give_away')),
  in_feed INTEGER NOT NULL CHECK (in_feed IN (0, 1)),
  alarm_days INTEGER CHECK (alarm_days BETWEEN 1 AND 30)  -- before the day; NULL: no alarm
) STRICT, WITHOUT ROWID;
INSERT INTO feed_kind VALUES('eat_soon',0,1);
INSERT INTO feed_kind VALUES('review',1,7);
CREATE TABLE feed_address (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  name TEXT NOT NULL CHECK (length(name) > 0),
  token_sha256 TEXT NOT NULL UNIQUE CHECK (length(token_sha256) = 64 AND token_sha256 NOT GLOB '*[^0-9a-f]*'),
  person TEXT REFERENCES person (key),  -- NULL: the whole household
  detail TEXT NOT NULL CHECK (detail IN ('full', 'private')),
  created_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%SZ', created_at, '+0 days') IS created_at),
  revoked_at TEXT CHECK (strftime('%Y-%m-%dT%H:%M:%SZ', revoked_at, '+0 days') IS revoked_at)
) STRICT;
INSERT INTO feed_address VALUES(1,'Mira''s phone','aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa','mira','full','2026-11-01T08:00:00Z','2026-11-20T08:00:00Z');
INSERT INTO feed_address VALUES(3,'the "hall"','000000000000000000000000000000000000000000000000000000000000cafe',NULL,'private','2026-11-20T08:00:01Z',NULL);
CREATE TABLE pushed_item (
  collection TEXT NOT NULL CHECK (length(collection) > 0),  -- address, without name or password
  uid TEXT NOT NULL CHECK (length(uid) > 0),
  href TEXT NOT NULL CHECK (length(href) > 0),
  etag TEXT NOT NULL,
  sent TEXT NOT NULL,
  PRIMARY KEY (collection, uid)
) STRICT, WITHOUT ROWID;
INSERT INTO pushed_item VALUES('https://cal.example/kit/','0b5c6a52-7d1e-5c36-9a57-3f1f2d1c8e44','/kit/a.ics','"1-2"',replace(replace('BEGIN:VCALENDAR\r\n','\r',char(13)),'\n',char(10)));
INSERT INTO pushed_item VALUES('https://cal.example/kit/','0b5c6a52-7d1e-5c36-9a57-3f1f2d1c8e45','/kit/b.ics','','');
CREATE TABLE task_done (
  uid TEXT NOT NULL PRIMARY KEY CHECK (length(uid) > 0),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  what TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO task_done VALUES('0b5c6a52-7d1e-5c36-9a57-3f1f2d1c8e46','2026-11-21','Bought €');
INSERT INTO task_done VALUES('0b5c6a52-7d1e-5c36-9a57-3f1f2d1c8e47','2026-11-20','');
CREATE VIEW stock AS
SELECT lot, place, opened_on, sum(half_servings) AS half_servings
FROM (
  SELECT id, lot, place, opened_on, half_servings FROM entry WHERE kind IN ('received', 'found')
  UNION ALL
  SELECT id, lot, place, opened_on, -half_servings FROM entry
  WHERE kind IN ('moved', 'eaten', 'given_away', 'thrown_out', 'lost')
  UNION ALL
  SELECT id, lot, to_place, opened_on, half_servings FROM entry WHERE kind = 'moved'
  UNION ALL
  SELECT id, lot, place, NULL, -half_servings FROM entry WHERE kind = 'opened'
  UNION ALL
  SELECT id, lot, place, day, half_servings FROM entry WHERE kind = 'opened'
  UNION ALL
  SELECT id, lot, place, opened_on, change_half_servings FROM entry WHERE kind = 'counted'
)
WHERE id NOT IN (SELECT corrects FROM entry WHERE corrects IS NOT NULL)
GROUP BY lot, place, opened_on
HAVING sum(half_servings) <> 0;
CREATE TRIGGER lot_grows BEFORE INSERT ON lot
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM lot)
BEGIN SELECT RAISE(ABORT, 'lots are numbered upwards'); END;
CREATE TRIGGER lot_stays BEFORE UPDATE ON lot
BEGIN SELECT RAISE(ABORT, 'a lot is never changed: add a reading'); END;
CREATE TRIGGER lot_is_kept BEFORE DELETE ON lot
BEGIN SELECT RAISE(ABORT, 'a lot is never deleted: add an entry'); END;
CREATE TRIGGER reading_grows BEFORE INSERT ON reading
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM reading)
BEGIN SELECT RAISE(ABORT, 'readings are numbered upwards'); END;
CREATE TRIGGER reading_stays BEFORE UPDATE ON reading
BEGIN SELECT RAISE(ABORT, 'a reading is never changed: add another'); END;
CREATE TRIGGER reading_is_kept BEFORE DELETE ON reading
BEGIN SELECT RAISE(ABORT, 'a reading is never deleted: add another'); END;
CREATE TRIGGER entry_grows BEFORE INSERT ON entry
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM entry)
BEGIN SELECT RAISE(ABORT, 'entries are numbered upwards'); END;
CREATE TRIGGER entry_stays BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never changed: add a correction'); END;
CREATE TRIGGER entry_is_kept BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never deleted: add a correction'); END;
CREATE TRIGGER review_event_grows BEFORE INSERT ON review_event
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM review_event)
BEGIN SELECT RAISE(ABORT, 'review events are numbered upwards'); END;
CREATE TRIGGER review_event_stays BEFORE UPDATE ON review_event
BEGIN SELECT RAISE(ABORT, 'a review event is never changed: add another'); END;
CREATE TRIGGER review_event_is_kept BEFORE DELETE ON review_event
BEGIN SELECT RAISE(ABORT, 'a review event is never deleted: add another'); END;
CREATE TRIGGER review_mark_grows BEFORE INSERT ON review_mark
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM review_mark)
BEGIN SELECT RAISE(ABORT, 'review marks are numbered upwards'); END;
CREATE TRIGGER review_mark_stays BEFORE UPDATE ON review_mark
BEGIN SELECT RAISE(ABORT, 'a review mark is never changed: add another'); END;
CREATE TRIGGER review_mark_is_kept BEFORE DELETE ON review_mark
BEGIN SELECT RAISE(ABORT, 'a review mark is never deleted: add another'); END;
CREATE TRIGGER statement_new BEFORE INSERT ON statement
WHEN EXISTS (SELECT 1 FROM statement WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'a statement is never replaced: add another'); END;
CREATE TRIGGER statement_stays BEFORE UPDATE ON statement
BEGIN SELECT RAISE(ABORT, 'a statement is never changed: add another'); END;
CREATE TRIGGER statement_is_kept BEFORE DELETE ON statement
WHEN EXISTS (SELECT 1 FROM lot WHERE label = OLD.id) OR EXISTS (SELECT 1 FROM reading WHERE label = OLD.id)
BEGIN SELECT RAISE(ABORT, 'the label of a lot is never deleted: add a reading'); END;
CREATE TRIGGER statement_allergen_new BEFORE INSERT ON statement_allergen
WHEN EXISTS (SELECT 1 FROM lot WHERE label = NEW.statement)
  OR EXISTS (SELECT 1 FROM reading WHERE label = NEW.statement)
BEGIN SELECT RAISE(ABORT, 'the label of a lot is never changed: add a reading'); END;
CREATE TRIGGER statement_allergen_stays BEFORE UPDATE ON statement_allergen
BEGIN SELECT RAISE(ABORT, 'a statement is never changed: add another'); END;
CREATE TRIGGER statement_allergen_is_kept BEFORE DELETE ON statement_allergen
WHEN EXISTS (SELECT 1 FROM lot WHERE label = OLD.statement)
  OR EXISTS (SELECT 1 FROM reading WHERE label = OLD.statement)
BEGIN SELECT RAISE(ABORT, 'the label of a lot is never changed: add a reading'); END;
CREATE TRIGGER statement_diet_new BEFORE INSERT ON statement_diet
WHEN EXISTS (SELECT 1 FROM lot WHERE label = NEW.statement)
  OR EXISTS (SELECT 1 FROM reading WHERE label = NEW.statement)
BEGIN SELECT RAISE(ABORT, 'the label of a lot is never changed: add a reading'); END;
CREATE TRIGGER statement_diet_stays BEFORE UPDATE ON statement_diet
BEGIN SELECT RAISE(ABORT, 'a statement is never changed: add another'); END;
CREATE TRIGGER statement_diet_is_kept BEFORE DELETE ON statement_diet
WHEN EXISTS (SELECT 1 FROM lot WHERE label = OLD.statement)
  OR EXISTS (SELECT 1 FROM reading WHERE label = OLD.statement)
BEGIN SELECT RAISE(ABORT, 'the label of a lot is never changed: add a reading'); END;
CREATE TRIGGER household_once BEFORE INSERT ON household
WHEN EXISTS (SELECT 1 FROM household)
BEGIN SELECT RAISE(ABORT, 'a book holds one household'); END;
CREATE TRIGGER household_identity BEFORE UPDATE OF id, book_id ON household
WHEN NEW.id IS NOT OLD.id OR NEW.book_id IS NOT OLD.book_id
BEGIN SELECT RAISE(ABORT, 'the identity of a book is never changed'); END;
CREATE TRIGGER household_is_kept BEFORE DELETE ON household
BEGIN SELECT RAISE(ABORT, 'a book holds one household'); END;
CREATE TRIGGER feed_stamp_identity BEFORE UPDATE OF key, generation ON feed_stamp
WHEN NEW.key IS NOT OLD.key OR NEW.generation IS NOT OLD.generation
BEGIN SELECT RAISE(ABORT, 'the identity of an event is never changed'); END;
CREATE TRIGGER feed_stamp_is_kept BEFORE DELETE ON feed_stamp
BEGIN SELECT RAISE(ABORT, 'the identity of an event is never forgotten'); END;
CREATE TRIGGER trial_grows BEFORE INSERT ON trial
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM trial)
BEGIN SELECT RAISE(ABORT, 'trials are numbered upwards'); END;
CREATE TRIGGER trial_stays BEFORE UPDATE ON trial
BEGIN SELECT RAISE(ABORT, 'a trial is never changed'); END;
CREATE TRIGGER trial_is_kept BEFORE DELETE ON trial
BEGIN SELECT RAISE(ABORT, 'a trial is never deleted'); END;
CREATE TRIGGER trial_person_stays BEFORE UPDATE ON trial_person
BEGIN SELECT RAISE(ABORT, 'a trial is never changed'); END;
CREATE TRIGGER trial_person_is_kept BEFORE DELETE ON trial_person
BEGIN SELECT RAISE(ABORT, 'a trial is never changed'); END;
CREATE TRIGGER trial_note_grows BEFORE INSERT ON trial_note
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM trial_note)
BEGIN SELECT RAISE(ABORT, 'notes of trials are numbered upwards'); END;
CREATE TRIGGER trial_note_stays BEFORE UPDATE ON trial_note
BEGIN SELECT RAISE(ABORT, 'a note of a trial is never changed: add another'); END;
CREATE TRIGGER trial_note_is_kept BEFORE DELETE ON trial_note
BEGIN SELECT RAISE(ABORT, 'a note of a trial is never deleted: add another'); END;
CREATE TRIGGER trial_end_once BEFORE INSERT ON trial_end
WHEN EXISTS (SELECT 1 FROM trial_end WHERE trial = NEW.trial)
BEGIN SELECT RAISE(ABORT, 'a trial ends once'); END;
CREATE TRIGGER trial_end_stays BEFORE UPDATE ON trial_end
BEGIN SELECT RAISE(ABORT, 'the end of a trial is never changed'); END;
CREATE TRIGGER trial_end_is_kept BEFORE DELETE ON trial_end
BEGIN SELECT RAISE(ABORT, 'the end of a trial is never deleted'); END;
CREATE TRIGGER buy_note_grows BEFORE INSERT ON buy_note
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM buy_note)
BEGIN SELECT RAISE(ABORT, 'notes of shopping are numbered upwards'); END;
CREATE TRIGGER buy_note_stays BEFORE UPDATE ON buy_note
BEGIN SELECT RAISE(ABORT, 'a note of shopping is never changed: add another'); END;
CREATE TRIGGER buy_note_is_kept BEFORE DELETE ON buy_note
BEGIN SELECT RAISE(ABORT, 'a note of shopping is never deleted: add another'); END;
CREATE TRIGGER feed_address_is_kept BEFORE DELETE ON feed_address
BEGIN SELECT RAISE(ABORT, 'an address is revoked, never forgotten'); END;
CREATE TRIGGER feed_address_identity BEFORE UPDATE OF id, token_sha256 ON feed_address
WHEN NEW.id IS NOT OLD.id OR NEW.token_sha256 IS NOT OLD.token_sha256
BEGIN SELECT RAISE(ABORT, 'the address itself is never changed'); END;
CREATE TRIGGER feed_address_stays_revoked BEFORE UPDATE OF revoked_at ON feed_address
WHEN OLD.revoked_at IS NOT NULL AND NEW.revoked_at IS NOT OLD.revoked_at
BEGIN SELECT RAISE(ABORT, 'a revoked address stays revoked'); END;
CREATE TRIGGER task_done_is_kept BEFORE DELETE ON task_done
BEGIN SELECT RAISE(ABORT, 'what was done is never forgotten'); END;
CREATE TRIGGER task_done_is_fixed BEFORE UPDATE ON task_done
BEGIN SELECT RAISE(ABORT, 'what was done is never changed'); END;
COMMIT;
PRAGMA application_id = 1280074347;
PRAGMA user_version = 7;
