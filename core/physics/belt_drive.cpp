#include "core/physics/belt_drive.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/physics/bracketed_root.h"
#include "core/physics/if_given.h"

namespace jw {
namespace {

using std::numbers::pi;

double lengthAt(double centreDistance, double motorDiameter, double jointDiameter) {
  const double half = std::abs(jointDiameter - motorDiameter) / 2;
  const double angle = std::asin(std::min(half / centreDistance, 1.0));
  return 2 * centreDistance * std::cos(angle) + pi / 2 * (motorDiameter + jointDiameter) +
         2 * angle * half;
}

/// Working pull [N], the difference of the tensions.
double pullOf(const BeltGeometry& belt, double outputTorque) {
  return 2 * std::abs(outputTorque) / pulleyDiameter(belt, belt.jointPulleyTeeth);
}

}  // namespace

std::optional<double> beltRatio(const BeltGeometry& belt) {
  return ifGiven(belt.jointPulleyTeeth / belt.motorPulleyTeeth);
}

double pulleyDiameter(const BeltGeometry& belt, double teeth) { return belt.pitch * teeth / pi; }

std::optional<BeltRun> beltRun(const BeltGeometry& belt) {
  BeltRun run;
  run.motorDiameter = pulleyDiameter(belt, belt.motorPulleyTeeth);
  run.jointDiameter = pulleyDiameter(belt, belt.jointPulleyTeeth);
  run.spanAngle =
      std::asin(std::abs(run.jointDiameter - run.motorDiameter) / (2 * belt.centreDistance));
  run.freeLength = belt.centreDistance * std::cos(run.spanAngle);
  run.smallWrap = pi - 2 * run.spanAngle;
  run.largeWrap = pi + 2 * run.spanAngle;
  const double smaller = std::min(belt.motorPulleyTeeth, belt.jointPulleyTeeth);
  run.teethInMesh = smaller * run.smallWrap / (2 * pi);
  run.length = lengthAt(belt.centreDistance, run.motorDiameter, run.jointDiameter);
  return std::isfinite(run.spanAngle + run.freeLength) ? std::optional(run) : std::nullopt;
}

std::optional<BeltLength> nearestBelt(const BeltGeometry& belt) {
  const auto run = beltRun(belt);
  if (!run) return std::nullopt;
  BeltLength result;
  result.teeth = run->length / belt.pitch;
  result.wholeTeeth = std::round(result.teeth);
  const double least = std::abs(run->jointDiameter - run->motorDiameter) / 2;
  const auto excess = [&](double distance) {
    return lengthAt(distance, run->motorDiameter, run->jointDiameter) -
           result.wholeTeeth * belt.pitch;
  };
  const double low = std::max(least, 1e-9 * belt.centreDistance);
  if (excess(low) > 0) return std::nullopt;
  result.centreDistance = bracketedRoot(excess, low, belt.centreDistance + belt.pitch);
  return result;
}

std::optional<BeltStiffness> beltStiffness(const BeltGeometry& belt) {
  const auto run = beltRun(belt);
  if (!run || !isSet(belt.specificStiffness)) return std::nullopt;
  const double span = belt.specificStiffness / run->freeLength;
  const double input = span * run->motorDiameter * run->motorDiameter / 4;
  const double output = span * run->jointDiameter * run->jointDiameter / 4;
  if (!std::isfinite(span)) return std::nullopt;
  return BeltStiffness{span, 2 * input, 2 * output, input, output};
}

std::optional<double> slackTorque(const BeltGeometry& belt) {
  return ifGiven(belt.spanPretension * pulleyDiameter(belt, belt.jointPulleyTeeth));
}

std::optional<BeltForces> beltForces(const BeltGeometry& belt, double outputTorque) {
  const auto run = beltRun(belt);
  const double pull = pullOf(belt, outputTorque);
  if (!run || !isSet(belt.spanPretension) || !std::isfinite(pull)) return std::nullopt;
  const bool bothTight = pull <= 2 * belt.spanPretension;
  BeltForces forces{bothTight ? belt.spanPretension + pull / 2 : pull,
                    bothTight ? belt.spanPretension - pull / 2 : 0, 0};
  forces.shaft = std::sqrt(forces.tight * forces.tight + forces.slack * forces.slack +
                           2 * forces.tight * forces.slack * std::cos(2 * run->spanAngle));
  return forces;
}

GeometryConditions beltConditions(const BeltGeometry& belt, double outputTorque) {
  GeometryConditions all;
  const double diameters = pulleyDiameter(belt, belt.motorPulleyTeeth + belt.jointPulleyTeeth);
  if (std::isfinite(diameters + belt.centreDistance)) {
    all.push_back({"the pulleys clear each other", diameters / 2, belt.centreDistance,
                   Quantity::Length, "mm", "centreDistance", "geometry"});
  }
  if (const auto run = beltRun(belt)) {
    all.push_back({"teeth in mesh on the smaller pulley",
                   isSet(belt.teethInMeshMin) ? belt.teethInMeshMin : 6, run->teethInMesh,
                   Quantity::Number, "1", "centreDistance", "common practice, no source"});
  }
  const double pull = pullOf(belt, outputTorque);
  if (std::isfinite(pull) && isSet(belt.spanPretension)) {
    all.push_back({"half the working pull, that the slack span stays tight", pull / 2,
                   belt.spanPretension, Quantity::Force, "N", "spanPretension",
                   "common practice, no source"});
  }
  return all;
}

}  // namespace jw
