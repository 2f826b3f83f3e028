#include "core/checks/evaluation.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "core/checks/acceptance_check.h"
#include "core/checks/check_writer.h"
#include "core/checks/headline_quantities.h"
#include "core/checks/mix_evaluation.h"
#include "core/physics/load_input.h"

namespace jw {
namespace {

/// Keeps the value, or takes down what is missing.
template <class T>
void keep(std::optional<T>& slot, tl::expected<T, InputError> found, Part part,
          Evaluation& result) {
  if (found) {
    slot = std::move(*found);
  } else {
    result.missing.push_back({found.error(), part});
  }
}

void evaluateMotion(const Project& project, Evaluation& result) {
  keep(result.cycle, sampleCycle(project.cycle), Part::Cycle, result);
  if (!result.cycle) return;
  for (const InputError& warning : result.cycle->warnings) result.notices.push_back({warning});
  const std::vector<InputError> lacking = loadInputErrors(project.load);
  for (const InputError& error : lacking) result.missing.push_back({error, Part::Load});
  if (!lacking.empty()) return;
  for (InputError& text : loadRemarks(project.load, *result.cycle)) {
    result.notices.push_back({std::move(text)});
  }
  result.load = loadTorque(*result.cycle, project.cycle, project.load);
  if (result.load->total.allFinite()) return;
  result.load.reset();
  const InputError error{"the load torque is too large to compute", "cycle",
                         "check the durations, travels and inertias for a slip of the decimal"};
  result.missing.push_back({error, Part::Load});
}

void noteStages(const std::vector<StageData>& stages, Evaluation& result) {
  for (std::size_t k = 0; k < stages.size(); ++k) {
    for (const InputError& text : stages[k].contradictions) result.notices.push_back({text});
    if (stages[k].creepAtSlip > 0) {
      result.notices.push_back(
          {{"creeps under load: an encoder on the motor cannot know the joint's angle",
            fmt::format("transmission[{}].creepAtLimit", k),
            "measure the angle behind this stage where it matters"}});
    }
    if (!stages[k].efficiency.selfLocking()) continue;
    result.notices.push_back(
        {{"locks itself: the load cannot drive it, so the motor drives the load both ways",
          fmt::format("transmission[{}].backdrivingEfficiency", k),
          "fine if the joint need not be moved by hand; do not count on it to hold"}});
  }
}

void evaluateChain(const Project& project, Evaluation& result) {
  keep(result.stages, completeStages(project.active().transmission, project.requirements.ambient),
       Part::Stages, result);
  if (!result.stages) return;
  noteStages(*result.stages, result);
  if (!result.load) return;
  result.chain = reflectThroughChain(*result.stages, *result.cycle, result.load->total,
                                     result.load->largestInertia);
}

std::optional<ContinuousLimit> continuousPart(const Project& project,
                                              const MotorConstants& atReference,
                                              Evaluation& result) {
  std::optional<ContinuousLimit> limit;
  keep(limit, continuousLimit(project.active().motor, atReference, project.requirements),
       Part::Continuous, result);
  return limit;
}

/// Weakening works through the d axis: with L_q alone it would be guesswork.
bool lacksInductance(const Variant& variant, const MotorConstants& machine, Evaluation& result) {
  const Motor& motor = variant.motor;
  if (!variant.controller.fieldWeakening || machine.direct) return false;
  if (isSet(motor.inductance) || !isSet(motor.inductanceQ)) return false;
  const InputError error{"the inductance of the d axis is not given, only that of the q axis",
                         "motor.inductance",
                         "type it in: the controller weakens the field through it"};
  result.missing.push_back({error, Part::Motor});
  return true;
}

void evaluateMotor(const Project& project, Evaluation& result) {
  const Variant& variant = project.active();
  const auto converted = convertMotor(variant.motor);
  if (!converted) {
    result.missing.push_back({converted.error(), Part::Motor});
    return;
  }
  if (lacksInductance(variant, converted->constants, result)) return;
  for (const InputError& text : converted->contradictions) result.notices.push_back({text});
  const double inUse = temperatureInUse(variant.motor);
  result.motor = atTemperature(converted->constants, variant.motor, inUse, inUse);
  const auto lasting = continuousPart(project, converted->constants, result);
  keep(result.envelope, torqueEnvelope(variant, *result.motor, lasting), Part::Envelope, result);
}

void evaluateDemand(const Project& project, Evaluation& result) {
  if (!result.chain || !result.motor) return;
  const Variant& variant = project.active();
  if (!isSet(variant.motor.rotorInertia)) {
    const InputError error{"the rotor inertia is not given", "motor.rotorInertia",
                           "take it from the motor's data sheet"};
    result.missing.push_back({error, Part::Demand});
    return;
  }
  result.demand =
      motorDemand(*result.cycle, *result.chain, variant.motor, *result.motor, variant.controller,
                  result.envelope ? &result.envelope->limits : nullptr);
}

/// Says so when the currents were computed for another temperature than the winding settles at.
void noteTemperature(const Motor& motor, Evaluation& result) {
  constexpr double kFar = 25;  // [K]: about 10 % of resistance
  if (!result.heat || result.heat->periodic.runaway) return;
  const double assumed = temperatureInUse(motor);
  const double found = result.heat->periodic.windingMean;
  if (found < assumed + kFar) return;
  result.notices.push_back(
      {{fmt::format("the peak envelope is for {}, but the winding settles at {}",
                    formatQuantity(assumed, Quantity::Temperature),
                    formatQuantity(found, Quantity::Temperature, {}, 3)),
        "motor.windingTemperature", "type the temperature that the winding reaches in use"}});
}

/// A brake resistor that never rests is a slip.
void noteBrakeResistor(const Supply& supply, Evaluation& result) {
  const double highest = isSet(supply.voltageMax) ? supply.voltageMax : supply.voltage;
  if (!(supply.brakeVoltage <= highest)) return;
  result.notices.push_back({{"the brake resistor switches on below the bus voltage",
                             "supply.brakeVoltage", "a voltage above the highest of the bus"}});
}

/// All that the network lacks at once, not one after the other.
void evaluateHeat(const Project& project, Evaluation& result) {
  const Motor& motor = project.active().motor;
  const std::vector<InputError> lacking = missingForHeat(motor);
  for (const InputError& error : lacking) result.missing.push_back({error, Part::Heat});
  if (!lacking.empty()) return;
  keep(result.heat,
       motorHeat(project, *result.cycle, *result.chain, *result.demand, temperatureInUse(motor)),
       Part::Heat, result);
}

void evaluateHeatAndSupply(const Project& project, Evaluation& result) {
  if (!result.demand) return;
  const Variant& variant = project.active();
  evaluateHeat(project, result);
  noteTemperature(variant.motor, result);
  noteBrakeResistor(variant.supply, result);
  keep(result.supply, supplyFlow(variant.supply, *result.cycle, *result.demand), Part::Supply,
       result);
}

/// Whether a point is inside by a clear distance, read off the drawn curve: cheap where the exact
/// limit takes a search, as with field weakening.
bool clearlyInside(const EnvelopeCurve& peak, double speed, double torque) {
  const Eigen::Index n = (peak.speed.size() - 1) / 2;  // the upper edge, speeds rising
  const double upper = std::copysign(1.0, torque) * speed;
  const double* first = peak.speed.data();
  // Rounding aside: a cruise at the highest speed lies on the edge sample after sample.
  if (std::abs(upper) > first[n - 1] * (1 + 1e-12)) return false;
  const Eigen::Index at =
      std::clamp<Eigen::Index>(std::upper_bound(first, first + n, upper) - first, 1, n - 1);
  return std::abs(torque) < 0.97 * std::min(peak.torque[at - 1], peak.torque[at]);
}

/// The sample with the smallest ray factor. A ray is followed only for samples that lie outside the
/// envelope scaled by the smallest factor so far.
class TightestSearch {
 public:
  TightestSearch(const TorqueEnvelope& envelope, const Eigen::ArrayXd& speed,
                 const Eigen::ArrayXd& torque)
      : envelope_(envelope), speed_(speed), torque_(torque) {}

  void consider(Eigen::Index i) {
    if ((speed_[i] == 0 && torque_[i] == 0) || keepsInside(i)) return;
    const double factor = envelope_.lowest.rayFactor(speed_[i], torque_[i]);
    if (factor < best_.factor) best_ = {i, factor};
  }

  /// The best's neighbours, nearer and nearer, from `step` samples away.
  void refine(Eigen::Index step) {
    for (; step > 0 && best_.sample >= 0; step /= 2) {
      const Eigen::Index centre = best_.sample;
      consider(std::max<Eigen::Index>(0, centre - step));
      consider(std::min(centre + step, speed_.size() - 1));
    }
  }

  const TightestPoint& best() const { return best_; }

 private:
  bool keepsInside(Eigen::Index i) const {
    // A hair inside: of a cruise on the edge, one sample is enough.
    constexpr double kHair = 1 - 1e-9;
    if (!std::isfinite(best_.factor)) return false;
    const double f = kHair * best_.factor;
    if (envelope_.lowest.weakening &&
        clearlyInside(envelope_.lowestPeak, f * speed_[i], f * torque_[i])) {
      return true;
    }
    return envelope_.lowest.contains(f * speed_[i], f * torque_[i]);
  }

  const TorqueEnvelope& envelope_;
  const Eigen::ArrayXd& speed_;
  const Eigen::ArrayXd& torque_;
  TightestPoint best_{-1, std::numeric_limits<double>::infinity()};
};

/// The cycle's extremes, a few samples spread over it and the neighbourhood of the best first, so
/// nearly all the others cost one comparison.
TightestPoint findTightest(const TorqueEnvelope& envelope, const Eigen::ArrayXd& speed,
                           const Eigen::ArrayXd& torque) {
  TightestSearch search(envelope, speed, torque);
  Eigen::Index at = 0;
  for (const Eigen::ArrayXd& size : {Eigen::ArrayXd(speed.abs()), Eigen::ArrayXd(torque.abs()),
                                     Eigen::ArrayXd(speed * torque)}) {
    size.maxCoeff(&at);
    search.consider(at);
  }
  const Eigen::Index stride = std::max<Eigen::Index>(1, speed.size() / 32);
  for (Eigen::Index i = 0; i < speed.size(); i += stride) search.consider(i);
  search.refine(stride / 2);
  for (Eigen::Index i = 0; i < speed.size(); ++i) search.consider(i);
  return search.best();
}

void runChecks(const Project& project, Evaluation& result) {
  const int stages = static_cast<int>(project.active().transmission.size());
  for (const CheckKind& kind : checkKinds()) {
    for (int stage = kind.perStage ? 0 : -1; stage < (kind.perStage ? stages : 0); ++stage) {
      const CheckContext context{project, result, stage};
      if (kind.applies && !kind.applies(context)) continue;
      result.checks.push_back(workOut(kind, context, nullptr));
    }
  }
}

}  // namespace

Evaluation evaluate(const Project& project, std::stop_token stop) {
  Evaluation result;
  evaluateMotion(project, result);
  evaluateChain(project, result);
  evaluateMotor(project, result);
  if (stop.stop_requested()) return result.stopped = true, result;
  evaluateDemand(project, result);
  evaluateHeatAndSupply(project, result);
  if (result.demand && result.envelope) {
    result.tightest =
        findTightest(*result.envelope, result.chain->motorSpeed, result.demand->torque);
  }
  evaluateMix(project, result);
  if (stop.stop_requested()) return result.stopped = true, result;
  result.quantities = headlineQuantities(project, result);
  runChecks(project, result);
  markAccepted(project, result);
  return result;
}

Working explain(const Project& project, const Evaluation& evaluation, const Check& check) {
  Working working;
  for (const CheckKind& kind : checkKinds()) {
    if (kind.id == check.id) {
      workOut(kind, CheckContext{project, evaluation, check.stage}, &working);
    }
  }
  return working;
}

double quantityValue(const Evaluation& evaluation, std::string_view id) {
  for (const NamedQuantity& quantity : evaluation.quantities) {
    if (quantity.id == id) return quantity.value;
  }
  return kUnset;
}

}  // namespace jw
