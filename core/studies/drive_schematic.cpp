// Stages without an inside to draw: a coupling and a plain ratio.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "core/studies/drive_families.h"
#include "core/studies/drive_outlines.h"

namespace jw::drive {
namespace {

using std::numbers::pi;

constexpr int kJaws = 3;
constexpr double kHub = 20e-3;  // [m] outer radius of a schematic hub

// Jaws of one half, between those of the other.
DriveBody couplingHalf(DriveRole role, double start, double rate) {
  DriveBody body{.role = role, .motion = {.turnStart = start, .turnRate = rate}};
  for (int k = 0; k < kJaws; ++k) {
    const double middle = 2 * pi * k / kJaws;
    body.outlines.push_back(sector(0.45 * kHub, kHub, middle - 0.36, middle + 0.36));
  }
  return body;
}

DriveBody spider() {
  DriveBody body{.role = DriveRole::Between, .motion = {.turnRate = 1}};
  body.outlines = {circle(0.94 * kHub), circle(0.28 * kHub)};
  body.marks = {spoke(0.28 * kHub, 0.45 * kHub)};
  return body;
}

DriveBody shaftWheel(double radius, DriveRole role, const DriveMotion& motion) {
  DriveBody body{.role = role, .motion = motion};
  body.outlines = {circle(radius), circle(0.22 * radius)};
  body.marks = {spoke(0.22 * radius, radius)};
  return body;
}

}  // namespace

Result coupling(const Stage& stage, const std::string&) {
  DriveShapes shapes;
  const double ratio = isSet(stage.ratio) && stage.ratio > 0 ? stage.ratio : 1;
  shapes.ratio = stage.reverses ? -ratio : ratio;
  shapes.bodies = {spider(), couplingHalf(DriveRole::Input, 0, 1),
                   couplingHalf(DriveRole::Output, pi / kJaws, 1 / shapes.ratio)};
  shapes.labels = {
      {"motor side", "", DriveRole::Input, 1, {1}, pi / 6, 0.7 * kHub, 0},
      {"joint side", "", DriveRole::Output, 1 / shapes.ratio, {2}, -pi / 6, 0.7 * kHub, 0}};
  shapes.remarks = {"Schematic, not to scale."};
  return shapes;
}

Result givenRatio(const Stage& stage, const std::string& path) {
  Needs needs(path);
  needs.positive(stage.ratio, "ratio", "input speed over output speed, e.g. 100");
  if (!needs.met()) return needs.errors();
  DriveShapes shapes;
  shapes.ratio = stage.reverses ? -stage.ratio : stage.ratio;
  const double proportion = std::clamp(std::sqrt(stage.ratio), 0.4, 2.5);
  const double first = kHub / std::max(proportion, 1.0);
  const double second = first * proportion;
  const double distance = 1.6 * (first + second);
  shapes.bodies = {shaftWheel(first, DriveRole::Input, {.turnRate = 1}),
                   shaftWheel(second, DriveRole::Output,
                              {.pivot = {distance, 0}, .turnRate = 1 / shapes.ratio})};
  shapes.labels = {
      {"motor side", "", DriveRole::Input, 1, {0}, -pi / 2, 0.6 * first, 0},
      {"joint side", "", DriveRole::Output, 1 / shapes.ratio, {1}, -pi / 2, 0.6 * second, 1}};
  shapes.groups = 2;
  shapes.remarks = {"Schematic, not to scale: a given ratio says nothing of what is inside."};
  return shapes;
}

}  // namespace jw::drive
