// Strain-wave stage: circular spline, flexspline bent by the wave generator.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "core/studies/drive_families.h"
#include "core/studies/drive_outlines.h"
#include "core/studies/involute_outline.h"

namespace jw::drive {
namespace {

using std::numbers::pi;
using Vector = Eigen::Vector2d;

constexpr double kAddendum = 0.7;   // in modules: short teeth leave mesh between the lobes
constexpr double kDedendum = 0.95;  // in modules
constexpr double kShown = 0.055;    // deflection drawn, as share of the radius

// The middle line of the flexspline's teeth, counted by the angle s from the generator's lobe.
struct BentLine {
  double outer = 0;       // [m] pitch radius of the circular spline, reached at the lobes
  double deflection = 0;  // [m] true, half the difference of the pitch diameters
  double mean = 0;        // [m] pitch radius of the flexspline
  double exaggeration = 1;

  double radius(double s) const {
    return outer - exaggeration * deflection * (1 - std::cos(2 * s));
  }
  // A ring that bends without stretching turns its points aside: v' = -w/r (thin ring theory).
  double place(double s) const { return s - deflection / (2 * mean) * std::sin(2 * s); }
  double normal(double s) const {
    return place(s) + std::atan(2 * exaggeration * deflection * std::sin(2 * s) / radius(s));
  }
  Vector at(double s, double turn, double height, double aside = 0) const {
    const double n = normal(s) + turn;
    const Vector out = polar(1, n);
    return polar(radius(s), place(s) + turn) + height * out + aside * Vector(-out.y(), out.x());
  }
};

struct Plan {
  double flexTeeth = 0;
  double circularTeeth = 0;
  double module = 1e-3;
  bool flexTurns = true;
  BentLine line = {};

  double wall() const { return 0.025 * line.mean; }
  double difference() const { return circularTeeth - flexTeeth; }
  double flexRate() const { return flexTurns ? -difference() / flexTeeth : 0; }
  double circularRate() const { return flexTurns ? 0 : difference() / circularTeeth; }
};

Plan planOf(const StrainWaveGeometry& g) {
  Plan plan{.flexTeeth = g.flexTeeth,
            .circularTeeth = g.circularTeeth,
            .flexTurns = g.held == StrainWaveHeld::CircularSpline};
  plan.line.outer = plan.module * plan.circularTeeth / 2;
  plan.line.mean = plan.module * plan.flexTeeth / 2;
  plan.line.deflection = plan.line.outer - plan.line.mean;
  const double wanted = kShown * plan.line.mean / plan.line.deflection;
  plan.line.exaggeration = std::max(1.0, std::floor(wanted));
  return plan;
}

ToothForm formOf(const Plan& plan, double teeth) {
  return {.teeth = teeth, .module = plan.module, .addendum = kAddendum, .dedendum = kDedendum};
}

// Teeth and wall at an input angle; the mark crosses the wall at the first tooth.
void bend(const Plan& plan, double input, Outlines& outlines, Outlines& marks) {
  const double m = plan.module;
  const double slope = std::tan(pi / 9);
  const double half = m * (pi / 4 - 0.02);
  const double tip = half - kAddendum * m * slope;
  const double root = half + kDedendum * m * slope;
  const double inner = -kDedendum * m - plan.wall();
  Outline teeth, wall;
  for (int i = 0; i < int(std::lround(plan.flexTeeth)); ++i) {
    const double s = 2 * pi * i / plan.flexTeeth + (plan.flexRate() - 1) * input;
    teeth.push_back(plan.line.at(s, input, -kDedendum * m, -root));
    teeth.push_back(plan.line.at(s, input, kAddendum * m, -tip));
    teeth.push_back(plan.line.at(s, input, kAddendum * m, tip));
    teeth.push_back(plan.line.at(s, input, -kDedendum * m, root));
    wall.push_back(plan.line.at(s, input, inner));
  }
  const double first = (plan.flexRate() - 1) * input;
  marks = {{plan.line.at(first, input, inner), plan.line.at(first, input, -kDedendum * m)}};
  outlines = {std::move(teeth), std::move(wall)};
}

DriveBody circularSpline(const Plan& plan) {
  const ToothForm form = formOf(plan, plan.circularTeeth);
  DriveBody body{.role = plan.flexTurns ? DriveRole::Held : DriveRole::Output,
                 .motion = {.turnStart = pi / plan.circularTeeth, .turnRate = plan.circularRate()}};
  const double root = internalRootRadius(form);
  body.outlines = {circle(1.1 * root), internalTeeth(form)};
  if (!plan.flexTurns) body.marks = {spoke(1.03 * root, 1.1 * root)};
  return body;
}

DriveBody flexspline(const Plan& plan) {
  DriveBody body;
  body.role = plan.flexTurns ? DriveRole::Output : DriveRole::Held;
  body.bent = [plan](double input, Outlines& outlines, Outlines& marks) {
    bend(plan, input, outlines, marks);
  };
  return body;
}

DriveBody generator(const Plan& plan) {
  const double inside = -kDedendum * plan.module - plan.wall();
  DriveBody body{.role = DriveRole::Input, .motion = {.turnRate = 1}};
  Outline lobes;
  for (int i = 0; i < 180; ++i) lobes.push_back(plan.line.at(pi * i / 90, 0, inside));
  const double hub = 0.22 * plan.line.mean;
  const double reach = lobes.front().norm();
  body.outlines = {std::move(lobes), circle(hub)};
  body.marks = {spoke(hub, 0.96 * reach), spoke(hub, 0.96 * reach, pi)};
  return body;
}

void addLabels(DriveShapes& shapes, const Plan& plan) {
  const DriveRole outer = shapes.bodies[0].role;
  const DriveRole flex = shapes.bodies[1].role;
  const double root = internalRootRadius(formOf(plan, plan.circularTeeth));
  shapes.labels = {
      {"circular spline",
       count(plan.circularTeeth, "teeth"),
       outer,
       plan.circularRate(),
       {0},
       50 * pi / 180,
       1.05 * root,
       0},
      {"flexspline",
       count(plan.flexTeeth, "teeth"),
       flex,
       plan.flexRate(),
       {1},
       8 * pi / 180,
       plan.line.outer - plan.line.exaggeration * plan.line.deflection,
       0},
      {"wave generator", "", DriveRole::Input, 1, {2}, -35 * pi / 180, 0.5 * plan.line.mean, 0}};
}

}  // namespace

Result strainWave(const Stage& stage, const std::string& path) {
  const StrainWaveGeometry& g = stage.strainWave;
  Needs needs(path);
  needs.positive(g.flexTeeth, "flexTeeth", "e.g. 200");
  needs.positive(g.circularTeeth, "circularTeeth", "two more than the flexspline's");
  if (needs.met() && g.circularTeeth <= g.flexTeeth)
    needs.add("not more than the flexspline has", "circularTeeth",
              fmt::format("give {:.0f}", g.flexTeeth + 2));
  if (needs.met() && g.circularTeeth > 1.25 * g.flexTeeth)
    needs.add("too many for a flexspline to reach", "circularTeeth",
              fmt::format("give {:.0f}", g.flexTeeth + 2));
  if (!needs.met()) return needs.errors();
  const Plan plan = planOf(g);
  DriveShapes shapes;
  shapes.bodies = {circularSpline(plan), flexspline(plan), generator(plan)};
  addLabels(shapes, plan);
  if (plan.line.exaggeration > 1)
    shapes.remarks.push_back(
        fmt::format("Deflection drawn {:.0f} times as large.", plan.line.exaggeration));
  shapes.ratio = 1 / (plan.flexTurns ? plan.flexRate() : plan.circularRate());
  shapes.ratioFormula = plan.flexTurns ? "z_f/(z_c \u2212 z_f), reversed" : "z_c/(z_c \u2212 z_f)";
  return shapes;
}

}  // namespace jw::drive
