// Two toothed pulleys and their belt. Proportions of teeth about as in ISO 5296, from memory.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "core/physics/belt_drive.h"
#include "core/studies/drive_families.h"
#include "core/studies/drive_outlines.h"

namespace jw::drive {
namespace {

using std::numbers::pi;
using Vector = Eigen::Vector2d;

// In pitches. Heights are counted outwards from the pitch line.
constexpr double kLand = -0.05;  // outside of the pulley, land of the belt between its teeth
constexpr double kBack = 0.13;
constexpr double kToothTip = kLand - 0.2;
constexpr double kGroove = kLand - 0.24;
constexpr double kToothFoot = 0.235;  // half widths
constexpr double kToothEnd = 0.162;
constexpr double kGrooveTop = 0.255;
constexpr double kGrooveEnd = 0.17;

// The pitch line of an open belt, counter-clockwise from the far left of the motor's pulley.
struct BeltPath {
  double pitch = 0;     // [m]
  double first = 0;     // [m] pitch radius on the motor's side, axis at the origin
  double second = 0;    // [m] axis at (distance, 0)
  double distance = 0;  // [m]
  double teeth = 0;     // of the belt

  double touch() const { return std::acos((first - second) / distance); }
  double span() const {
    return std::sqrt(distance * distance - (first - second) * (first - second));
  }
  double length() const { return 2 * (first * (pi - touch()) + span() + second * touch()); }

  // The point at way `s` [m], `height` [m] outside of the pitch line.
  Vector at(double s, double height) const {
    const double arc = first * (pi - touch());
    s = std::fmod(s, length());
    if (s < 0) s += length();
    if (s < arc) return polar(first + height, pi + s / first);
    if (s > length() - arc) return polar(first + height, pi - (length() - s) / first);
    if (s < arc + span()) return onSpan(-touch(), (s - arc) / span(), height);
    if (s > length() - arc - span()) return onSpan(touch(), (length() - arc - s) / span(), height);
    const double along = s - arc - span();
    return Vector(distance, 0) + polar(second + height, along / second - touch());
  }

 private:
  Vector onSpan(double normal, double share, double height) const {
    const Vector from = polar(first, normal);
    const Vector to = Vector(distance, 0) + polar(second, normal);
    return from + share * (to - from) + polar(height, normal);
  }
};

// Belt with its teeth at an input angle, and the mark on its first tooth.
void runBelt(const BeltPath& path, double input, Outlines& outlines, Outlines& marks) {
  const double p = path.pitch;
  Outline inside, back;
  for (int i = 0; i < int(path.teeth); ++i) {
    const double s = i * p + path.first * input;
    inside.push_back(path.at(s - kToothFoot * p, kLand * p));
    inside.push_back(path.at(s - kToothEnd * p, kToothTip * p));
    inside.push_back(path.at(s + kToothEnd * p, kToothTip * p));
    inside.push_back(path.at(s + kToothFoot * p, kLand * p));
    inside.push_back(path.at(s + 0.5 * p, kLand * p));
    for (const double share : {0.0, 0.25, 0.5, 0.75})
      back.push_back(path.at(s + share * p, kBack * p));
  }
  const double first = path.first * input;
  marks = {{path.at(first, kToothTip * p), path.at(first, kBack * p)}};
  outlines = {std::move(back), std::move(inside)};
}

// A groove's middle at angle 0.
Outline pulleyTeeth(double teeth, double pitch) {
  const double radius = teeth * pitch / (2 * pi);
  Outline points;
  for (int i = 0; i < int(std::lround(teeth)); ++i) {
    const auto add = [&](double shift, double height) {
      points.push_back(polar(radius + height * pitch, (i + shift) * pitch / radius));
    };
    add(-kGrooveTop, kLand);
    add(-kGrooveEnd, kGroove);
    add(kGrooveEnd, kGroove);
    add(kGrooveTop, kLand);
    add(0.5, kLand);
  }
  return points;
}

DriveBody pulley(double teeth, double pitch, DriveRole role, const DriveMotion& motion) {
  const double root = teeth * pitch / (2 * pi) + kGroove * pitch;
  DriveBody body{.role = role, .motion = motion};
  body.outlines = {pulleyTeeth(teeth, pitch), circle(0.3 * root)};
  body.marks = {spoke(0.3 * root, 0.94 * root)};
  return body;
}

// What is not given is assumed, with a remark.
BeltGeometry filledIn(BeltGeometry g, DriveShapes& shapes) {
  if (!isSet(g.pitch)) {
    g.pitch = 5e-3;
    g.centreDistance = kUnset;
    shapes.remarks.emplace_back("The pitch is not given: drawn with 5 mm, in proportion.");
  }
  if (isSet(g.centreDistance)) return g;
  g.centreDistance = 0.8 * g.pitch * (g.motorPulleyTeeth + g.jointPulleyTeeth) / pi;
  shapes.remarks.emplace_back("The centre distance is assumed.");
  return g;
}

// The belt with a whole number of teeth that comes nearest.
BeltPath pathOf(const BeltGeometry& g, DriveShapes& shapes) {
  BeltPath path{.pitch = g.pitch,
                .first = pulleyDiameter(g, g.motorPulleyTeeth) / 2,
                .second = pulleyDiameter(g, g.jointPulleyTeeth) / 2};
  path.distance = g.centreDistance;
  if (const auto whole = nearestBelt(g)) path.distance = whole->centreDistance;
  path.teeth = std::round(path.length() / path.pitch);
  shapes.remarks.push_back(fmt::format("Belt of {:.0f} teeth, centre distance {:.4g} mm.",
                                       path.teeth, 1000 * path.distance));
  return path;
}

void checkPulleys(Needs& needs, const BeltGeometry& g) {
  needs.positive(g.motorPulleyTeeth, "motorPulleyTeeth", "e.g. 20");
  needs.positive(g.jointPulleyTeeth, "jointPulleyTeeth", "e.g. 40");
  if (!needs.met() || !isSet(g.pitch) || !isSet(g.centreDistance)) return;
  const double least = (std::abs(g.motorPulleyTeeth - g.jointPulleyTeeth) / 2 + 1) * g.pitch / pi;
  if (g.centreDistance < least)
    needs.add("one pulley lies inside the other", "centreDistance",
              fmt::format("give more than {:.4g} mm", 1000 * least));
}

}  // namespace

Result belt(const Stage& stage, const std::string& path) {
  Needs needs(path);
  checkPulleys(needs, stage.belt);
  if (!needs.met()) return needs.errors();
  DriveShapes shapes;
  const BeltGeometry g = filledIn(stage.belt, shapes);
  const BeltPath run = pathOf(g, shapes);
  const double rate = g.motorPulleyTeeth / g.jointPulleyTeeth;
  // Half way round stands a tooth of the belt, or a gap if their number is odd.
  const double aside = std::fmod(run.teeth, 2) != 0 ? run.pitch / (2 * run.second) : 0;
  DriveBody band;
  band.bent = [run](double input, Outlines& outlines, Outlines& marks) {
    runBelt(run, input, outlines, marks);
  };
  shapes.bodies = {
      pulley(g.motorPulleyTeeth, g.pitch, DriveRole::Input, {.turnStart = pi, .turnRate = 1}),
      pulley(g.jointPulleyTeeth, g.pitch, DriveRole::Output,
             {.pivot = {run.distance, 0}, .turnStart = aside, .turnRate = rate}),
      band};
  shapes.labels = {{"motor pulley",
                    count(g.motorPulleyTeeth, "teeth"),
                    DriveRole::Input,
                    1,
                    {0},
                    -pi / 2,
                    0.6 * run.first,
                    0},
                   {"joint pulley",
                    count(g.jointPulleyTeeth, "teeth"),
                    DriveRole::Output,
                    rate,
                    {1},
                    -pi / 2,
                    0.6 * run.second,
                    1}};
  shapes.groups = 2;
  shapes.ratio = 1 / rate;
  shapes.ratioFormula = "z_2/z_1";
  return shapes;
}

}  // namespace jw::drive
