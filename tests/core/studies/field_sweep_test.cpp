// Sweeps of any field and maps of two: against evaluate with the field set by hand (own).
#include <cmath>

#include <gtest/gtest.h>

#include "core/studies/field_sweep.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

TEST(SweepRange, StepsAndCounts) {
  const Project project = exampleProject(100);
  const auto steps = readSweepAxis(project, "load.payloadMass", "1 kg..2 kg:250 g");
  ASSERT_TRUE(steps) << describe(steps.error());
  EXPECT_EQ(steps->value.size(), 5U);
  EXPECT_DOUBLE_EQ(steps->value[1], 1.25);
  EXPECT_DOUBLE_EQ(steps->value.back(), 2);
  const auto counted = readSweepAxis(project, "transmission[1].ratio", "40..160/4");
  ASSERT_TRUE(counted);
  EXPECT_EQ(counted->value, (std::vector<double>{40, 80, 120, 160}));
  const auto warm = readSweepAxis(project, "requirements.ambient", "20..40 degC:10");
  ASSERT_TRUE(warm) << describe(warm.error());
  EXPECT_EQ(warm->value, (std::vector<double>{20, 30, 40}));
  const auto whole = readSweepAxis(project, "motor.polePairs", "4..8:2");
  ASSERT_TRUE(whole) << describe(whole.error());
  EXPECT_EQ(whole->value, (std::vector<double>{4, 6, 8}));
}

TEST(SweepRange, RefusesWithAReason) {
  const Project project = exampleProject(100);
  const char* const bad[][2] = {{"load.payloadMass", "1..2"},
                                {"load.payloadMass", "2..1:0.1"},
                                {"load.payloadMass", "1..2:0"},
                                {"load.payloadMass", "1..2/1"},
                                {"load.payloadMass", "1..2/2.5"},
                                {"load.payloadMass", "1..2:1e-9"},
                                {"load.payloadMass", "1 J..2 J/3"},
                                {"load.payloadMass", "-1..2/3"},
                                {"motor.polePairs", "1..2/3"},
                                {"variant.name", "1..2/3"},
                                {"motor.kind", "0..1/2"},
                                {"motor.nothing", "1..2/3"},
                                {"load.payloadMass", "1..2:250 mm"},
                                {"load.payloadMass", ""}};
  for (const auto& [path, range] : bad) {
    const auto axis = readSweepAxis(project, path, range);
    ASSERT_FALSE(axis) << path << ' ' << range;
    EXPECT_FALSE(axis.error().what.empty());
    EXPECT_FALSE(axis.error().where.empty());
    EXPECT_FALSE(axis.error().remedy.empty());
  }
}

TEST(FieldSweep, EveryPointIsTheFullEvaluation) {
  const Project project = exampleProject(100);
  const auto axis = readSweepAxis(project, "load.payloadMass", "1..9/9");
  ASSERT_TRUE(axis);
  const FieldSweep sweep = fieldSweep(project, *axis);
  for (std::size_t k = 0; k < axis->value.size(); ++k) {
    Project changed = project;
    changed.load.payloadMass = axis->value[k];
    const DesignPoint point = designPoint(evaluate(changed));
    EXPECT_EQ(sweep.points[k].worst, point.worst);
    EXPECT_EQ(sweep.quantities[0].value[k], point.quantities[0]);
  }
}

TEST(FieldMap, CellsAndEdge) {
  const Project project = exampleProject(100);
  const auto across = readSweepAxis(project, "load.payloadMass", "1..15/8");
  const auto up = readSweepAxis(project, "transmission[1].ratio", "40..160/7");
  ASSERT_TRUE(across && up);
  const FieldMap map = fieldMap(project, *across, *up);
  for (Eigen::Index row = 0; row < 7; ++row) {
    for (Eigen::Index column = 0; column < 8; ++column) {
      Project changed = project;
      changed.load.payloadMass = across->value[static_cast<std::size_t>(column)];
      changed.active().transmission[1].ratio = up->value[static_cast<std::size_t>(row)];
      const DesignPoint point = designPoint(evaluate(changed));
      EXPECT_EQ(map.worst(row, column), point.worst);
      const auto& name = map.checks[static_cast<std::size_t>(map.worstAt(row, column))];
      EXPECT_TRUE(point.margins[static_cast<std::size_t>(point.worstAt)].is(name.id, name.stage));
    }
  }
  EXPECT_FALSE(map.edge.empty());
}

}  // namespace
}  // namespace jw
