#include "core/studies/study_inputs.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

#include "core/physics/motor_heat.h"

namespace jw {
namespace {

using Keys = std::span<const std::string_view>;

bool isAmong(std::string_view key, Keys keys) {
  return std::find(keys.begin(), keys.end(), key) != keys.end();
}

/// Places without a zero of their own, counts that go together, what no margin reads, and constants
/// of nature, of materials and of the method.
constexpr auto kLeftOut = std::to_array<std::string_view>(
    {"axisTilt",     "linkAngle",      "payloadAngle", "springAngle", "extensionArmAngle",
     "startAngle",   "target",         "travelMin",    "travelMax",   "extensionPostAngle",
     "stopLow",      "stopHigh",       "helixAngle",   "downX",       "downY",
     "downZ",        "samples",        "smoothing",    "repeats",     "polePairs",
     "targetMargin", "acceptedBand",   "planetSets",   "gravity",     "lifeExponent",
     "poissonRatio", "elasticModulus", "pressureAngle"});

constexpr auto kGiven = std::to_array<std::string_view>(
    {"ambient", "altitude", "noLoadSpeed", "noLoadSpeed2", "ratedSpeed", "stribeckSpeed",
     "stiffnessTorque1", "stiffnessTorque2", "shift"});

constexpr auto kOfTheJob = std::to_array<std::string_view>(
    {"payloadMass", "payloadDistance", "payloadInertia", "externalTorque", "radialForce",
     "axialForce", "tiltingMoment"});

constexpr auto kLosses = std::to_array<std::string_view>(
    {"coulombFriction", "viscousFriction", "breakawayFriction", "dragTorque", "dragDamping",
     "startingTorque", "backdrivingTorque", "pinFriction", "outputPinFriction", "bearingFriction",
     "noLoadCurrent", "noLoadCurrent2", "idlePower", "lossPerAmpere", "lossResistance",
     "sourceResistance", "backlash", "hysteresis", "transmissionError"});

bool isTeeth(const FieldInfo& info) {
  const bool teeth = info.key.find("Teeth") != info.key.npos;
  return info.kind == FieldKind::Integer && (teeth || info.key == "pins" || info.key == "lobes");
}

bool isInput(const FieldRef& field) {
  const FieldInfo& info = *field.info;
  if (info.kind != FieldKind::Number && info.kind != FieldKind::Integer) return false;
  if (info.applies && !info.applies(field.owner)) return false;
  if (isAmong(info.key, kLeftOut) || isTeeth(info)) return false;
  if (info.quantity == Quantity::TemperatureCoefficient) return false;
  return isSet(field.number()) && field.number() != 0;
}

InputRole roleOf(const FieldRef& field) {
  const FieldInfo& info = *field.info;
  const bool limit = info.key.ends_with("TemperatureMax");
  if (info.quantity == Quantity::Temperature && !limit) return InputRole::Given;
  if (isAmong(info.key, kGiven)) return InputRole::Given;
  const std::string_view path = field.path;
  const bool job = path.starts_with("requirements.") || path.starts_with("cycle.") ||
                   path.starts_with("otherCycles[");
  const bool carried = path.starts_with("load.") && isAmong(info.key, kOfTheJob);
  return job || carried ? InputRole::AsksLess : InputRole::Design;
}

BetterWay betterWay(const FieldRef& field) {
  const std::string_view key = field.info->key;
  if (isAmong(key, kLosses) || field.path == "motor.resistance") return BetterWay::Down;
  return key.ends_with("fficiency") ? BetterWay::Up : BetterWay::Either;
}

double scaleOf(const FieldRef& field, const Project& project) {
  const double value = field.number();
  if (field.info->quantity != Quantity::Temperature) return value;
  const double ambient = project.requirements.ambient;
  return field.info->key == "ambient" ? windingLimit(project.active().motor) - ambient
                                      : value - ambient;
}

std::string lowered(std::string_view label) {
  std::string text(label);
  const auto isAscii = [](char c) { return c >= 'A' && c <= 'Z'; };
  // An abbreviation keeps its capitals.
  if (text.size() > 1 && isAscii(text[0]) && !isAscii(text[1])) {
    text[0] = static_cast<char>(text[0] - 'A' + 'a');
  }
  return text;
}

std::string nameOr(const std::string& name, std::string fallback) {
  return name.empty() ? fallback : name;
}

/// Whose field it is where the label alone does not say.
std::string ownerOf(const Project& project, std::string_view path) {
  const auto index = [&](std::string_view head) {
    return static_cast<std::size_t>(std::stoul(std::string(path.substr(head.size()))));
  };
  constexpr std::string_view kStage = "transmission[", kMove = "cycle.segments[",
                             kMass = "load.masses[";
  if (path.starts_with("supply.")) return "supply";
  if (path.starts_with("controller.")) return "controller";
  if (path.starts_with("motor.")) return "motor";
  if (path.starts_with(kStage)) {
    const std::size_t at = index(kStage);
    return nameOr(project.active().transmission[at].name, "stage " + std::to_string(at + 1));
  }
  if (path.starts_with(kMove)) {
    const std::size_t at = index(kMove);
    return nameOr(project.cycle.segments[at].name, "move " + std::to_string(at + 1));
  }
  if (path.starts_with(kMass)) {
    const std::size_t at = index(kMass);
    return nameOr(project.load.masses[at].name, "mass " + std::to_string(at + 1));
  }
  return path.starts_with("otherCycles[") ? "other cycle" : "";
}

}  // namespace

std::string inputLabel(const Project& project, const StudyInput& input) {
  const std::string owner = ownerOf(project, input.path);
  const std::string label = lowered(input.info->label);
  if (owner.empty() || label.starts_with(owner + ' ')) return label;
  return owner + ' ' + label;
}

std::vector<StudyInput> studyInputs(const Project& project) {
  std::vector<StudyInput> inputs;
  for (const FieldRef& field : allFields(project)) {
    if (!isInput(field)) continue;
    const double scale = scaleOf(field, project);
    if (scale == 0 || !std::isfinite(scale)) continue;
    inputs.push_back(
        {field.path, field.info, field.number(), scale, roleOf(field), betterWay(field)});
  }
  return inputs;
}

ChangedInput::ChangedInput(const Project& project, const StudyInput& input)
    : project_(project), field_(*findField(project_, input.path)) {}

const Project& ChangedInput::with(double value) {
  // The reference was found in the project of this object.
  field_.info->setNumber(const_cast<void*>(field_.owner), value);
  return project_;
}

}  // namespace jw
