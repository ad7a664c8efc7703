// Reads a calendar with ical.js and node-ical and rules with rrule; prints one JSON document. Used by tests/e2e/clients_js.py.
// usage: node read.mjs feed FILE FROM THROUGH   every occurrence on days FROM..THROUGH (YYYYMMDD), as each library sees it
//        node read.mjs rules FILE               FILE: JSON list of {start, rule, count}; the first dates of each rule
import fs from "node:fs";
import ICAL from "ical.js";
import nodeIcal from "node-ical";
import rrulePackage from "rrule";

const { RRule } = rrulePackage;
const two = (n) => String(n).padStart(2, "0");
// node-ical and rrule hand out Date objects: of a whole day in local time, and in UTC.
const localDay = (d) => `${d.getFullYear()}${two(d.getMonth() + 1)}${two(d.getDate())}`;
const utcDay = (d) => `${d.getUTCFullYear()}${two(d.getUTCMonth() + 1)}${two(d.getUTCDate())}`;
const bySort = (list) => list.sort((a, b) => (a.day + a.uid < b.day + b.uid ? -1 : 1));

const textDay = (time) => `${time.year}${two(time.month)}${two(time.day)}`;

// Every day of an event that repeats, as ical.js works it out: the rule, without its exceptions, with what is moved.
function* daysOfIcalJs(master, moved, through) {
  const event = new ICAL.Event(master, { exceptions: moved });
  if (!event.isRecurring()) {
    yield { day: textDay(event.startDate), item: event };
    return;
  }
  const each = event.iterator();
  for (let next = each.next(); next && textDay(next) <= through; next = each.next()) {
    const details = event.getOccurrenceDetails(next);
    yield { day: textDay(details.startDate), item: details.item };
  }
}

// The same by node-ical, whose rules are rrule's; a day of a rule is a local midnight there, one that is left out or moved has its day as a name.
function* daysOfNodeIcal(event, through) {
  if (!event.rrule) {
    yield { day: localDay(event.start), item: event };
    return;
  }
  const named = (days) => new Map(Object.entries(days ?? {}).map(([day, value]) => [day.slice(0, 10).replaceAll("-", ""), value]));
  const [gone, moved] = [named(event.exdate), named(event.recurrences)];
  // Some days more on both sides, because a moment is another day elsewhere.
  for (const moment of event.rrule.between(new Date(event.start.getTime() - 2 * 86400000), new Date(Date.UTC(+through.slice(0, 4), +through.slice(4, 6), 1)), true)) {
    const day = localDay(moment);
    if (gone.has(day)) continue;
    const item = moved.get(day) ?? event;
    yield { day: moved.has(day) ? localDay(item.start) : day, item };
  }
}

function readFeed(file, from, through) {
  const text = fs.readFileSync(file, "utf8");
  const component = new ICAL.Component(ICAL.parse(text));
  const icaljs = [];
  const all = component.getAllSubcomponents("vevent");
  for (const master of all.filter((each) => !each.hasProperty("recurrence-id"))) {
    const moved = all.filter((each) => each.hasProperty("recurrence-id") && each.getFirstPropertyValue("uid") === master.getFirstPropertyValue("uid"));
    for (const { day, item } of daysOfIcalJs(master, moved, through)) {
      if (!item.startDate.isDate) throw new Error(`${item.uid}: not a whole day`);
      if (day >= from && day <= through) {
        icaljs.push({ uid: item.uid, day, summary: item.summary, days: item.duration.toSeconds() / 86400, alarms: item.component.getAllSubcomponents("valarm").length });
      }
    }
  }
  const todos = component.getAllSubcomponents("vtodo").map((each) => ({
    uid: each.getFirstPropertyValue("uid"), day: each.getFirstPropertyValue("due").toString().replaceAll("-", ""), summary: each.getFirstPropertyValue("summary"),
    status: each.getFirstPropertyValue("status"), related: each.getFirstPropertyValue("related-to"),
  }));
  const node = [];
  for (const event of Object.values(nodeIcal.sync.parseICS(text))) {
    if (event.type !== "VEVENT") continue;
    if (event.datetype !== "date") throw new Error(`${event.uid}: not a whole day`);
    for (const { day, item } of daysOfNodeIcal(event, through)) {
      if (day >= from && day <= through) node.push({ uid: event.uid, day, summary: item.summary, days: Math.round((item.end - item.start) / 86400000) });
    }
  }
  return { icaljs: bySort(icaljs), nodeical: bySort(node), todos: bySort(todos) };
}

function readRules(file) {
  return JSON.parse(fs.readFileSync(file, "utf8")).map(({ start, rule, count }) => {
    const options = RRule.parseString(rule);
    options.dtstart = new Date(Date.UTC(+start.slice(0, 4), +start.slice(4, 6) - 1, +start.slice(6, 8)));
    const dates = [];
    new RRule(options).all((date, index) => {
      if (index < count) dates.push(utcDay(date));
      return index + 1 < count;
    });
    return dates;
  });
}

const [what, file, from, through] = process.argv.slice(2);
process.stdout.write(JSON.stringify(what === "feed" ? readFeed(file, from, through) : readRules(file)));
