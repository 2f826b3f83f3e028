// Realizable ratios against lists made by brute force, and adopted into a stage.
#include <algorithm>
#include <cmath>
#include <map>

#include <gtest/gtest.h>

#include "core/model/field_catalogue.h"
#include "core/model/project.h"
#include "core/physics/belt_drive.h"
#include "core/physics/gear_pair.h"
#include "core/physics/planetary_gear.h"
#include "core/physics/strain_wave.h"
#include "core/physics/traction_rollers.h"
#include "core/studies/realizable_ratios.h"
#include "tests/core/physics/conditions_support.h"

namespace jw {
namespace {

/// A stage with the edits typed into its fields.
Stage adopted(StageFamily family, const RealizableRatio& one) {
  Project project;
  project.active().transmission.resize(1);
  project.active().transmission[0].family = family;
  project.active().transmission[0].ratio = 123;
  for (const FieldRef& field : allFields(project)) {
    for (const StageEdit& edit : one.edits) {
      if (field.info->key != edit.key || field.owner != &project.active().transmission[0]) continue;
      const auto set = setField(project, field.path, edit.text);
      EXPECT_TRUE(set.has_value()) << (set ? "" : describe(set.error()));
    }
  }
  return project.active().transmission[0];
}

std::optional<double> ratioOf(const Stage& stage) {
  switch (stage.family) {
    case StageFamily::Planetary: return planetaryRatio(stage.planetary);
    case StageFamily::StrainWave: return strainWaveRatio(stage.strainWave);
    case StageFamily::Traction: return tractionRatio(stage.traction);
    case StageFamily::Belt: return beltRatio(stage.belt);
    case StageFamily::ParallelShaft: return gearPairRatio(stage.gearPair);
    // i = z_l/(z_p - z_l) with the pins held, z_p/(z_p - z_l) with the output pins held.
    case StageFamily::Cycloidal:
      return (stage.cycloid.held == CycloidHeld::Pins ? stage.cycloid.lobes : stage.cycloid.pins) /
             (stage.cycloid.pins - stage.cycloid.lobes);
    default: return std::nullopt;
  }
}

constexpr StageFamily kFamilies[] = {StageFamily::Planetary,  StageFamily::Cycloidal,
                                     StageFamily::StrainWave, StageFamily::Traction,
                                     StageFamily::Belt,       StageFamily::ParallelShaft};

TEST(RealizableRatios, AdoptedStageHasTheRatioThatWasPromised) {
  for (const StageFamily family : kFamilies) {
    for (const double wanted : {0.7, 3.3, 7.0, 41.7, 101.0, 733.0}) {
      const auto all = realizableRatios(family, wanted, {}, 12);
      ASSERT_EQ(all.size(), 12U) << static_cast<int>(family) << " " << wanted;
      for (const RealizableRatio& one : all) {
        const Stage stage = adopted(family, one);
        EXPECT_FALSE(isSet(stage.ratio));
        ASSERT_TRUE(ratioOf(stage));
        EXPECT_NEAR(*ratioOf(stage), one.ratio, 1e-12 * one.ratio);
        EXPECT_NEAR(one.error, one.ratio / wanted - 1, 1e-15);
      }
    }
  }
}

TEST(RealizableRatios, EveryOneSatisfiesTheConditions) {
  for (const double wanted : {4.0, 7.3, 25.0, 110.0, 1000.0}) {
    for (const auto& one : realizableRatios(StageFamily::Planetary, wanted, {}, 50)) {
      EXPECT_TRUE(allHold(
          planetaryConditions(adopted(StageFamily::Planetary, one).planetary, {}, {}, kUnset)));
    }
    for (const auto& one : realizableRatios(StageFamily::StrainWave, wanted, {}, 50)) {
      EXPECT_TRUE(allHold(strainWaveConditions(adopted(StageFamily::StrainWave, one).strainWave)));
    }
    for (const auto& one : realizableRatios(StageFamily::Traction, wanted, {}, 50)) {
      EXPECT_TRUE(allHold(tractionConditions(adopted(StageFamily::Traction, one).traction, {})));
    }
    for (const auto& one : realizableRatios(StageFamily::ParallelShaft, wanted, {}, 50)) {
      EXPECT_TRUE(allHold(
          gearPairConditions(adopted(StageFamily::ParallelShaft, one).gearPair, {}, {}, kUnset)));
    }
  }
}

TEST(RealizableRatios, BestFirstThenSmallest) {
  for (const StageFamily family : kFamilies) {
    const auto all = realizableRatios(family, 12.34, {}, 40);
    for (std::size_t k = 1; k < all.size(); ++k) {
      const double before = std::abs(all[k - 1].error), now = std::abs(all[k].error);
      EXPECT_TRUE(before < now || (now <= 1e-9 && all[k - 1].size <= all[k].size) ||
                  (before == now && all[k - 1].size <= all[k].size));
    }
  }
}

/// Ratios of one set that can be built, and the fewest teeth for each; own, brute force over all
/// counts with the conditions written out anew.
std::map<double, int> setsByBruteForce(int least, int most) {
  std::map<double, int> all;
  for (int sun = least; sun <= most; ++sun) {
    for (int planet = least; sun + 2 * planet <= most; ++planet) {
      const int ring = sun + 2 * planet;
      for (int n = 3; n <= 5; ++n) {
        if ((sun + ring) % n != 0) continue;
        if ((sun + planet) * std::sin(std::acos(-1.0) / n) < planet + 2) continue;
        const double ratio = 1 + static_cast<double>(ring) / sun;
        const int teeth = sun + ring + n * planet;
        const auto found = all.emplace(ratio, teeth).first;
        found->second = std::min(found->second, teeth);
        break;
      }
    }
  }
  return all;
}

/// The errors of the `most` nearest of these ratios, in rising order.
std::vector<double> nearestErrors(const std::vector<double>& ratios, double wanted,
                                  std::size_t most) {
  std::vector<double> distinct = ratios, errors;
  std::sort(distinct.begin(), distinct.end());
  for (std::size_t k = 0; k < distinct.size(); ++k) {
    if (k > 0 && distinct[k] - distinct[k - 1] < 1e-12 * distinct[k]) continue;
    errors.push_back(std::abs(distinct[k] / wanted - 1));
  }
  std::sort(errors.begin(), errors.end());
  errors.resize(std::min(errors.size(), most));
  return errors;
}

void expectSame(const std::vector<RealizableRatio>& found, const std::vector<double>& expected) {
  ASSERT_EQ(found.size(), expected.size());
  for (std::size_t k = 0; k < found.size(); ++k) {
    EXPECT_NEAR(std::abs(found[k].error), expected[k], 1e-9 + 1e-12) << k;
  }
}

TEST(RealizableRatios, PlanetSetsAsByBruteForce) {
  SizeLimits limits;
  limits.mostTeeth = 84;  // few enough for three nested loops
  std::vector<double> one, two, three;
  const auto sets = setsByBruteForce(18, 84);
  for (const auto& [i, unused] : sets) {
    one.push_back(i);
    for (const auto& [j, unusedToo] : sets) {
      if (j < i) continue;
      two.push_back(i * j);
      for (const auto& [k, unusedAsWell] : sets) {
        if (k >= j) three.push_back(i * j * k);
      }
    }
  }
  for (const auto& [count, ratios, wanted] :
       {std::tuple{1, &one, 3.7}, {2, &two, 13.1}, {3, &three, 47.123}, {3, &three, 900.0}}) {
    limits.leastSets = limits.mostSets = count;
    expectSame(realizableRatios(StageFamily::Planetary, wanted, limits, 25),
               nearestErrors(*ratios, wanted, 25));
  }
}

TEST(RealizableRatios, FewestTeethForARatio) {
  SizeLimits limits;
  limits.mostSets = 1;
  const auto sets = setsByBruteForce(18, 150);
  for (const auto& one : realizableRatios(StageFamily::Planetary, 4, limits, 30)) {
    EXPECT_EQ(one.size, sets.at(one.ratio)) << one.ratio;
  }
}

TEST(RealizableRatios, PairsAndRollersAsByBruteForce) {
  std::vector<double> pairs, rollers;
  for (int a = 18; a <= 150; ++a) {
    for (int b = 18; b <= 150; ++b) pairs.push_back(static_cast<double>(b) / a);
  }
  expectSame(realizableRatios(StageFamily::ParallelShaft, 3.14159, {}, 60),
             nearestErrors(pairs, 3.14159, 60));
  for (int sun = 20; sun <= 300; ++sun) {  // half millimetres, three rollers of (ring - sun)/2
    for (int ring = sun + 1; ring <= 300; ++ring) {
      const double roller = (ring - sun) / 2.0;
      if (roller <= (sun + roller) * std::sin(std::acos(-1.0) / 3)) {
        rollers.push_back(1 + static_cast<double>(ring) / sun);
      }
    }
  }
  expectSame(realizableRatios(StageFamily::Traction, 5.4321, {}, 60),
             nearestErrors(rollers, 5.4321, 60));
}

// Own arithmetic: 29 has 30 pins with them held or 29 with the output pins held; 50 has splines of
// 100 and 102 or 98 and 100 teeth.
TEST(RealizableRatios, BothPartsHeld) {
  const auto pins = realizableRatios(StageFamily::Cycloidal, 29, {}, 2);
  EXPECT_EQ(pins[0].ratio, 29);
  EXPECT_EQ(pins[1].ratio, 29);
  EXPECT_EQ(adopted(StageFamily::Cycloidal, pins[0]).cycloid.held, CycloidHeld::OutputPins);
  EXPECT_EQ(adopted(StageFamily::Cycloidal, pins[0]).cycloid.pins, 29);
  EXPECT_EQ(adopted(StageFamily::Cycloidal, pins[1]).cycloid.lobes, 29);
  const auto splines = realizableRatios(StageFamily::StrainWave, 50, {}, 2);
  EXPECT_EQ(adopted(StageFamily::StrainWave, splines[0]).strainWave.flexTeeth, 98);
  EXPECT_EQ(adopted(StageFamily::StrainWave, splines[1]).strainWave.flexTeeth, 100);
}

// Module 1 mm in 100 mm: ring up to 92 teeth, wheel up to 98; belt pitch 5 mm: 62 teeth on 98.7 mm.
TEST(RealizableRatios, OutsideDiameterLimitsTeeth) {
  SizeLimits limits;
  limits.outsideDiameter = 0.1;
  limits.module = 1e-3;
  limits.beltPitch = 5e-3;
  const auto largest = [&](StageFamily family, double wanted, auto teeth) {
    double most = 0;
    for (const auto& one : realizableRatios(family, wanted, limits, 4000)) {
      most = std::max(most, teeth(adopted(family, one)));
    }
    return most;
  };
  EXPECT_LE(largest(StageFamily::Planetary, 4,
                    [](const Stage& s) { return s.planetary.first.ringTeeth; }),
            92);
  EXPECT_EQ(
      largest(StageFamily::ParallelShaft, 5, [](const Stage& s) { return s.gearPair.gearTeeth; }),
      98);
  EXPECT_EQ(largest(StageFamily::Belt, 5, [](const Stage& s) { return s.belt.jointPulleyTeeth; }),
            62);
  EXPECT_NEAR(
      largest(StageFamily::Traction, 5, [](const Stage& s) { return s.traction.ringDiameter; }),
      0.1, 1e-12);
}

TEST(RealizableRatios, NothingForNonsense) {
  EXPECT_TRUE(realizableRatios(StageFamily::Planetary, kUnset, {}, 10).empty());
  EXPECT_TRUE(realizableRatios(StageFamily::Planetary, -3, {}, 10).empty());
  EXPECT_TRUE(realizableRatios(StageFamily::Planetary, 5, {}, 0).empty());
  EXPECT_TRUE(realizableRatios(StageFamily::Coupling, 1, {}, 10).empty());
  EXPECT_TRUE(realizableRatios(StageFamily::GivenRatio, 5, {}, 10).empty());
  SizeLimits tight;
  tight.mostTeeth = 20;
  EXPECT_TRUE(realizableRatios(StageFamily::Planetary, 5, tight, 10).empty());
}

}  // namespace
}  // namespace jw
