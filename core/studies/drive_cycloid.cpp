// Cycloidal stage: discs on eccentrics inside a circle of pins, output pins in their holes.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "core/physics/cycloid_profile.h"
#include "core/studies/drive_families.h"
#include "core/studies/drive_outlines.h"

namespace jw::drive {
namespace {

using std::numbers::pi;

struct Plan {
  CycloidShape shape;
  CycloidGeometry given;
  bool pinsHeld = true;

  int discs() const { return isSet(given.discs) ? std::clamp(int(given.discs), 1, 3) : 2; }
  bool hasOutputPins() const {
    return given.outputPins > 0 && given.outputPinCircleRadius > 0 && given.outputPinRadius > 0;
  }
  double bearing() const {
    return isSet(given.bearingRadius) ? given.bearingRadius
                                      : std::max(0.3 * shape.pinCircleRadius, 1.5 * eccentric());
  }
  // [m] where neither holes nor lobes are, for the label.
  double freeRadius() const {
    const double valley = shape.pinCircleRadius - shape.pinRadius - shape.eccentricity;
    const double inner =
        hasOutputPins() ? given.outputPinCircleRadius + given.outputPinRadius + shape.eccentricity
                        : bearing();
    return (inner + valley) / 2;
  }
  double eccentric() const { return shape.eccentricity; }
  double discRate() const { return pinsHeld ? -1.0 / shape.lobes() : 0; }
  double ringRate() const { return pinsHeld ? 0 : 1.0 / shape.pins; }
};

Outlines circlesAround(double number, double circleRadius, double radius, double start = 0) {
  Outlines circles;
  for (int i = 0; i < int(std::lround(number)); ++i)
    circles.push_back(circle(radius, polar(circleRadius, start + 2 * pi * i / number), 36));
  return circles;
}

DriveRole roleOf(bool held) { return held ? DriveRole::Held : DriveRole::Output; }

DriveBody housing(const Plan& plan) {
  const CycloidShape& s = plan.shape;
  const double inner =
      std::max(s.pinCircleRadius, s.pinCircleRadius - s.pinRadius + 1.15 * s.eccentricity);
  DriveBody body{.role = roleOf(plan.pinsHeld), .motion = {.turnRate = plan.ringRate()}};
  const double outer = inner + std::max(1.6 * s.pinRadius, 0.07 * s.pinCircleRadius);
  body.outlines = {circle(outer), circle(inner)};
  if (!plan.pinsHeld) body.marks = {spoke(inner, outer, pi / s.pins)};
  return body;
}

DriveBody ringPins(const Plan& plan) {
  DriveBody body{.role = roleOf(plan.pinsHeld), .motion = {.turnRate = plan.ringRate()}};
  body.outlines = circlesAround(plan.shape.pins, plan.shape.pinCircleRadius, plan.shape.pinRadius);
  return body;
}

// Disc number k; its holes stand where the output pins are.
DriveBody disc(const Plan& plan, int k) {
  const double phase = 2 * pi * k / plan.discs();
  const double back = phase / plan.shape.lobes();
  const CycloidProfile profile = cycloidProfile(plan.shape, plan.shape.lobes() > 40 ? 16 : 30);
  Outline lobes;
  for (Eigen::Index i = 0; i + 1 < profile.x.size(); ++i)
    lobes.emplace_back(profile.x[i], profile.y[i]);
  DriveBody body{.role = DriveRole::Between,
                 .motion = {.orbitRadius = plan.eccentric(),
                            .orbitStart = phase,
                            .orbitRate = 1,
                            .turnStart = -back,
                            .turnRate = plan.discRate()},
                 .faint = k > 0};
  if (plan.hasOutputPins())
    body.outlines = circlesAround(plan.given.outputPins, plan.given.outputPinCircleRadius,
                                  plan.given.outputPinRadius + plan.eccentric(), back);
  body.outlines.push_back(circle(plan.bearing()));
  body.outlines.insert(body.outlines.begin(), std::move(lobes));
  if (k == 0) {
    const double valley = profile.x[0];
    body.marks = {spoke(0.9 * valley, 0.985 * valley)};
  }
  return body;
}

DriveBody outputPins(const Plan& plan) {
  DriveBody body{.role = roleOf(!plan.pinsHeld), .motion = {.turnRate = plan.discRate()}};
  if (plan.hasOutputPins())
    body.outlines = circlesAround(plan.given.outputPins, plan.given.outputPinCircleRadius,
                                  plan.given.outputPinRadius);
  return body;
}

// The shaft's hole lies off the eccentric's middle.
DriveBody eccentric(const Plan& plan) {
  DriveBody body{.role = DriveRole::Input,
                 .motion = {.orbitRadius = plan.eccentric(), .orbitRate = 1, .turnRate = 1}};
  const double radius = 0.96 * plan.bearing();
  const Eigen::Vector2d shaft(-plan.eccentric(), 0);
  const double hole = std::max(std::min(0.4 * radius, 0.85 * (radius - plan.eccentric())), 0.0);
  body.outlines = {circle(radius), circle(hole, shaft)};
  body.marks = {{shaft + Eigen::Vector2d(hole, 0), {radius, 0}}};
  return body;
}

void addLabels(DriveShapes& shapes, const Plan& plan) {
  const std::size_t front = 1 + std::size_t(plan.discs());
  const double radius = plan.shape.pinCircleRadius;
  const auto deg = [](double angle) { return angle * pi / 180; };
  shapes.labels = {
      {"ring pins",
       fmt::format("{}", plan.shape.pins),
       roleOf(plan.pinsHeld),
       plan.ringRate(),
       {0},
       deg(52),
       1.04 * radius,
       0},
      {plan.discs() > 1 ? "discs" : "disc",
       plan.discs() > 1 ? fmt::format("{} \u00d7 {} lobes", plan.discs(), plan.shape.lobes())
                        : fmt::format("{} lobes", plan.shape.lobes()),
       DriveRole::Between,
       plan.discRate(),
       {front},
       deg(18),
       plan.freeRadius(),
       0},
      {"eccentric", "", DriveRole::Input, 1, {front + 2}, deg(-20), 0.7 * plan.bearing(), 0}};
  if (!plan.hasOutputPins()) return;
  shapes.labels.push_back({"output pins",
                           fmt::format("{:.0f}", plan.given.outputPins),
                           roleOf(!plan.pinsHeld),
                           plan.discRate(),
                           {front + 1},
                           deg(-52),
                           plan.given.outputPinCircleRadius,
                           0,
                           2 * pi / plan.given.outputPins});
}

void checkDisc(Needs& needs, const CycloidGeometry& g) {
  needs.positive(g.pins, "pins", "e.g. 40");
  needs.positive(g.eccentricity, "eccentricity", "e.g. 1 mm");
  needs.positive(g.pinCircleRadius, "pinCircleRadius", "e.g. 50 mm");
  needs.positive(g.pinRadius, "pinRadius", "e.g. 2.5 mm");
  if (!needs.met()) return;
  if (isSet(g.lobes) && g.lobes != g.pins - 1)
    needs.add("the drawing has one lobe less than pins", "lobes",
              fmt::format("give {:.0f}", g.pins - 1));
  if (g.eccentricity * g.pins >= g.pinCircleRadius)
    needs.add("gives lobes with loops", "eccentricity",
              fmt::format("give less than pin circle radius over pins, {:.4g} mm",
                          1000 * g.pinCircleRadius / g.pins));
}

}  // namespace

Result cycloid(const Stage& stage, const std::string& path) {
  Needs needs(path);
  checkDisc(needs, stage.cycloid);
  const auto shape = cycloidShape(stage.cycloid);
  if (!needs.met() || !shape) return needs.errors();
  const Plan plan{*shape, stage.cycloid, stage.cycloid.held == CycloidHeld::Pins};
  DriveShapes shapes;
  shapes.bodies = {housing(plan)};
  for (int k = plan.discs() - 1; k >= 0; --k) shapes.bodies.push_back(disc(plan, k));
  shapes.bodies.insert(shapes.bodies.begin() + 1, ringPins(plan));
  shapes.bodies.push_back(outputPins(plan));
  shapes.bodies.push_back(eccentric(plan));
  addLabels(shapes, plan);
  if (!plan.hasOutputPins())
    shapes.remarks.emplace_back(
        "Output pins and holes are drawn when their number, radius and "
        "circle are given.");
  shapes.ratio = plan.pinsHeld ? -shape->lobes() : shape->pins;
  shapes.ratioFormula = plan.pinsHeld ? "z_l/(z_p \u2212 z_l), reversed" : "z_p/(z_p \u2212 z_l)";
  return shapes;
}

}  // namespace jw::drive
