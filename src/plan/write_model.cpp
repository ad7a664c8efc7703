#include "plan/write_model.h"

#include <utility>

namespace larderloop::plan {
namespace {

constexpr std::int64_t kNone = MipRow::kNone;

// A row with one side: 'L' at most, 'G' at least, 'E' exactly.
struct Line {
  std::string name;
  char sense;
  std::int64_t side;
  const std::vector<MipTerm>* terms;
};

// Everything but the layout, which is the same for both formats.
struct Program {
  const Mip& mip;
  std::size_t level;
  std::vector<Line> lines;

  Program(const Mip& of, std::size_t at, const std::vector<std::int64_t>& values)
      : mip(of), level(at) {
    for (const MipRow& row : mip.rows) {
      if (row.lower == row.upper && row.lower != kNone) {
        lines.push_back({row.name, 'E', row.lower, &row.terms});
        continue;
      }
      const bool both = row.lower != kNone && row.upper != kNone;
      if (row.lower != kNone)
        lines.push_back({row.name + (both ? "_least" : ""), 'G', row.lower, &row.terms});
      if (row.upper != kNone)
        lines.push_back({row.name + (both ? "_most" : ""), 'L', row.upper, &row.terms});
    }
    for (std::size_t before = 0; before < level; ++before) {
      const MipLevel& held = mip.levels[before];
      if (!held.terms.empty())
        lines.push_back({"level_" + held.name, 'L', values[before] - held.constant, &held.terms});
    }
  }
};

std::string text(std::int64_t number) {
  return std::to_string(number);
}

class LpWriter {
 public:
  explicit LpWriter(const Program& program) : p_(program) {}

  std::string write() {
    const MipLevel& level = p_.mip.levels[p_.level];
    out_ += "\\ level " + level.name + "\nMinimize\n goal:";
    for (const MipTerm& term : level.terms) add(term.factor, column(term));
    add(level.constant, "constant");
    out_ += "\nSubject To\n one: constant = 1";
    for (const Line& line : p_.lines) {
      out_ += "\n " + line.name + ":";
      written_ = 0;
      for (const MipTerm& term : *line.terms) add(term.factor, column(term));
      if (line.terms->empty()) add(0, "constant");
      out_ += line.sense == 'L' ? " <= " : (line.sense == 'G' ? " >= " : " = ");
      out_ += text(line.side);
    }
    out_ += "\nBounds\n constant = 1\n";
    std::string whole;
    for (const MipColumn& each : p_.mip.columns) {
      out_ += each.upper == kNone
                  ? " " + each.name + " >= " + text(each.lower)
                  : " " + text(each.lower) + " <= " + each.name + " <= " + text(each.upper);
      out_ += "\n";
      if (!each.continuous) whole += " " + each.name + "\n";
    }
    if (!whole.empty()) out_ += "Generals\n" + whole;
    return std::move(out_) + "End\n";
  }

 private:
  [[nodiscard]] const std::string& column(const MipTerm& term) const {
    return p_.mip.columns[static_cast<std::size_t>(term.column)].name;
  }
  void add(std::int64_t factor, const std::string& name) {
    if (written_++ > 0 && written_ % 4 == 1) out_ += "\n ";
    out_ += factor < 0 ? " - " : " + ";
    out_ += (factor < 0 ? text(factor).substr(1) : text(factor)) + " " + name;
  }

  const Program& p_;
  std::string out_;
  int written_ = 0;  // terms in this row: a line takes four
};

class MpsWriter {
 public:
  explicit MpsWriter(const Program& program) : p_(program) {}

  std::string write() {
    const MipLevel& level = p_.mip.levels[p_.level];
    std::vector<std::string> entries(p_.mip.columns.size());
    const auto add = [&](const MipTerm& term, const std::string& row) {
      const auto at = static_cast<std::size_t>(term.column);
      entries[at] += " " + p_.mip.columns[at].name + " " + row + " " + text(term.factor) + "\n";
    };
    for (const MipTerm& term : level.terms) add(term, "goal");
    out_ = "NAME " + level.name + "\nROWS\n N goal\n E one\n";
    std::string sides = " RHS one 1\n";
    for (const Line& line : p_.lines) {
      out_ += std::string(" ") + line.sense + " " + line.name + "\n";
      for (const MipTerm& term : *line.terms) add(term, line.name);
      if (line.side != 0) sides += " RHS " + line.name + " " + text(line.side) + "\n";
    }
    out_ += "COLUMNS\n constant goal " + text(level.constant) + "\n constant one 1\n";
    bool whole = false;
    std::string bounds;
    for (std::size_t at = 0; at < entries.size(); ++at) {
      const MipColumn& column = p_.mip.columns[at];
      if (column.continuous == whole) marker(whole = !whole);
      out_ += entries[at].empty() ? " " + column.name + " goal 0\n" : entries[at];
      bounds += " LO BND " + column.name + " " + text(column.lower) + "\n";
      bounds += column.upper == kNone ? " PL BND " + column.name + "\n"
                                      : " UP BND " + column.name + " " + text(column.upper) + "\n";
    }
    if (whole) marker(false);
    out_ += "RHS\n" + sides + "BOUNDS\n FX BND constant 1\n" + bounds + "ENDATA\n";
    return std::move(out_);
  }

 private:
  // Columns between two markers are whole numbers.
  void marker(bool begins) {
    out_ += " MARK" + text(++markers_) + " 'MARKER' " + (begins ? "'INTORG'" : "'INTEND'") + "\n";
  }

  const Program& p_;
  std::string out_;
  int markers_ = 0;
};

}  // namespace

std::string write_model(const Mip& mip, std::size_t level, const std::vector<std::int64_t>& values,
                        ModelFormat format) {
  const Program program(mip, level, values);
  return format == ModelFormat::kLp ? LpWriter(program).write() : MpsWriter(program).write();
}

}  // namespace larderloop::plan
