#pragma once

#include <string>

#include <gtest/gtest.h>

#include "core/robot/robot_description.h"

namespace jw {

/// An invented arm: a turning base, a shoulder about y, an elbow about a slanting axis, a sliding
/// wrist with a tool frame that has no mass.
inline const char* const kExampleRobot = R"(<?xml version="1.0"?>
<robot name="example arm">
  <link name="base"/>
  <link name="column">
    <inertial>
      <origin xyz="0.01 0 0.1" rpy="0 0 0"/>
      <mass value="4"/>
      <inertia ixx="0.03" ixy="0" ixz="0.001" iyy="0.035" iyz="0" izz="0.02"/>
    </inertial>
  </link>
  <link name="upper">
    <inertial>
      <origin xyz="0.2 0.02 0" rpy="0 0.3 0"/>
      <mass value="3"/>
      <inertia ixx="0.01" ixy="0.002" ixz="0" iyy="0.04" iyz="0.001" izz="0.045"/>
    </inertial>
  </link>
  <link name="fore">
    <inertial>
      <origin xyz="0.15 0 0.01" rpy="0 0 0.2"/>
      <mass value="1.8"/>
      <inertia ixx="0.004" ixy="0" ixz="0" iyy="0.02" iyz="0" izz="0.022"/>
    </inertial>
  </link>
  <link name="hand">
    <inertial>
      <origin xyz="0.05 0 0" rpy="0 0 0"/>
      <mass value="0.7"/>
      <inertia ixx="0.001" ixy="0" ixz="0" iyy="0.0012" iyz="0" izz="0.0011"/>
    </inertial>
  </link>
  <link name="tool"/>
  <joint name="Waist" type="continuous">
    <origin xyz="0 0 0.2" rpy="0 0 0"/>
    <parent link="base"/>
    <child link="column"/>
    <axis xyz="0 0 1"/>
  </joint>
  <joint name="Shoulder" type="revolute">
    <origin xyz="0.05 0.03 0.25" rpy="0.1 0 0"/>
    <parent link="column"/>
    <child link="upper"/>
    <axis xyz="0 -1 0"/>
    <limit lower="-0.5" upper="1.9" effort="80" velocity="2.5"/>
    <dynamics damping="0.4" friction="1.2"/>
  </joint>
  <joint name="Elbow" type="revolute">
    <origin xyz="0.4 0 0" rpy="0 0 0.4"/>
    <parent link="upper"/>
    <child link="fore"/>
    <axis xyz="0 2 1"/>
    <limit lower="-2" upper="2" effort="40" velocity="3"/>
  </joint>
  <joint name="Slide" type="prismatic">
    <origin xyz="0.3 0 0" rpy="0 0.2 0"/>
    <parent link="fore"/>
    <child link="hand"/>
    <axis xyz="1 0 0"/>
    <limit lower="0" upper="0.2" effort="100" velocity="0.5"/>
  </joint>
  <joint name="flange" type="fixed">
    <origin xyz="0.1 0 0" rpy="0 0 0"/>
    <parent link="hand"/>
    <child link="tool"/>
  </joint>
</robot>
)";

inline RobotDescription exampleRobot() {
  auto robot = readRobotDescription(kExampleRobot, "arm.urdf");
  EXPECT_TRUE(robot.has_value()) << describe(robot.error());
  return std::move(*robot);
}

}  // namespace jw
