#include "core/model/family_rule.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "core/model/field_catalogue.h"

namespace jw {
namespace {

constexpr double kArcmin = std::numbers::pi / 10800;
constexpr double kHour = 3600;
constexpr double kRpm = std::numbers::pi / 30;

FamilyRule planetary() {
  return {.family = StageFamily::Planetary,
          .ratioLow = 3,
          .ratioHigh = 100,
          .torquePerMass = 20,
          .peakFactor = 1.8,
          .momentaryFactor = 3,
          .efficiencyLow = 0.97,
          .efficiencyHigh = 0.92,
          .dragShare = 0.01,
          .backlash = 5 * kArcmin,
          .hysteresis = 0.5 * kArcmin,
          .windUp = 4 * kArcmin,
          .transmissionError = 2 * kArcmin,
          .ratedSpeed = 3000 * kRpm,
          .speedFactor = 2,
          .life = 20000 * kHour,
          .lifeExponent = 10.0 / 3,
          .inertiaShare = 0.01,
          .density = 5000,
          .slenderness = 1.3};
}

FamilyRule cycloidal() {
  FamilyRule rule = planetary();
  rule.family = StageFamily::Cycloidal;
  rule.ratioLow = 11;
  rule.ratioHigh = 119;
  rule.torquePerMass = 35;
  rule.peakFactor = 2.5;
  rule.momentaryFactor = 5;
  rule.efficiencyLow = 0.92;
  rule.efficiencyHigh = 0.85;
  rule.dragShare = 0.06;
  rule.backlash = 0.5 * kArcmin;
  rule.hysteresis = 1 * kArcmin;
  rule.windUp = 3 * kArcmin;
  rule.transmissionError = 1 * kArcmin;
  rule.ratedSpeed = 1500 * kRpm;
  rule.speedFactor = 2.5;
  rule.life = 6000 * kHour;
  rule.inertiaShare = 0.04;
  rule.slenderness = 0.6;
  return rule;
}

FamilyRule strainWave() {
  FamilyRule rule = cycloidal();
  rule.family = StageFamily::StrainWave;
  rule.ratioLow = 50;
  rule.ratioHigh = 160;
  rule.torquePerMass = 45;
  rule.peakFactor = 2;
  rule.momentaryFactor = 4;
  rule.efficiencyLow = 0.8;
  rule.efficiencyHigh = 0.7;
  rule.dragShare = 0.08;
  rule.backlash = 0;
  rule.hysteresis = 1.5 * kArcmin;
  rule.windUp = 6 * kArcmin;
  rule.transmissionError = 1 * kArcmin;
  rule.ratedSpeed = 2000 * kRpm;
  rule.speedFactor = 3;
  rule.life = 10000 * kHour;
  rule.lifeExponent = 3;
  rule.inertiaShare = 0.05;
  rule.density = 3500;
  return rule;
}

FamilyRule traction() {
  FamilyRule rule = planetary();
  rule.family = StageFamily::Traction;
  rule.ratioLow = 2.5;
  rule.ratioHigh = 12;
  rule.torquePerMass = 6;
  rule.peakFactor = 1.5;
  rule.momentaryFactor = 1.6;
  rule.efficiencyLow = 0.96;
  rule.efficiencyHigh = 0.94;
  rule.dragShare = 0.01;
  rule.backlash = 0;
  rule.hysteresis = 0.3 * kArcmin;
  rule.windUp = 3 * kArcmin;
  rule.transmissionError = 0.3 * kArcmin;
  rule.ratedSpeed = 6000 * kRpm;
  rule.inertiaShare = 0.03;
  rule.slenderness = 0.9;
  return rule;
}

FamilyRule parallelShaft() {
  FamilyRule rule = planetary();
  rule.family = StageFamily::ParallelShaft;
  rule.ratioLow = 1.5;
  rule.ratioHigh = 6;
  rule.torquePerMass = 8;
  rule.peakFactor = 2;
  rule.momentaryFactor = 3;
  rule.efficiencyLow = 0.98;
  rule.efficiencyHigh = 0.97;
  rule.backlash = 6 * kArcmin;
  rule.inertiaShare = 0.02;
  rule.slenderness = 0.7;
  return rule;
}

FamilyRule belt() {
  FamilyRule rule = parallelShaft();
  rule.family = StageFamily::Belt;
  rule.ratioLow = 1;
  rule.ratioHigh = 4;
  rule.torquePerMass = 30;
  rule.peakFactor = 1.6;
  rule.momentaryFactor = 2;
  rule.efficiencyLow = 0.97;
  rule.efficiencyHigh = 0.96;
  rule.dragShare = 0.005;
  rule.backlash = 3 * kArcmin;
  rule.windUp = 8 * kArcmin;
  rule.ratedSpeed = 2500 * kRpm;
  rule.density = 600;
  rule.slenderness = 0.25;
  return rule;
}

constexpr double kSizeOfRules = 50;  // [N·m] at which ratedSpeed is stated

double efficiencyAt(const FamilyRule& rule, double ratio) {
  const double share = std::log(ratio / rule.ratioLow) / std::log(rule.ratioHigh / rule.ratioLow);
  const double at = std::clamp(share, 0.0, 1.0);
  return rule.efficiencyLow + at * (rule.efficiencyHigh - rule.efficiencyLow);
}

using F = FamilyRule;
using Q = Quantity;
constexpr RuleField kFields[] = {
    {"ratioLow", "Least ratio", Q::Ratio, "1", &F::ratioLow, 1e-3},
    {"ratioHigh", "Largest ratio", Q::Ratio, "1", &F::ratioHigh, 1e-3},
    {"torquePerMass", "Rated torque of 1 kg", Q::Torque, "N*m", &F::torquePerMass, 1e-6},
    {"peakFactor", "Repeated peak over rated torque", Q::Number, "1", &F::peakFactor, 1},
    {"momentaryFactor", "Momentary over rated torque", Q::Number, "1", &F::momentaryFactor, 1},
    {"efficiencyLow", "Efficiency at the least ratio", Q::Fraction, "%", &F::efficiencyLow, 0.01},
    {"efficiencyHigh", "Efficiency at the largest ratio", Q::Fraction, "%", &F::efficiencyHigh,
     0.01},
    {"dragShare", "No-load torque over rated torque", Q::Fraction, "%", &F::dragShare, 0},
    {"backlash", "Play", Q::Angle, "arcmin", &F::backlash, 0},
    {"hysteresis", "Hysteresis", Q::Angle, "arcmin", &F::hysteresis, 0},
    {"windUp", "Wind-up at rated torque", Q::Angle, "arcmin", &F::windUp, 1e-9},
    {"transmissionError", "Transmission error", Q::Angle, "arcmin", &F::transmissionError, 0},
    {"ratedSpeed", "Rated input speed of 50 N·m", Q::AngularSpeed, "rpm", &F::ratedSpeed, 1e-6},
    {"speedFactor", "Highest over rated speed", Q::Number, "1", &F::speedFactor, 1},
    {"life", "Rated life", Q::Time, "h", &F::life, 1},
    {"lifeExponent", "Life exponent", Q::Number, "1", &F::lifeExponent, 1},
    {"inertiaShare", "Input inertia over m d²/8", Q::Fraction, "%", &F::inertiaShare, 0},
    {"density", "Mass of 1 m³", Q::Mass, "kg", &F::density, 1},
    {"slenderness", "Length over diameter", Q::Number, "1", &F::slenderness, 0.05},
};

}  // namespace

const std::vector<FamilyRule>& defaultFamilyRules() {
  static const std::vector<FamilyRule> kRules{planetary(), cycloidal(),     strainWave(),
                                              traction(),  parallelShaft(), belt()};
  return kRules;
}

const FamilyRule* ruleOf(std::span<const FamilyRule> rules, StageFamily family) {
  for (const FamilyRule& rule : rules) {
    if (rule.family == family) return &rule;
  }
  return nullptr;
}

std::string_view familyKey(StageFamily family) {
  return structInfo<Stage>().find("family")->choices[static_cast<std::size_t>(family)].key;
}

Stage reducerByRule(const FamilyRule& rule, double ratio, double ratedTorque) {
  Stage stage;
  stage.family = rule.family;
  stage.ratio = ratio;
  stage.mass = ratedTorque / rule.torquePerMass;
  stage.diameter = std::cbrt(4 * stage.mass / (std::numbers::pi * rule.density * rule.slenderness));
  stage.length = rule.slenderness * stage.diameter;
  stage.inertia = rule.inertiaShare * stage.mass * stage.diameter * stage.diameter / 8;
  stage.ratedTorque = stage.averageTorque = ratedTorque;
  stage.peakTorque = rule.peakFactor * ratedTorque;
  stage.momentaryTorque = rule.momentaryFactor * ratedTorque;
  stage.ratedSpeed = stage.averageSpeed = rule.ratedSpeed * std::cbrt(kSizeOfRules / ratedTorque);
  stage.peakSpeed = rule.speedFactor * stage.ratedSpeed;
  stage.ratedLife = rule.life;
  stage.lifeExponent = rule.lifeExponent;
  stage.dragTorque = rule.dragShare * ratedTorque / ratio;
  stage.startingTorque = 1.5 * stage.dragTorque;
  stage.efficiency = efficiencyAt(rule, ratio);
  stage.backlash = rule.backlash;
  stage.hysteresis = rule.hysteresis;
  stage.transmissionError = rule.transmissionError;
  stage.stiffness.first = ratedTorque / rule.windUp;
  stage.asWritten.from.part =
      fmt::format("the scaling rule of its family ({})", familyKey(rule.family));
  return stage;
}

std::span<const RuleField> ruleFields() { return kFields; }

std::string_view OwnColumn::of(StageFamily family) const {
  for (const auto& [which, text] : cells) {
    if (which == family) return text;
  }
  return {};
}

std::vector<OwnColumn> defaultOwnColumns() {
  using enum StageFamily;
  return {{"lubrication",
           {{Planetary, "grease for life"},
            {Cycloidal, "grease changed at times"},
            {StrainWave, "grease changed by hours"},
            {Traction, "traction fluid"},
            {ParallelShaft, "grease or oil"},
            {Belt, "none"}}},
          {"noise",
           {{Planetary, "audible"},
            {Cycloidal, "low but vibrates"},
            {StrainWave, "low"},
            {Traction, "very low"},
            {ParallelShaft, "rises with speed"},
            {Belt, "hum of the teeth"}}}};
}

}  // namespace jw
