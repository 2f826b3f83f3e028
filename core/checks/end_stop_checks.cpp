#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <span>

#include "core/checks/check_writer.h"

namespace jw {
namespace {

bool hasStops(const CheckContext& context) {
  const Load& load = context.project.load;
  return isSet(load.stopLow) || isSet(load.stopHigh);
}

/// How far the cycle goes from the place that its travel is measured from, and how far it may.
struct Reach {
  double from = 0;      ///< [rad] middle between the stops; with one stop, the cycle's far end
  double demand = 0;    ///< [rad]
  double capacity = 0;  ///< [rad]
};

Reach reachOf(const Load& load, double lowest, double highest) {
  if (!isSet(load.stopLow)) return {lowest, highest - lowest, load.stopHigh - lowest};
  if (!isSet(load.stopHigh)) return {highest, highest - lowest, highest - load.stopLow};
  const double middle = (load.stopLow + load.stopHigh) / 2;
  return {middle, std::max(highest - middle, middle - lowest), (load.stopHigh - load.stopLow) / 2};
}

/// The same as expressions.
void followReach(const Load& load, CheckWriter& w) {
  if (!isSet(load.stopLow)) return w.follows("q_max − q_min", "q_hi − q_min");
  if (!isSet(load.stopHigh)) return w.follows("q_max − q_min", "q_max − q_lo");
  w.follows("max(q_max − q_0, q_0 − q_min)", "(q_hi − q_lo) / 2");
}

/// [N·m] omega sqrt(k J) of all that turns with the joint, running into a stop of stiffness k: all
/// of its energy J omega² / 2 goes into the stop's spring.
void impact(const CheckContext& context, CheckWriter& w) {
  const Load& load = context.project.load;
  const Motor& motor = context.variant().motor;
  if (!isSet(load.stopStiffness) || !context.result.chain || !isSet(motor.rotorInertia)) return;
  w.input(load.stopStiffness, "load.stopStiffness");
  const StageChain& chain = *context.result.chain;
  const double inertia = w.value(
      chain.ratio * chain.ratio * (motor.rotorInertia + motor.brakeInertia + chain.inertiaAtMotor),
      {"J", "All that turns, at the joint", Quantity::Inertia, "kg*m^2"});
  const double speed = w.value(
      context.result.cycle->speed.abs().maxCoeff(),
      {"\u03c9", "Top speed of the cycle", Quantity::AngularSpeed, "rpm", "from the cycle"});
  w.value(speed * std::sqrt(load.stopStiffness * inertia),
          {"T_st", "Torque of running into a stop at top speed", Quantity::Torque, "N*m", "derived",
           "\u03c9 · \u221a(k_st · J)"});
  w.note(
      "T_st = \u03c9 \u221a(k_st J): energy into the stop's spring, the drive taken as rigid, motor "
      "torque and gravity not counted.");
}

void endStops(const CheckContext& context, CheckWriter& w) {
  w.formula("farthest |q \u2212 q_0| of the cycle against that of the stops");
  w.source("Plain geometry; energy of the impact: textbook mechanics");
  w.note(
      "q_0 is the middle between the stops; with one stop, the far end of the cycle. Overshoot and "
      "braking distance are not counted.");
  const Load& load = context.project.load;
  w.optionalInput(load.stopLow, "load.stopLow");
  w.optionalInput(load.stopHigh, "load.stopHigh");
  if (!w.has(Part::Cycle)) return;
  const Eigen::ArrayXd& angle = context.result.cycle->angle;
  Eigen::Index lowest = 0, highest = 0;
  angle.minCoeff(&lowest);
  angle.maxCoeff(&highest);
  w.value(angle[lowest],
          {"q_min", "Lowest angle of the cycle", Quantity::Angle, "deg", w.cycleOrigin(lowest)});
  w.value(angle[highest],
          {"q_max", "Highest angle of the cycle", Quantity::Angle, "deg", w.cycleOrigin(highest)});
  const Reach reach = reachOf(load, angle[lowest], angle[highest]);
  w.value(reach.from, {"q_0", "Measured from", Quantity::Angle, "deg"});
  followReach(load, w);
  w.at(angle[highest] - reach.from >= reach.from - angle[lowest] ? highest : lowest);
  impact(context, w);
  // A cycle that stands still beyond its only stop has no travel to compare.
  const bool outside = reach.capacity < reach.demand;
  w.compare(reach.demand, reach.capacity,
            reach.demand > 0 ? reach.capacity / reach.demand - 1
            : outside        ? -1
                             : std::numeric_limits<double>::infinity());
}

constexpr std::array kKinds{CheckKind{"joint.end_stops", "Clear of the end stops", Quantity::Angle,
                                      "deg", false, false, &hasStops, &endStops}};

}  // namespace

std::span<const CheckKind> endStopChecks() { return kKinds; }

}  // namespace jw
