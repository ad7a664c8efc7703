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

function readFeed(file, from, through) {
  const text = fs.readFileSync(file, "utf8");
  const component = new ICAL.Component(ICAL.parse(text));
  const icaljs = [];
  for (const each of component.getAllSubcomponents("vevent")) {
    const event = new ICAL.Event(each);
    const start = event.startDate;
    if (!start.isDate) throw new Error(`${event.uid}: not a whole day`);
    const day = `${start.year}${two(start.month)}${two(start.day)}`;
    if (day >= from && day <= through) {
      icaljs.push({ uid: event.uid, day, summary: event.summary, days: event.duration.toSeconds() / 86400, alarms: each.getAllSubcomponents("valarm").length });
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
    const day = localDay(event.start);
    if (day >= from && day <= through) node.push({ uid: event.uid, day, summary: event.summary, days: Math.round((event.end - event.start) / 86400000) });
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
