#include "core/studies/invented_catalogue.h"

#include <cctype>
#include <cmath>
#include <numbers>
#include <string>

#include <fmt/format.h>

#include "core/model/field_catalogue.h"

namespace jw {
namespace {

constexpr double kRpm = std::numbers::pi / 30;
constexpr double kHotCopper = 1 + 0.00393 * (155 - 20);  // resistance at the winding limit
constexpr double kRise = 155 - 40;                       // [K] winding limit over rating ambient

/// Mass, size and inertia of the rotor.
void addBody(const MotorSeed& seed, double torque, Motor& motor) {
  const double torqueOfOneKg = seed.flat ? 1.3 : 0.75;  // [N·m], lasting
  motor.mass = std::pow(torque / torqueOfOneKg, 6.0 / 7);
  const double slenderness = seed.flat ? 0.4 : 1.4;
  motor.diameter = std::cbrt(4 * motor.mass / (std::numbers::pi * 4500 * slenderness));
  motor.length = slenderness * motor.diameter;
  const double share = seed.flat ? 0.05 : 0.02;
  motor.rotorInertia = share * motor.mass * motor.diameter * motor.diameter / 8;
}

void addHeat(Motor& motor) {
  const double all = 2.2 * std::pow(motor.mass, -2.0 / 3);  // [K/W] winding to ambient
  motor.thermalResistanceWinding = 0.35 * all;
  motor.thermalResistanceHousing = 0.65 * all;
  motor.windingCapacity = 60 * motor.mass;
  motor.housingCapacity = 380 * motor.mass;
  motor.housingTemperatureMax = 100;
}

/// The winding that reaches a third more than rated speed at its voltage.
void addWinding(const MotorSeed& seed, double torque, Motor& motor) {
  const double noLoad = 1.35 * seed.speed;
  const double emf = seed.voltage / std::numbers::sqrt3 / noLoad;  // [V·s/rad] phase, amplitude
  const double perAmp = 1.5 * emf;
  motor.polePairs = seed.flat ? 14 : 4;
  motor.torqueConstant = perAmp * std::numbers::sqrt2;
  const double loss = kRise / (motor.thermalResistanceWinding + motor.thermalResistanceHousing);
  const double amplitude = 1.05 * torque / (perAmp * (1 - 0.0012 * 0.65 * kRise));
  const double phase = loss / (1.5 * kHotCopper * amplitude * amplitude);
  motor.resistance = 2 * phase;  // line to line, at 20 °C
  motor.inductance = motor.resistance * 1.2e-3 * std::cbrt(motor.mass);
  motor.currentPeak = 3.2 * amplitude / std::numbers::sqrt2;
  motor.maxSpeed = 1.5 * seed.speed;
}

void addLossAndBrake(const MotorSeed& seed, double torque, Motor& motor) {
  motor.dragTorque = 0.008 * torque;
  motor.dragDamping = 0.012 * torque / seed.speed;
  motor.windingTemperature = 90;
  if (!seed.brake) return;
  motor.brakeTorque = 1.3 * torque;
  motor.brakeInertia = 0.07 * motor.rotorInertia;
  motor.length += 0.35 * motor.diameter;
  motor.mass *= 1.18;
}

/// "strain wave".
std::string familyName(StageFamily family) {
  const FieldInfo& info = *structInfo<Stage>().find("family");
  std::string name(info.choices[static_cast<std::size_t>(family)].label);
  name.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(name.front())));
  return name;
}

/// With three digits: 1259.9 -> 1260.
double rounded(double value) {
  const double step = std::pow(10, std::floor(std::log10(value)) - 2);
  return step * std::round(value / step);
}

void addReducers(StageFamily family, std::initializer_list<double> ratios,
                 std::initializer_list<double> torques, std::vector<Stage>& all) {
  const FamilyRule& rule = *ruleOf(defaultFamilyRules(), family);
  for (const double torque : torques) {
    for (const double ratio : ratios) {
      Stage stage = reducerByRule(rule, ratio, torque);
      stage.name = fmt::format("{} {:g} N·m {:g}:1 (invented)", familyName(family), torque, ratio);
      all.push_back(std::move(stage));
    }
  }
}

}  // namespace

MotorEntry inventedMotor(const MotorSeed& seed) {
  MotorEntry entry;
  entry.name =
      fmt::format("{} {:g} W {:g} V {:.0f} rpm{} (invented)", seed.flat ? "flat" : "slim",
                  rounded(seed.power), seed.voltage, seed.speed / kRpm, seed.brake ? " brake" : "");
  const double torque = seed.power / seed.speed;
  addBody(seed, torque, entry.motor);
  addHeat(entry.motor);
  addWinding(seed, torque, entry.motor);
  addLossAndBrake(seed, torque, entry.motor);
  return entry;
}

std::vector<MotorEntry> inventedMotors() {
  std::vector<MotorEntry> all;
  for (int size = 0; size < 17; ++size) {
    const double power = 20 * std::pow(5000.0 / 20, size / 16.0);
    const double pace = std::pow(power / 200, -1.0 / 6);  // larger ones turn slower
    for (const bool flat : {false, true}) {
      for (const double speed : {1.0, 1.6}) {
        for (const double voltage : {power < 700 ? 24.0 : 96.0, power < 700 ? 48.0 : 320.0}) {
          for (const bool brake : {false, true}) {
            const double rpm = std::round((flat ? 1800 : 3000) * pace * speed / 50) * 50;
            all.push_back(inventedMotor({power, rpm * kRpm, voltage, flat, brake}));
          }
        }
      }
    }
  }
  return all;
}

std::vector<Stage> inventedReducers() {
  using enum StageFamily;
  std::vector<Stage> all;
  addReducers(Planetary, {3, 4, 5, 7, 10, 16, 25, 50, 100}, {10, 20, 40, 80, 160, 320}, all);
  addReducers(Cycloidal, {29, 59, 89, 119}, {50, 100, 200, 400, 800}, all);
  addReducers(StrainWave, {50, 80, 100, 120, 160}, {5, 10, 25, 50, 100, 200}, all);
  addReducers(Traction, {3, 5, 8, 12}, {5, 10, 20, 40}, all);
  addReducers(ParallelShaft, {1.5, 2, 3, 4, 5, 6}, {5, 10, 20, 50, 100, 200}, all);
  addReducers(Belt, {1, 1.5, 2, 2.5, 3}, {3, 6, 12, 25}, all);
  return all;
}

}  // namespace jw
