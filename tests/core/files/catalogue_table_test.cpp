// Catalogues as text: reading, messages, and the bundled ones against the rules they follow (own).
#include <cstdlib>
#include <fstream>
#include <set>
#include <sstream>

#include <gtest/gtest.h>

#include "core/files/catalogue_table.h"
#include "core/studies/invented_catalogue.h"

namespace jw {
namespace {

std::string bundled(const char* name) {
  std::ifstream in(std::string(JW_TESTS_DIR) + "/../resources/catalogues/" + name);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

/// With JW_WRITE_CATALOGUES set the bundled file is written anew instead.
void expectBundled(const char* name, const std::string& text) {
  if (std::getenv("JW_WRITE_CATALOGUES") != nullptr) {
    std::ofstream(std::string(JW_TESTS_DIR) + "/../resources/catalogues/" + name) << text;
  }
  EXPECT_EQ(bundled(name), text);
}

TEST(CatalogueTable, ReadsUnitsChoicesAndRemarks) {
  const auto read = readMotorCatalogue(
      "# a remark\n"
      "name,kind,Rotor inertia [g*cm^2],torqueConstant [mN*m/A],mass [lb],colour,origin\n"
      "small,brushedDc,12,50,1,red,invented\n"
      "large,,120,,,,\n",
      "mine.csv");
  ASSERT_TRUE(read) << describe(read.error());
  ASSERT_EQ(read->entries.size(), 2U);
  const Motor& small = read->entries[0].motor;
  EXPECT_EQ(read->entries[0].name, "small");
  EXPECT_EQ(small.kind, MotorKind::BrushedDc);
  EXPECT_NEAR(small.rotorInertia, 12e-7, 1e-18);
  EXPECT_NEAR(small.torqueConstant, 0.05, 1e-15);
  EXPECT_NEAR(small.mass, 0.45359237, 1e-12);
  EXPECT_TRUE(std::isnan(read->entries[1].motor.torqueConstant));
  EXPECT_EQ(read->entries[1].motor.kind, MotorKind::Sinusoidal);
  ASSERT_EQ(read->notes.size(), 1U);
  EXPECT_NE(read->notes[0].where.find("colour"), std::string::npos);
}

TEST(CatalogueTable, SemicolonsAndDecimalCommas) {
  const auto read =
      readReducerCatalogue("name;family;ratio;ratedTorque [N*m]\nx;planetary;7;12,5\n", "r.csv");
  ASSERT_TRUE(read) << describe(read.error());
  EXPECT_DOUBLE_EQ(read->entries[0].ratedTorque, 12.5);
}

TEST(CatalogueTable, ErrorsNameRowAndColumn) {
  struct Case {
    const char *text, *where, *what;
  };
  const Case cases[] = {
      {"", "m.csv", "no lines"},
      {"mass [kg]\n1\n", "m.csv", "name"},
      {"name,mass [N]\nx,1\n", "line 1, column \"mass\"", "no unit of mass"},
      {"name,mass [kg],mass [g]\nx,1,2\n", "line 1, column \"mass\"", "twice"},
      {"name,mass [kg]\nx,heavy\n", "line 2, column \"mass\"", ""},
      {"name,mass [kg]\na,1\nx,-1\n", "line 3, column \"mass\"", "out of range"},
      {"name,mass [kg]\nx,1,2\n", "line 2", "3 values"},
      {"name,mass [kg]\n,1\n", "line 2, column \"name\"", "name is missing"},
      {"name,kind\nx,steam\n", "line 2, column \"kind\"", "no choice"},
      {"name,mass [kg]\n", "m.csv", "no row"},
  };
  for (const Case& one : cases) {
    const auto read = readMotorCatalogue(one.text, "m.csv");
    ASSERT_FALSE(read) << one.text;
    EXPECT_NE(read.error().where.find(one.where), std::string::npos) << describe(read.error());
    EXPECT_NE(read.error().what.find(one.what), std::string::npos) << describe(read.error());
    EXPECT_FALSE(read.error().remedy.empty());
  }
  EXPECT_FALSE(readReducerCatalogue("name,ratio\nx,3\n", "r.csv"));
}

TEST(CatalogueTable, BundledMotorsAreTheInventedOnes) {
  expectBundled("motors.csv", writeMotorCatalogue(inventedMotors(), kInventedMotorsRemark));
  const auto read = readMotorCatalogue(bundled("motors.csv"), "motors.csv");
  ASSERT_TRUE(read) << describe(read.error());
  EXPECT_TRUE(read->notes.empty());
  EXPECT_GE(read->entries.size(), 200U);
  std::set<std::string> names;
  for (const MotorEntry& entry : read->entries) {
    EXPECT_NE(entry.name.find("invented"), std::string::npos);
    EXPECT_TRUE(names.insert(entry.name).second) << entry.name;
  }
}

TEST(CatalogueTable, BundledReducersAreTheInventedOnes) {
  expectBundled("reducers.csv", writeReducerCatalogue(inventedReducers(), kInventedReducersRemark));
  const auto read = readReducerCatalogue(bundled("reducers.csv"), "reducers.csv");
  ASSERT_TRUE(read) << describe(read.error());
  EXPECT_GE(read->entries.size(), 150U);
  std::set<StageFamily> families;
  for (const Stage& stage : read->entries) {
    EXPECT_NE(stage.name.find("invented"), std::string::npos);
    families.insert(stage.family);
  }
  EXPECT_EQ(families.size(), 6U);
}

TEST(CatalogueTable, RulesAreReadBackAndCanBeEdited) {
  expectBundled("reducer_rules.csv", writeFamilyRules(defaultFamilyRules(), kFamilyRulesRemark, defaultOwnColumns()));
  const auto read = readFamilyRules(bundled("reducer_rules.csv"), "rules.csv");
  ASSERT_TRUE(read) << describe(read.error());
  for (std::size_t k = 0; k < read->size(); ++k) {
    for (const RuleField& field : ruleFields()) {
      const double wanted = defaultFamilyRules()[k].*field.value;
      EXPECT_NEAR((*read)[k].*field.value, wanted, 1e-3 * wanted) << field.key;
    }
  }
  const auto edited =
      readFamilyRules("family,torquePerMass [lbf*ft],backlash [arcsec]\ncycloidal,30,15\n", "x");
  ASSERT_TRUE(edited) << describe(edited.error());
  EXPECT_NEAR(ruleOf(*edited, StageFamily::Cycloidal)->torquePerMass, 40.674538, 1e-6);
  EXPECT_EQ(ruleOf(*edited, StageFamily::Planetary)->backlash,
            ruleOf(defaultFamilyRules(), StageFamily::Planetary)->backlash);
  for (const char* bad : {"family,colour\ncycloidal,3\n", "family,backlash [kg]\ncycloidal,3\n",
                          "family,backlash\nwheel,3\n", "backlash\n3\n",
                          "family,ratioLow\ncycloidal,500\n", "family,backlash\ncycloidal,-1\n"}) {
    const auto refused = readFamilyRules(bad, "x");
    ASSERT_FALSE(refused) << bad;
    EXPECT_FALSE(refused.error().remedy.empty());
  }
}

TEST(InventedMotors, ScaleAsTheySay) {
  const Motor one = inventedMotor({100, 300, 48, false, false}).motor;
  const Motor large = inventedMotor({1280, 300, 48, false, false}).motor;
  // Lasting torque with mass^(7/6).
  EXPECT_NEAR(std::pow(large.mass / one.mass, 7.0 / 6), 12.8, 1e-9);
  EXPECT_NEAR(large.rotorInertia / one.rotorInertia, std::pow(large.mass / one.mass, 5.0 / 3),
              1e-6 * large.rotorInertia / one.rotorInertia);
  EXPECT_NEAR(large.thermalResistanceHousing / one.thermalResistanceHousing,
              std::pow(large.mass / one.mass, -2.0 / 3), 1e-9);
}

}  // namespace
}  // namespace jw
