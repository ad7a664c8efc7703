// Integer programs as text. The layouts are those of the CPLEX LP format and of free MPS as the
// manuals of GLPK (reference manual, appendices "MPS format" and "CPLEX LP format") and of IBM
// CPLEX describe them; cbc 2.10.8 and glpsol 5.0 read both.
#include "plan/write_model.h"

#include <gtest/gtest.h>

namespace larderloop::plan {
namespace {

// 1 <= x + y <= 3, 2 x - y >= -4, x = y + r; first x + 5 is least, then -y.
Mip small() {
  Mip mip;
  mip.add_column("x", 0, 4);
  mip.add_column("y", -1, 2);
  mip.add_column("r", 0, MipRow::kNone);
  mip.columns.back().continuous = true;
  mip.add_column("unused", 0, 1);
  mip.add_row("sum", 1, 3, {{0, 1}, {1, 1}});
  mip.add_row("least", -4, MipRow::kNone, {{0, 2}, {1, -1}});
  mip.add_row("same", 0, 0, {{0, 1}, {1, -1}, {2, -1}});
  mip.levels = {{"first", 5, {{0, 1}}}, {"second", 0, {{1, -1}}}};
  return mip;
}

TEST(WriteModel, AsLp) {
  EXPECT_EQ(write_model(small(), 1, {6}, ModelFormat::kLp),
            "\\ level second\n"
            "Minimize\n"
            " goal: - 1 y + 0 constant\n"
            "Subject To\n"
            " one: constant = 1\n"
            " sum_least: + 1 x + 1 y >= 1\n"
            " sum_most: + 1 x + 1 y <= 3\n"
            " least: + 2 x - 1 y >= -4\n"
            " same: + 1 x - 1 y - 1 r = 0\n"
            " level_first: + 1 x <= 1\n"
            "Bounds\n"
            " constant = 1\n"
            " 0 <= x <= 4\n"
            " -1 <= y <= 2\n"
            " r >= 0\n"
            " 0 <= unused <= 1\n"
            "Generals\n"
            " x\n"
            " y\n"
            " unused\n"
            "End\n");
}

TEST(WriteModel, AsMps) {
  EXPECT_EQ(write_model(small(), 0, {}, ModelFormat::kMps),
            "NAME first\n"
            "ROWS\n"
            " N goal\n"
            " E one\n"
            " G sum_least\n"
            " L sum_most\n"
            " G least\n"
            " E same\n"
            "COLUMNS\n"
            " constant goal 5\n"
            " constant one 1\n"
            " MARK1 'MARKER' 'INTORG'\n"
            " x goal 1\n"
            " x sum_least 1\n"
            " x sum_most 1\n"
            " x least 2\n"
            " x same 1\n"
            " y sum_least 1\n"
            " y sum_most 1\n"
            " y least -1\n"
            " y same -1\n"
            " MARK2 'MARKER' 'INTEND'\n"
            " r same -1\n"
            " MARK3 'MARKER' 'INTORG'\n"
            " unused goal 0\n"
            " MARK4 'MARKER' 'INTEND'\n"
            "RHS\n"
            " RHS one 1\n"
            " RHS sum_least 1\n"
            " RHS sum_most 3\n"
            " RHS least -4\n"
            "BOUNDS\n"
            " FX BND constant 1\n"
            " LO BND x 0\n"
            " UP BND x 4\n"
            " LO BND y -1\n"
            " UP BND y 2\n"
            " LO BND r 0\n"
            " PL BND r\n"
            " LO BND unused 0\n"
            " UP BND unused 1\n"
            "ENDATA\n");
}

}  // namespace
}  // namespace larderloop::plan
