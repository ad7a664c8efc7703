// Trials of a kit, read and written.
#include "intake/names.h"
#include "intake/read_sections.h"
#include "intake/write_sections.h"

namespace larderloop::intake {

Trial read_trial(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a trial");
  Trial out;
  in.id("id", out.id);
  in.key("kit", out.kit);
  in.day("from", out.from);
  in.day("through", out.through);
  in.keys("people", out.people);
  in.text("note", out.note);
  in.finish();
  return out;
}

TrialNote read_trial_note(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a note of a trial");
  TrialNote out;
  in.id("id", out.id);
  in.id("trial", out.trial);
  in.key("food", out.food);
  in.key("person", out.person);
  in.one_of("verdict", out.verdict, verdict_names(), Need::kRequired);
  in.day("on", out.on);
  in.text("note", out.note);
  in.finish();
  return out;
}

TrialEnd read_trial_end(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "the end of a trial");
  TrialEnd out;
  in.id("trial", out.trial);
  in.day("on", out.on);
  in.text("note", out.note);
  in.finish();
  return out;
}

JsonNode trial_node(const Trial& trial) {
  ObjectWriter out;
  out.add("id", trial.id)
      .add("kit", trial.kit)
      .add("from", trial.from)
      .add("through", trial.through)
      .keys("people", trial.people)
      .text("note", trial.note);
  return out.done();
}

JsonNode trial_note_node(const TrialNote& note) {
  ObjectWriter out;
  out.add("id", note.id)
      .add("trial", note.trial)
      .add("food", note.food)
      .add("person", note.person)
      .add("verdict", std::string_view(name_of(note.verdict, verdict_names())))
      .add("on", note.on)
      .text("note", note.note);
  return out.done();
}

JsonNode trial_end_node(const TrialEnd& end) {
  ObjectWriter out;
  out.add("trial", end.trial).add("on", end.on).text("note", end.note);
  return out.done();
}

}  // namespace larderloop::intake
