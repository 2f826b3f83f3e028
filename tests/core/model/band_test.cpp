// Tolerance bands: how they are written, kept in files and found. Widths by hand; standard
// deviations of the shapes as JCGM 100:2008 (4.3.7, 4.3.9) and JCGM 101:2008 (6.4) state them, from
// memory.
#include <cmath>

#include <gtest/gtest.h>

#include "core/files/project_text.h"
#include "core/model/band.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

const FieldInfo& info(const Project& project, const char* path) {
  return *findField(project, path)->info;
}

TEST(Band, ReadsSharesWidthsAndShapes) {
  const Project project = exampleProject();
  const FieldInfo& torque = info(project, "motor.brakeTorque");
  const auto share = readBand(torque, "± 5 %");
  ASSERT_TRUE(share) << describe(share.error());
  EXPECT_TRUE(share->relative);
  EXPECT_DOUBLE_EQ(share->halfWidth(-2), 0.1);
  EXPECT_EQ(share->shape, BandShape::Uniform);
  const auto width = readBand(torque, "+- 20 mN*m normal");
  ASSERT_TRUE(width) << describe(width.error());
  EXPECT_FALSE(width->relative);
  EXPECT_DOUBLE_EQ(width->halfWidth(2), 0.02);
  EXPECT_EQ(width->shape, BandShape::Normal);
  const auto bare = readBand(torque, "0.3 triangular");
  ASSERT_TRUE(bare) << describe(bare.error());
  EXPECT_DOUBLE_EQ(bare->halfWidth(2), 0.3);
  EXPECT_EQ(bare->shape, BandShape::Triangular);
}

TEST(Band, OfATemperatureIsADifference) {
  const Project project = exampleProject();
  for (const char* text : {"± 10 K", "± 10 °C", "± 10 degC", "10"}) {
    const auto band = readBand(info(project, "requirements.ambient"), text);
    ASSERT_TRUE(band) << text << describe(band.error());
    EXPECT_DOUBLE_EQ(band->halfWidth(40), 10) << text;
  }
}

TEST(Band, StandardDeviationsOfTheShapes) {
  EXPECT_NEAR((Band{3, false, BandShape::Uniform}).standardDeviation(0), std::sqrt(3.0), 1e-15);
  EXPECT_NEAR((Band{3, false, BandShape::Normal}).standardDeviation(0), 1.5, 1e-15);
  EXPECT_NEAR((Band{3, false, BandShape::Triangular}).standardDeviation(0), std::sqrt(1.5), 1e-15);
}

TEST(Band, RefusesWithAReasonAndLosesNothing) {
  Project project = exampleProject();
  const Project before = project;
  const char* const bad[][2] = {{"motor.brakeTorque", "± 5 J"},
                                {"motor.brakeTorque", "± -5 %"},
                                {"motor.brakeTorque", "± 100 %"},
                                {"motor.brakeTorque", "normal"},
                                {"motor.brakeTorque", "5 % gauss"},
                                {"motor.polePairs", "± 1"},
                                {"variant.name", "± 1"},
                                {"motor.noSuch", "± 1"}};
  for (const auto& [path, text] : bad) {
    const auto done = setBand(project, path, text);
    ASSERT_FALSE(done) << path << ' ' << text;
    EXPECT_FALSE(done.error().what.empty());
    EXPECT_FALSE(done.error().remedy.empty());
    EXPECT_EQ(done.error().where.substr(0, 5), std::string(path).substr(0, 5));
  }
  EXPECT_EQ(project, before);
}

TEST(Band, SaysWhichShapesThereAre) {
  const Project project = exampleProject();
  for (const char* text :
       {"± 10 % gaussian", "5 %gaussian", "± 0.2 N*m gaussian", "0.2 gaussian"}) {
    const auto band = readBand(info(project, "motor.brakeTorque"), text);
    ASSERT_FALSE(band) << text;
    EXPECT_EQ(band.error().what, "there is no shape of a band 'gaussian'") << text;
    EXPECT_NE(band.error().remedy.find("uniform, normal or triangular"), std::string::npos);
  }
  for (const char* text : {"5 kg", "5 J", "± -5 % gaussian", "gaussian"}) {
    const auto band = readBand(info(project, "motor.brakeTorque"), text);
    ASSERT_FALSE(band) << text;
    EXPECT_EQ(band.error().what.find("shape"), std::string::npos) << text;
  }
}

TEST(Band, IsKeptInFilesAndCountsForEquality) {
  Project project = exampleProject();
  ASSERT_TRUE(setBand(project, "motor.torqueConstant", "± 5 % normal"));
  ASSERT_TRUE(setBand(project, "transmission[1].efficiency", "+- 3 %"));
  ASSERT_TRUE(setBand(project, "load.payloadMass", "± 0.2 kg"));
  ASSERT_TRUE(setBand(project, "cycle.segments[0].duration", "± 2 %"));
  EXPECT_NE(project, exampleProject());
  const std::string text = writeProject(project);
  const auto again = readProject(text, "test");
  ASSERT_TRUE(again) << describe(again.error());
  EXPECT_EQ(again->project, project);
  EXPECT_TRUE(again->notes.empty());
  EXPECT_EQ(bandedFields(again->project).size(), 4U);
  EXPECT_EQ(bandedFields(again->project)[0].field.path, "motor.torqueConstant");
  for (const char* path : {"motor.torqueConstant", "transmission[1].efficiency", "load.payloadMass",
                           "cycle.segments[0].duration"}) {
    ASSERT_TRUE(setBand(project, path, " "));
  }
  EXPECT_EQ(project, exampleProject());
}

TEST(Band, FileWithABadBandIsRefusedNamingIt) {
  Project project = exampleProject();
  ASSERT_TRUE(setBand(project, "motor.brakeTorque", "± 5 %"));
  std::string text = writeProject(project);
  text.replace(text.find("± 5 %"), std::string("± 5 %").size(), "± 5 J");
  const auto again = readProject(text, "test");
  ASSERT_FALSE(again);
  EXPECT_NE(again.error().where.find("variants[0].motor.bands.brakeTorque"), std::string::npos)
      << again.error().where;
}

TEST(Band, OfAnEmptyFieldOrNoWidthCountsAsNone) {
  Project project = exampleProject();
  ASSERT_TRUE(setBand(project, "motor.continuousTorque", "± 5 %"));
  ASSERT_TRUE(setBand(project, "motor.brakeTorque", "± 0 %"));
  EXPECT_TRUE(bandedFields(project).empty());
}

}  // namespace
}  // namespace jw
