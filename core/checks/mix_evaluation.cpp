#include "core/checks/mix_evaluation.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "core/motion/cycle_reading.h"
#include "core/physics/drive_life.h"
#include "core/physics/load_input.h"
#include "core/physics/rolling_bearing.h"

namespace jw {
namespace {

/// What a cycle of the mix is evaluated to; of the cycle shown it is lent, not made.
struct CycleParts {
  const SampledCycle* cycle = nullptr;
  const StageChain* chain = nullptr;
  const MotorDemand* demand = nullptr;
  const MotorHeat* heat = nullptr;
  const SupplyFlow* supply = nullptr;
};

template <class T>
const T* lent(const std::optional<T>& part) {
  return part ? &*part : nullptr;
}

CycleParts shownParts(const Evaluation& result) {
  return {lent(result.cycle), lent(result.chain), lent(result.demand), lent(result.heat),
          lent(result.supply)};
}

/// The bearing that carries the joint: the last whose size is given.
const Stage* bearingStage(const Evaluation& result) {
  for (auto stage = result.stages->rbegin(); stage != result.stages->rend(); ++stage) {
    if (stage->stage.bearing.pitchDiameter > 0) return &stage->stage;
  }
  return nullptr;
}

double meanOverSteps(const HeatLoad& load, const Eigen::ArrayXd& loss) {
  return (loss * load.duration).sum() / load.duration.sum();
}

void addWear(const Project& project, const Cycle& source, const Evaluation& result,
             const CycleParts& parts, MixedCycle& mixed) {
  for (std::size_t k = 0; k < parts.chain->stages.size(); ++k) {
    const StageLoad& load = parts.chain->stages[k];
    const double exponent = (*result.stages)[k].stage.lifeExponent;
    mixed.stages.push_back(
        {averageTorque(*parts.cycle, load.outputTorque, load.inputSpeed, exponent),
         averageSpeed(*parts.cycle, load.inputSpeed)});
  }
  const Stage* stage = bearingStage(result);
  if (stage == nullptr) return;
  const auto bearing = outputBearingLoad(*parts.cycle, source, project.load, stage->bearing);
  mixed.bearing = WearMeans{bearing->equivalentLoad, bearing->meanSpeed};
}

void addDemand(const CycleParts& parts, MixedCycle& mixed) {
  mixed.torqueRms = parts.demand->torqueRms;
  mixed.currentRms = parts.demand->currentRms;
  mixed.torquePeak = parts.demand->torque.abs().maxCoeff();
  mixed.speedPeak = parts.chain->motorSpeed.abs().maxCoeff();
  if (parts.supply != nullptr) mixed.powerMean = parts.supply->powerMean;
  if (parts.heat == nullptr) return;
  const MotorHeat& heat = *parts.heat;
  const PeriodicHeat& state = heat.periodic;
  mixed.copper20 = meanOverSteps(heat.load, heat.load.copper20) * heat.fluxFactor * heat.fluxFactor;
  mixed.housingLoss = meanOverSteps(heat.load, heat.load.housing);
  mixed.heat = MixedHeat{state.runaway, state.windingPeak, state.windingMean, state.housingPeak,
                         state.housingMean};
}

/// "otherCycles[0].segments[1].travel" for "cycle.segments[1].travel"; other paths stay.
InputError movedTo(const std::string& path, InputError error) {
  constexpr std::string_view kShown = "cycle";
  const bool inside = error.where == kShown || error.where.starts_with("cycle.");
  if (inside) error.where = path + error.where.substr(kShown.size());
  return error;
}

/// Evaluates the cycles and joins them.
class MixMaker {
 public:
  MixMaker(const Project& project, Evaluation& result)
      : project_(project), result_(result), entries_(mixEntries(project)) {}

  void run() {
    if (entries_.empty() || !result_.stages) return;
    for (const MixEntry& entry : entries_) {
      if (!addCycle(entry)) return;
    }
    std::vector<double> periods;
    for (const MixedCycle& cycle : mix_.cycles) periods.push_back(cycle.period);
    const auto shares = mixShares(entries_, periods);
    if (!shares) return miss(shares.error());
    if (isShownAllDay(*shares)) return;
    for (std::size_t k = 0; k < mix_.cycles.size(); ++k) mix_.cycles[k].share = shares->share[k];
    mix_.idle = shares->idle;
    combine(shares->share);
    notePeaks();
    result_.mix = std::move(mix_);
  }

 private:
  void miss(InputError error) { result_.missing.push_back({std::move(error), Part::Mix}); }

  bool isShownAllDay(const MixShares& shares) const {
    return entries_.size() == 1 && entries_[0].cycle == &project_.cycle && shares.idle == 0;
  }

  bool addCycle(const MixEntry& entry) {
    MixedCycle mixed;
    mixed.path = entry.path;
    mixed.title = entry.title;
    if (entry.cycle == &project_.cycle) {
      if (!result_.chain) return false;  // what it lacks is said already
      addParts(entry, shownParts(result_), mixed);
      return true;
    }
    return evaluateOther(entry, mixed);
  }

  void addParts(const MixEntry& entry, const CycleParts& parts, MixedCycle& mixed) {
    mixed.period = parts.cycle->period;
    addWear(project_, *entry.cycle, result_, parts, mixed);
    if (parts.demand != nullptr) addDemand(parts, mixed);
    mix_.cycles.push_back(std::move(mixed));
  }

  bool evaluateOther(const MixEntry& entry, MixedCycle& mixed) {
    const auto cycle = sampleCycle(*entry.cycle);
    if (!cycle) return miss(movedTo(entry.path, cycle.error())), false;
    for (const InputError& warning : cycle->warnings)
      result_.notices.push_back({movedTo(entry.path, warning)});
    if (!loadInputErrors(project_.load).empty()) return false;  // said already
    const LoadTorque load = loadTorque(*cycle, *entry.cycle, project_.load);
    if (!load.total.allFinite()) {
      miss({"the load torque is too large to compute", entry.path,
            "check the durations and travels for a slip of the decimal"});
      return false;
    }
    const StageChain chain =
        reflectThroughChain(*result_.stages, *cycle, load.total, load.largestInertia);
    addMotor(entry, *cycle, chain, mixed);
    return true;
  }

  void addMotor(const MixEntry& entry, const SampledCycle& cycle, const StageChain& chain,
                MixedCycle& mixed) {
    CycleParts parts{&cycle, &chain};
    const Variant& variant = project_.active();
    if (!result_.motor || !isSet(variant.motor.rotorInertia)) {
      return addParts(entry, parts, mixed);
    }
    const MotorDemand demand =
        motorDemand(cycle, chain, variant.motor, *result_.motor, variant.controller,
                    result_.envelope ? &result_.envelope->limits : nullptr);
    parts.demand = &demand;
    const auto heat = motorHeat(project_, cycle, chain, demand, temperatureInUse(variant.motor));
    if (heat) parts.heat = &*heat;  // what it lacks is said of the cycle shown
    const auto supply = supplyFlow(variant.supply, cycle, demand);
    if (supply) {
      parts.supply = &*supply;
    } else if (result_.supply) {
      result_.missing.push_back({supply.error(), Part::Supply});
    }
    addParts(entry, parts, mixed);
  }

  /// One value of every cycle.
  template <class Member>
  std::vector<double> each(Member member) const {
    std::vector<double> values;
    for (const MixedCycle& cycle : mix_.cycles) values.push_back(cycle.*member);
    return values;
  }

  void combine(const std::vector<double>& share) {
    for (std::size_t k = 0; k < result_.stages->size(); ++k) {
      std::vector<WearMeans> wear;
      for (const MixedCycle& cycle : mix_.cycles) wear.push_back(cycle.stages[k]);
      mix_.stages.push_back(mixedWear(wear, share, (*result_.stages)[k].stage.lifeExponent));
    }
    if (const Stage* stage = bearingStage(result_)) {
      std::vector<WearMeans> wear;
      for (const MixedCycle& cycle : mix_.cycles) wear.push_back(*cycle.bearing);
      mix_.bearing = mixedWear(wear, share, lifeExponent(stage->bearing.element));
    }
    mix_.torqueRms = mixedRms(each(&MixedCycle::torqueRms), share);
    mix_.currentRms = mixedRms(each(&MixedCycle::currentRms), share);
    mix_.powerMean = mixedMean(each(&MixedCycle::powerMean), share);
    combineHeat(share);
  }

  void combineHeat(const std::vector<double>& share) {
    const Motor& motor = project_.active().motor;
    const auto network = heatNetwork(motor, project_.requirements.ambient);
    const double copper = mixedMean(each(&MixedCycle::copper20), share);
    if (!network || !isSet(copper)) return;
    const Eigen::Vector2d mean =
        settledMeanHeat(motor, *network, copper, mixedMean(each(&MixedCycle::housingLoss), share),
                        temperatureInUse(motor));
    mix_.windingMean = mean[0];
    mix_.housingMean = mean[1];
  }

  /// Peaks are judged on the cycle shown: says so where another one asks for more.
  void notePeaks() {
    if (!result_.demand) return;
    constexpr double kMore = 1 + 1e-6;
    const double torque = kMore * result_.demand->torque.abs().maxCoeff();
    const double speed = kMore * result_.chain->motorSpeed.abs().maxCoeff();
    for (const MixedCycle& cycle : mix_.cycles) {
      const bool more = cycle.torquePeak > torque;
      if (!more && !(cycle.speedPeak > speed)) continue;
      const std::string peak =
          more ? "a higher motor torque, " + formatQuantity(cycle.torquePeak, Quantity::Torque)
               : "a higher motor speed, " + formatQuantity(cycle.speedPeak, Quantity::AngularSpeed);
      result_.notices.push_back(
          {{fmt::format("{} asks for {}, than the cycle shown", cycle.title, peak), cycle.path,
            "peaks are judged on the cycle shown: show that one to judge its own"}});
    }
  }

  const Project& project_;
  Evaluation& result_;
  std::vector<MixEntry> entries_;
  DailyMix mix_;
};

/// Runaway beyond every temperature.
double windingRank(const MixedHeat& heat) {
  return heat.runaway ? std::numeric_limits<double>::infinity() : heat.windingPeak;
}

}  // namespace

const MixedCycle* DailyMix::hottest() const {
  const MixedCycle* found = nullptr;
  for (const MixedCycle& cycle : cycles) {
    if (!cycle.heat) continue;
    if (found == nullptr || windingRank(*cycle.heat) > windingRank(*found->heat)) found = &cycle;
  }
  return found;
}

void evaluateMix(const Project& project, Evaluation& result) { MixMaker(project, result).run(); }

}  // namespace jw
