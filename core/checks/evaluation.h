#pragma once

#include <optional>
#include <stop_token>
#include <string>
#include <string_view>
#include <vector>

#include "core/checks/check.h"
#include "core/checks/daily_mix_result.h"
#include "core/model/project.h"
#include "core/motion/sampled_cycle.h"
#include "core/physics/load_torque.h"
#include "core/physics/motor_constants.h"
#include "core/physics/motor_demand.h"
#include "core/physics/motor_heat.h"
#include "core/physics/stage_chain.h"
#include "core/physics/supply_flow.h"
#include "core/physics/torque_envelope.h"

namespace jw {

/// A headline figure of the design. Ids are API ("joint.torque_peak").
struct NamedQuantity {
  std::string_view id;
  std::string_view label;
  double value;  ///< internal unit; NaN when an input is missing
  Quantity quantity;
  std::string_view unit;  ///< display and report unit
};

/// A remark about the inputs that does not stop the evaluation.
struct Notice {
  InputError text;
};

/// The parts of an evaluation, each built on earlier ones.
enum class Part {
  Cycle,
  Load,
  Stages,
  Chain,
  Motor,
  Demand,
  Heat,
  Supply,
  Continuous,
  Envelope,
  Mix
};

/// An input whose absence or error kept a part from being evaluated.
struct MissingInput : InputError {
  Part part = Part::Cycle;
};

/// Where the load comes nearest to the envelope's edge.
struct TightestPoint {
  Eigen::Index sample = -1;  ///< index into the cycle, -1 if the cycle asks for nothing
  double factor = 0;         ///< edge = factor x point, along the ray from the origin
};

/// All that follows from a project. Parts whose inputs are missing are empty, never zero.
struct Evaluation {
  std::optional<SampledCycle> cycle;
  std::optional<LoadTorque> load;
  std::optional<std::vector<StageData>> stages;  ///< completed from their parts, motor first
  std::optional<StageChain> chain;
  std::optional<MotorConstants> motor;  ///< at the temperature in use
  std::optional<MotorDemand> demand;
  std::optional<MotorHeat> heat;     ///< periodic temperatures
  std::optional<SupplyFlow> supply;  ///< energy drawn and returned
  std::optional<TorqueEnvelope> envelope;
  std::optional<TightestPoint> tightest;
  std::optional<DailyMix> mix;  ///< none if the cycle shown runs all day
  std::vector<NamedQuantity> quantities;
  std::vector<Check> checks;  ///< in catalogue order
  std::vector<Notice> notices;
  std::vector<MissingInput> missing;
  bool stopped = false;  ///< a stop was asked for; the rest is not complete
};

/// Evaluates the active variant. A pure function: same project, same result to the last bit.
Evaluation evaluate(const Project& project, std::stop_token stop = {});

/// The working of one of `evaluation`'s checks.
Working explain(const Project& project, const Evaluation& evaluation, const Check& check);

/// The working of one of `evaluation`'s headline figures; empty if no figure has this id.
Working explainQuantity(const Project& project, const Evaluation& evaluation, std::string_view id);

/// The headline figure with this id, NaN if there is none.
double quantityValue(const Evaluation& evaluation, std::string_view id);

}  // namespace jw
