// Checks of what a stage is built of: rare overloads, output bearing, geometry.
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <span>

#include <fmt/format.h>

#include "core/checks/check_writer.h"
#include "core/physics/belt_drive.h"
#include "core/physics/drive_life.h"
#include "core/physics/rolling_bearing.h"

namespace jw {
namespace {

/// A million turns at the mean speed in radians.
constexpr std::string_view kBearingLife = "a_1 · (C / P)^p · 10^6 · 2 · \u03c0 / n_av";
constexpr double kInfinity = std::numeric_limits<double>::infinity();

bool isReducer(const CheckContext& context) {
  const StageFamily family = context.drive().family;
  return family != StageFamily::Belt && family != StageFamily::Coupling;
}

bool statesMomentary(const CheckContext& context) {
  return isReducer(context) || isSet(context.drive().momentaryTorque);
}

double largestOutputTorque(const CheckContext& context) {
  return context.driveLoad().outputTorque.abs().maxCoeff();
}

/// Ratio of all stages between this one's output and the joint.
double ratioBehind(const CheckContext& context) {
  double ratio = 1;
  const auto& stages = *context.result.stages;
  for (auto k = static_cast<std::size_t>(context.stage) + 1; k < stages.size(); ++k) {
    ratio *= stages[k].stage.ratio;
  }
  return ratio;
}

/// Whether rollers slip before the momentary torque is reached.
bool slips(const CheckContext& context) {
  const double slip = context.result.stages ? context.driveData().slipTorque : kInfinity;
  return std::isfinite(slip) && !(context.drive().momentaryTorque < slip);
}

/// Torque the stage may carry a few times in its life; rollers slip beyond theirs.
double momentaryLimit(const CheckContext& context, CheckWriter& w) {
  const Stage& stage = context.drive();
  if (slips(context)) {
    return w.value(context.driveData().slipTorque,
                   {"T_slip", "Torque at which the rollers slip", Quantity::Torque, "N*m"});
  }
  return w.stageInput(stage.momentaryTorque, "momentaryTorque");
}

void torqueMomentary(const CheckContext& context, CheckWriter& w) {
  w.formula("max(T_em / N_behind, max |T_out|) against T_m");
  w.source("Momentary torque as the reducer's data state it; common practice, no source");
  w.note("Losses behind the stage are not counted. How often it may come, the data sheet says.");
  const double limit = momentaryLimit(context, w);
  if (!w.has(Part::Chain)) return;
  const double peak =
      w.value(largestOutputTorque(context),
              {"T_out", "Highest torque of the cycle", Quantity::Torque, "N*m", "from the cycle"});
  const std::string_view allowed = slips(context) ? "T_slip" : "T_m";
  const double emergency = context.project.requirements.emergencyTorque;
  if (!isSet(emergency)) {
    w.note("No emergency torque is given: only the cycle's own peak counts.");
    w.follows("T_out", allowed);
    return w.compare(peak, limit);
  }
  w.input(emergency, "requirements.emergencyTorque");
  const double behind = w.value(ratioBehind(context),
                                {"N_behind", "Ratio from here to the joint", Quantity::Ratio, "1"});
  w.follows("max(T_out, T_em / N_behind)", allowed);
  w.compare(std::max(peak, emergency / behind), limit);
}

bool statesBearing(const Stage& stage) {
  const OutputBearing& bearing = stage.bearing;
  return isSet(bearing.dynamicRating) || isSet(bearing.staticRating) ||
         isSet(bearing.pitchDiameter) || isSet(bearing.allowedMoment);
}

/// Whether the joint's load rests on this stage's bearing: the last that is given.
bool carriesJoint(const CheckContext& context) {
  const std::vector<Stage>& stages = context.variant().transmission;
  const auto behind = stages.begin() + context.stage + 1;
  return statesBearing(context.drive()) && std::none_of(behind, stages.end(), statesBearing);
}

OutputBearingLoad bearingLoad(const CheckContext& context) {
  const auto found = outputBearingLoad(*context.result.cycle, context.project.cycle,
                                       context.project.load, context.drive().bearing);
  return found.value_or(OutputBearingLoad{});
}

/// Of the day, or of the cycle if it is all there is.
WearMeans bearingMeans(const CheckContext& context) {
  if (context.result.mix && context.result.mix->bearing) return *context.result.mix->bearing;
  const OutputBearingLoad load = bearingLoad(context);
  return {load.equivalentLoad, load.meanSpeed};
}

void bearingLife(const CheckContext& context, CheckWriter& w) {
  w.formula("L = a_1 (C / P)^p 10^6 / n_av, P = X (F_r + 2 M / d_pw) + Y F_a, against L_w");
  w.source(
      "ISO 281 basic rating life, read second-hand; X and Y of crossed rollers: common "
      "practice, no source");
  const OutputBearing& bearing = context.drive().bearing;
  w.stageInput(bearing.dynamicRating, "bearingDynamicRating");
  w.stageInput(bearing.pitchDiameter, "bearingPitchDiameter");
  const Requirements& wanted = context.project.requirements;
  w.input(wanted.life, "requirements.life");
  w.input(wanted.reliability, "requirements.reliability");
  if (!w.has(Part::Cycle) || !w.has(Part::Load) || !isSet(bearing.pitchDiameter)) return;
  if (!w.hasDay()) return;
  const WearMeans means = bearingMeans(context);
  w.value(means.load, {"P", "Mean equivalent load", Quantity::Force, "N", w.meanOrigin()});
  w.value(means.speed, {"n_av", "Mean joint speed", Quantity::AngularSpeed, "rpm", w.meanOrigin()});
  w.value(lifeExponent(bearing.element),
          {"p", "Exponent of life over load", Quantity::Number, "1", "ISO 281"});
  const double basic =
      ratingLife(bearing.dynamicRating, means.load, lifeExponent(bearing.element), means.speed);
  const double factor =
      w.value(reliabilityFactor(wanted.reliability),
              {"a_1", "Factor of the reliability", Quantity::Number, "1", "derived", kReliability});
  w.follows("L_w", "L");
  w.compare(wanted.life, w.value(factor * basic, {"L", "Life reached", Quantity::Time, "h",
                                                  "derived", kBearingLife}));
}

void bearingStatic(const CheckContext& context, CheckWriter& w) {
  w.formula("s_0 P_0 against C_0, P_0 = F_r + 2 M / d_pw + 0.44 F_a");
  w.source(
      "ISO 76 static safety, from memory; equivalent load of crossed rollers: common "
      "practice, no source");
  const OutputBearing& bearing = context.drive().bearing;
  w.stageInput(bearing.staticRating, "bearingStaticRating");
  w.stageInput(bearing.pitchDiameter, "bearingPitchDiameter");
  const double factor =
      isSet(bearing.staticFactor)
          ? w.stageInput(bearing.staticFactor, "bearingStaticFactor")
          : w.value(1.5, {"s_0", "Static safety wanted", Quantity::Number, "1", "usual value"});
  if (!w.has(Part::Cycle) || !w.has(Part::Load) || !isSet(bearing.pitchDiameter)) return;
  const OutputBearingLoad load = bearingLoad(context);
  Eigen::Index at = 0;
  load.staticLoad.maxCoeff(&at);
  w.at(at);
  w.value(load.worstStaticLoad,
          {"P_0", "Static equivalent load, largest", Quantity::Force, "N", w.cycleOrigin(at)});
  w.value(load.worstMoment,
          {"M", "Tilting moment, largest", Quantity::Torque, "N*m", "from the cycle"});
  w.follows("s_0 · P_0", "C_0");
  w.compare(factor * load.worstStaticLoad, bearing.staticRating);
}

bool statesMoment(const CheckContext& context) {
  return carriesJoint(context) && isSet(context.drive().bearing.allowedMoment);
}

void bearingMoment(const CheckContext& context, CheckWriter& w) {
  w.formula("max M against M_c");
  w.source("Tilting moment as the bearing's data state it; common practice, no source");
  const double limit = w.stageInput(context.drive().bearing.allowedMoment, "bearingMoment");
  if (!w.has(Part::Cycle) || !w.has(Part::Load)) return;
  const auto forces =
      outputBearingForces(*context.result.cycle, context.project.cycle, context.project.load);
  Eigen::Index at = 0;
  const double moment = forces.moment.maxCoeff(&at);
  w.at(at);
  w.value(moment, {"M", "Tilting moment, largest", Quantity::Torque, "N*m", w.cycleOrigin(at)});
  w.follows("M", "M_c");
  w.compare(moment, limit);
}

bool hasGeometry(const CheckContext& context) {
  StageData data;
  data.stage = context.drive();
  return !geometryConditions(data, kUnset).empty();
}

/// Whether a condition depends on the load; the others are met or not, with no margin to want.
bool dependsOnLoad(const GeometryCondition& condition) {
  return condition.quantity == Quantity::Pressure || condition.quantity == Quantity::Force;
}

/// Demand over capacity; infinite where something that has to be nothing is not, nothing where a
/// condition of shape alone is met.
double used(const GeometryCondition& condition) {
  if (condition.holds() && !dependsOnLoad(condition)) return 0;
  if (condition.capacity > 0) return std::max(0.0, condition.demand / condition.capacity);
  return condition.holds() ? 0 : kInfinity;
}

void showConditions(const GeometryConditions& conditions, CheckWriter& w) {
  int k = 0;
  for (const GeometryCondition& condition : conditions) {
    ++k;
    const std::string demand = fmt::format("d_{}", k);
    const std::string capacity = fmt::format("c_{}", k);
    const std::string allowed = condition.label + ": allowed";
    w.value(condition.demand, {demand, condition.label, condition.quantity, condition.unit});
    w.value(condition.capacity, {capacity, allowed, condition.quantity, condition.unit});
  }
}

void geometry(const CheckContext& context, CheckWriter& w) {
  w.formula("max(d_k / c_k) against 1");
  if (!w.has(Part::Stages) || !w.has(Part::Chain)) return;
  const auto conditions = geometryConditions(context.driveData(), largestOutputTorque(context));
  const auto worst = std::max_element(
      conditions.begin(), conditions.end(),
      [](const GeometryCondition& a, const GeometryCondition& b) { return used(a) < used(b); });
  if (worst == conditions.end()) return;
  if (w.explains()) showConditions(conditions, w);
  w.source(worst->source);
  w.note(used(*worst) > 0 ? fmt::format("Tightest: {}.", worst->label)
                          : "Every condition of shape is met; they have no margin to want.");
  const auto k = 1 + std::distance(conditions.begin(), worst);
  const std::string share = w.explains() ? fmt::format("max(0, d_{} / c_{})", k, k) : std::string();
  const bool divides = used(*worst) > 0 && worst->capacity > 0;
  const double demand =
      w.value(used(*worst), {"u", "Share used of the tightest condition", Quantity::Number, "1",
                             "derived", divides ? std::string_view(share) : std::string_view()});
  w.follows("u", "1");
  w.compare(demand, 1);
}

bool isBelt(const CheckContext& context) {
  const Stage& stage = context.drive();
  return stage.family == StageFamily::Belt &&
         (isSet(stage.belt.motorPulleyTeeth) || isSet(stage.belt.centreDistance));
}

void teethInMesh(const CheckContext& context, CheckWriter& w) {
  w.formula("z_m against z arc / 2\u03c0 of the smaller pulley");
  w.source("Least teeth in mesh: common practice, no source; arc of contact of the open belt");
  const BeltGeometry& belt = context.drive().belt;
  w.stageInput(belt.motorPulleyTeeth, "motorPulleyTeeth");
  w.stageInput(belt.jointPulleyTeeth, "jointPulleyTeeth");
  w.stageInput(belt.pitch, "pitch");
  w.stageInput(belt.centreDistance, "centreDistance");
  const double wanted =
      isSet(belt.teethInMeshMin)
          ? w.stageInput(belt.teethInMeshMin, "teethInMeshMin")
          : w.value(6, {"z_m", "Least teeth in mesh", Quantity::Number, "1", "usual value"});
  const auto run = beltRun(belt);
  if (!run) return;
  w.value(run->smallWrap, {"\u03b8", "Arc of contact", Quantity::Angle, "deg"});
  w.value(std::min(belt.motorPulleyTeeth, belt.jointPulleyTeeth),
          {"z_s", "Teeth of the smaller pulley", Quantity::Number, "1"});
  w.follows("z_m", "z");
  w.compare(wanted, w.value(run->teethInMesh, {"z", "Teeth in mesh", Quantity::Number, "1",
                                               "derived", "z_s · \u03b8 / (2 · \u03c0)"}));
}

constexpr std::array kKinds{
    CheckKind{"drive.torque_momentary", "momentary torque", Quantity::Torque, "N*m", true, false,
              &statesMomentary, &torqueMomentary},
    CheckKind{"drive.bearing_life", "output bearing life", Quantity::Time, "h", true, true,
              &carriesJoint, &bearingLife},
    CheckKind{"drive.bearing_static", "output bearing at rest", Quantity::Force, "N", true, false,
              &carriesJoint, &bearingStatic},
    CheckKind{"drive.bearing_moment", "output bearing moment", Quantity::Torque, "N*m", true, false,
              &statesMoment, &bearingMoment},
    CheckKind{"drive.geometry", "geometry", Quantity::Number, "1", true, false, &hasGeometry,
              &geometry},
    CheckKind{"drive.teeth_in_mesh", "teeth in mesh", Quantity::Number, "1", true, true, &isBelt,
              &teethInMesh},
};

}  // namespace

std::span<const CheckKind> stageChecks() { return kKinds; }

}  // namespace jw
