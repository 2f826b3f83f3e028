// Reading robot descriptions, and what is said about those that lack something.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/core/robot/example_robot.h"

namespace jw {
namespace {

using testing::HasSubstr;

InputError errorOf(const std::string& text) {
  const auto robot = readRobotDescription(text, "arm.urdf");
  return robot ? InputError{} : robot.error();
}

/// The example with its first `from` replaced.
InputError errorWith(const std::string& from, const std::string& to) {
  std::string text = kExampleRobot;
  const auto at = text.find(from);
  EXPECT_NE(at, text.npos) << from;
  return errorOf(text.replace(at, from.size(), to));
}

TEST(RobotDescription, ReadsLinksAndJoints) {
  const RobotDescription robot = exampleRobot();
  EXPECT_EQ(robot.name, "example arm");
  ASSERT_EQ(robot.joints.size(), 5U);
  EXPECT_EQ(robot.links.size(), 6U);
  const RobotJoint& shoulder = robot.joints[1];
  EXPECT_EQ(shoulder.name, "Shoulder");
  EXPECT_EQ(shoulder.line, 39U);
  EXPECT_EQ(shoulder.kind, RobotJointKind::Turning);
  EXPECT_EQ(robot.links[shoulder.parent].name, "column");
  EXPECT_EQ(robot.links[shoulder.child].name, "upper");
  EXPECT_DOUBLE_EQ(shoulder.low, -0.5);
  EXPECT_DOUBLE_EQ(shoulder.speedLimit, 2.5);
  EXPECT_DOUBLE_EQ(shoulder.coulombFriction, 1.2);
  EXPECT_FALSE(isSet(robot.joints[0].low));
  EXPECT_NEAR(robot.joints[2].axis.norm(), 1, 1e-15);
  EXPECT_FALSE(robot.joints[4].moves());
}

TEST(RobotDescription, NotesLinksWithoutInertia) {
  const RobotDescription robot = exampleRobot();
  ASSERT_EQ(robot.notes.size(), 1U);
  EXPECT_THAT(robot.notes[0].where, HasSubstr("line 32 (link 'tool')"));
  EXPECT_THAT(robot.notes[0].what, HasSubstr("<inertial>"));
}

// Each text lacks one thing; the message has to say which element and line.
TEST(RobotDescription, SaysWhatIsMissingAndWhere) {
  InputError error = errorWith(R"(<link name="upper">)", R"(<link name="lower">)");
  EXPECT_THAT(error.what, HasSubstr("child link 'upper' of the joint 'Shoulder' is not declared"));
  EXPECT_EQ(error.where, "arm.urdf, line 42");
  error = errorWith(R"(<limit lower="-2" upper="2" effort="40" velocity="3"/>)", "");
  EXPECT_THAT(error.what, HasSubstr("limits are missing: 'Elbow' (line 47, <limit>)"));
  EXPECT_EQ(error.where, "arm.urdf, line 47");
  EXPECT_THAT(error.remedy, HasSubstr("<limit"));
  error = errorWith(R"(effort="80" velocity="2.5")", R"(effort="80")");
  EXPECT_THAT(error.what, HasSubstr("'Shoulder' (line 39, velocity in its <limit>)"));
  error = errorWith(R"(<axis xyz="0 2 1"/>)", R"(<axis xyz="0 0 0"/>)");
  EXPECT_THAT(error.what, HasSubstr("axis of the joint 'Elbow' has no length"));
  error = errorWith(R"(<mass value="3"/>)", R"(<mass value="-3"/>)");
  EXPECT_THAT(error.what, HasSubstr("negative"));
  EXPECT_THAT(error.where, HasSubstr("link 'upper'"));
  error = errorWith(R"(<mass value="3"/>)", R"(<mass value="heavy"/>)");
  EXPECT_EQ(error.what, "value in the <mass> of the link 'upper' is 'heavy'");
  EXPECT_EQ(error.where, "arm.urdf, line 14");
  error = errorWith(R"(iyy="0.04")", "");
  EXPECT_EQ(error.what, "iyy in the <inertia> of the link 'upper' is missing");
  error = errorWith(R"(xyz="0.2 0.02 0")", R"(xyz="0.2 0.02")");
  EXPECT_THAT(error.what, HasSubstr("xyz in the <origin> of the link 'upper'"));
  error = errorWith(R"(<joint name="Elbow")", R"(<joint name="Shoulder")");
  EXPECT_THAT(error.what, HasSubstr("'Shoulder' comes twice"));
  error = errorWith(R"(<joint name="Elbow")", "<joint");
  EXPECT_THAT(error.what, HasSubstr("no name"));
  error = errorWith(R"(lower="-0.5" upper="1.9")", R"(lower="1.9" upper="-0.5")");
  EXPECT_THAT(error.what, HasSubstr("above the upper"));
}

TEST(RobotDescription, RefusesWhatIsNoDescription) {
  EXPECT_THAT(errorOf("").what, HasSubstr("XML"));
  EXPECT_THAT(errorOf("time;q1\n0;1").what, testing::Not(testing::IsEmpty()));
  EXPECT_THAT(errorOf("<svg/>").what, HasSubstr("<robot>"));
  EXPECT_THAT(errorOf("<robot name=\"x\"/>").what, HasSubstr("no link"));
  EXPECT_THAT(errorOf("<robot name=\"x\"><link name=\"a\"></robot>").what, HasSubstr("XML"));
  std::string deep;
  for (int k = 0; k < 100'000; ++k) deep += "<a>";
  EXPECT_THAT(errorOf(deep).what, HasSubstr("deep"));
  // Two trees, an origin that is none: the library's own words, and nothing on the console.
  testing::internal::CaptureStderr();
  EXPECT_FALSE(errorWith(R"(xyz="0.05 0.03 0.25")", R"(xyz="a b c")").what.empty());
  EXPECT_FALSE(errorOf(R"(<robot name="x"><link name="a"/><link name="b"/></robot>)").what.empty());
  EXPECT_EQ(testing::internal::GetCapturedStderr(), "");
}

}  // namespace
}  // namespace jw
