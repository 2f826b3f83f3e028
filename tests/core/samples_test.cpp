// The samples open as they were written, evaluate in full and are in the state their note tells.
#include <cmath>
#include <filesystem>
#include <fstream>
#include <map>
#include <numbers>
#include <sstream>
#include <string>
#include <vector>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "core/checks/evaluation.h"
#include "core/files/project_text.h"

namespace jw {
namespace {

using States = std::map<std::string, std::string>;

/// One variant of one sample, and every check of it that does more or less than hold.
struct Expected {
  std::string file;
  int variant;
  States notHolding;  ///< "drive.life[1]" -> "close"
  std::size_t notices = 0;
};

/// What the gate does not ask for.
States unrequired() {
  States open;
  for (const char* id : {"stopping", "stopping_angle", "stopping_torque", "collision",
                         "positioning", "resonance", "mass", "size", "diameter"}) {
    open[std::string("joint.") + id] = "open";
  }
  return open;
}

const std::vector<Expected>& expectations() {
  static const std::vector<Expected> kAll{
      {"1-orchard-shoulder", 0, {{"drive.life[1]", "close"}}},
      {"1-orchard-shoulder", 1, {{"joint.inertia_ratio", "close"}, {"joint.holding", "close"}}},
      {"2-walking-knee", 0, {{"motor.continuous", "close"}, {"motor.torque", "close"}}},
      {"3-welding-tilt", 0, {}},
      {"4-camera-head", 0, {}},
      {"5-too-small",
       0,
       {{"supply.power_peak", "short"},
        {"supply.voltage_rise", "short"},
        {"controller.current_peak", "short"},
        {"controller.current_rms", "short"},
        {"controller.overload", "short"},
        {"motor.torque", "short"},
        {"motor.continuous", "short"},
        {"motor.temperature_winding", "short"},
        {"motor.temperature_housing", "short"},
        {"drive.torque_peak[0]", "close"},
        {"drive.torque_average[0]", "short"},
        {"drive.life[0]", "short"},
        {"joint.inertia_ratio", "short"},
        {"joint.holding", "short"},
        {"joint.stopping", "short"},  // its brake is too weak for the load
        {"joint.stopping_angle", "short"},
        {"joint.stopping_energy", "short"},
        {"joint.stopping_power", "short"}},
       1},                                     // hotter than its currents assume
      {"6-brushed-gate", 0, unrequired(), 1},  // its worm gear locks itself
      {"6-brushed-gate", 1, unrequired(), 1},  // its rollers creep
  };
  return kAll;
}

std::string contents(const std::string& sample) {
  std::ifstream file(fmt::format("{}/{}.jointwright", JW_SAMPLES_DIR, sample), std::ios::binary);
  EXPECT_TRUE(file.is_open()) << sample;
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

Project open(const std::string& sample, int variant = 0) {
  const auto read = readProject(contents(sample), sample);
  if (!read) {
    ADD_FAILURE() << describe(read.error());
    return {};
  }
  EXPECT_TRUE(read->notes.empty()) << sample;
  Project project = read->project;
  project.activeVariant = variant;
  return project;
}

std::string idOf(const Check& check) {
  const std::string id(check.id);
  return check.stage < 0 ? id : fmt::format("{}[{}]", id, check.stage);
}

States notHolding(const Evaluation& result) {
  States states;
  for (const Check& check : result.checks) {
    if (check.state != CheckState::Holds) states[idOf(check)] = stateName(check.state);
  }
  return states;
}

const Check& checkOf(const Evaluation& result, const std::string& id) {
  for (const Check& check : result.checks) {
    if (idOf(check) == id) return check;
  }
  throw std::logic_error("no check " + id);
}

/// Relative difference within 1e-5: the numbers below are written with six digits.
void expectSixDigits(double found, double byHand, const char* what) {
  EXPECT_NEAR(found / byHand, 1, 1e-5) << what << ": " << found << " against " << byHand;
}

TEST(Samples, FolderHoldsTheExpectedFiles) {
  std::map<std::string, int> variants;
  for (const Expected& expected : expectations()) ++variants[expected.file];
  std::size_t files = 0;
  for (const auto& entry : std::filesystem::directory_iterator(JW_SAMPLES_DIR)) {
    if (entry.path().extension() != ".jointwright") continue;
    ++files;
    const std::string stem = entry.path().stem().string();
    ASSERT_TRUE(variants.count(stem)) << stem;
    EXPECT_EQ(open(stem).variants.size(), static_cast<std::size_t>(variants[stem])) << stem;
  }
  EXPECT_EQ(files, variants.size());
}

TEST(Samples, SayThatTheyAreInvented) {
  for (const Expected& expected : expectations()) {
    EXPECT_EQ(
        open(expected.file).note.find("Invented for demonstration; no real machine or product."),
        0U)
        << expected.file;
  }
}

TEST(Samples, AreWrittenAsTheyWereRead) {
  for (const Expected& expected : expectations()) {
    EXPECT_EQ(writeProject(open(expected.file)), contents(expected.file)) << expected.file;
  }
}

/// Stops, swing, tool error and size need brake, stiffness, play, encoder and masses, which the
/// first and the third sample state.
bool followsFromOptionalData(std::string_view id) {
  for (const std::string_view start :
       {"joint.stop_", "joint.collision_torque", "joint.resonance_", "joint.tool_error_",
        "joint.mass", "joint.length", "joint.torque_per_mass"}) {
    if (id.substr(0, start.size()) == start) return true;
  }
  return false;
}

TEST(Samples, EvaluateInFull) {
  for (const Expected& expected : expectations()) {
    SCOPED_TRACE(fmt::format("{}, variant {}", expected.file, expected.variant));
    const Project project = open(expected.file, expected.variant);
    const Evaluation result = evaluate(project);
    for (const MissingInput& missing : result.missing) ADD_FAILURE() << describe(missing);
    EXPECT_EQ(result.notices.size(), expected.notices);
    const bool noShift = !isSet(project.active().supply.shift);
    for (const NamedQuantity& quantity : result.quantities) {
      // Play and stiffness are not given for every stage; a stage that locks itself has no
      // back-driving torque.
      if (quantity.id == "chain.stiffness" || quantity.id == "chain.backlash" ||
          quantity.id == "chain.backdriving_torque") {
        continue;
      }
      const bool complete = expected.file[0] == '1' || expected.file[0] == '3';
      if (!complete && followsFromOptionalData(quantity.id)) continue;
      const bool unknown = noShift && quantity.id == "supply.charge_per_shift";
      EXPECT_EQ(std::isfinite(quantity.value), !unknown) << quantity.id;
    }
  }
}

TEST(Samples, AreInTheStateTheirNoteTells) {
  for (const Expected& expected : expectations()) {
    SCOPED_TRACE(fmt::format("{}, variant {}", expected.file, expected.variant));
    EXPECT_EQ(notHolding(evaluate(open(expected.file, expected.variant))), expected.notHolding);
  }
}

// Weakening the field takes current for itself; where that alone is too hot, nothing lasts, and the
// drawn limit has to say so instead of breaking off.
TEST(Samples, LastingLimitIsDrawnAtEverySpeed) {
  for (const Expected& expected : expectations()) {
    SCOPED_TRACE(expected.file);
    const Evaluation result = evaluate(open(expected.file, expected.variant));
    ASSERT_TRUE(result.envelope);
    EXPECT_GT(result.envelope->lasting.torque.size(), 0);
    EXPECT_TRUE(result.envelope->lasting.torque.allFinite());
    EXPECT_TRUE(result.envelope->peak.torque.allFinite());
  }
}

TEST(Samples, GateWarnsOfTheWormGear) {
  const Evaluation result = evaluate(open("6-brushed-gate"));
  ASSERT_EQ(result.notices.size(), 1U);
  EXPECT_EQ(result.notices[0].text.where, "transmission[1].backdrivingEfficiency");
}

// Worked by hand from the sample's text with the textbook laws: parallel axes, lever arms, squared
// ratios; the speed of a trapezoid of jerk-limited ramps is travel / (t (1 - (a1 + a2) / 2)).
TEST(Samples, OrchardShoulderAgreesWithHandCalculation) {
  const Evaluation result = evaluate(open("1-orchard-shoulder"));
  // "back, empty": 82 deg / (0.9 s (1 - 0.45)) = 165.657 deg/s = 27.6094 rpm; x 1.5 x 100
  expectSixDigits(quantityValue(result, "motor.speed_peak") * 30 / std::numbers::pi, 4141.41,
                  "motor speed [rpm]");
  // its ramp: 2.89126 rad/s / (0.45 x 0.9 s x (1 - 0.35)) = 2.89126 / 0.26325
  expectSixDigits(quantityValue(result, "joint.acceleration_peak"), 10.9829, "acceleration");
  // 0.94 + 3.4 x 0.72^2 + 0.0120 = 0.94 + 1.76256 + 0.012
  expectSixDigits(quantityValue(result, "joint.inertia"), 2.71456, "inertia [kg m^2]");
  // gear 2.71456e4 / 100^2 + 0.19, belt (2.71456 + 0.19 + 0.28) / 1.5^2 + 0.06 = 1.47536 kg cm^2;
  // over rotor and brake: 1.47536 / (0.31 + 0.07)
  expectSixDigits(checkOf(result, "joint.inertia_ratio").demand, 3.88252, "inertia ratio");
  // lying flat, with fruit: 9.80665 (5.2 x 0.34 + 3.4 x 0.72) = 41.3448 N m; x 1.5 / 150
  expectSixDigits(checkOf(result, "joint.holding").demand, 0.413448, "holding [N m]");
  // insulation of class F: 155 degC (IEC 60085; from memory)
  EXPECT_DOUBLE_EQ(checkOf(result, "motor.temperature_winding").capacity, 155);
  // magnets at 90 degC: 0.096 (1 - 0.0012 x 70)
  expectSixDigits(quantityValue(result, "motor.torque_constant"), 0.087936, "torque constant");
}

// As above; 2.1875 is the peak speed of the 4-5-6-7 polynomial over its mean speed (cam handbooks,
// from memory), and a delta of windings counts as a star of a third of their resistance.
TEST(Samples, CameraHeadAgreesWithHandCalculation) {
  const Evaluation result = evaluate(open("4-camera-head"));
  // "catch the jump": 2.1875 x 70 deg / 0.8 s = 191.406 deg/s
  expectSixDigits(quantityValue(result, "joint.speed_peak") * 30 / std::numbers::pi, 31.9010,
                  "joint speed [rpm]");
  // 560 / 9.5 kg cm^2
  expectSixDigits(checkOf(result, "joint.inertia_ratio").demand, 58.9474, "inertia ratio");
  // centre of mass level with the axis: 6.8 x 9.80665 x 0.009 = 0.600167 N m; x 1.25
  expectSixDigits(checkOf(result, "joint.holding").demand, 0.750209, "holding [N m]");
  // 1.5 x 22 x 0.063 / sqrt(3) = 1.20031 N m/A; x sqrt(2) per A rms; at 70 degC 1 - 0.0012 x 50
  expectSixDigits(quantityValue(result, "motor.torque_constant"), 1.59565, "torque constant");
  // heat allows sqrt(60 K / 4.2 K/W / (1.5 x 7.33333 x 1.2751 ohm)) = 1.009 A, the controller 1 A;
  // magnets at 30 + 60 x 3.4 / 4.2 = 78.5714 degC: 1.20031 x 0.929714 N m/A x 1 A
  expectSixDigits(checkOf(result, "joint.holding").capacity, 1.11595, "lasting torque [N m]");
}

// Conductances of heat add up; a heat capacity is a time constant over a resistance (electrical
// analogy).
TEST(Samples, WalkingKneeAgreesWithHandCalculation) {
  const Evaluation result = evaluate(open("2-walking-knee"));
  ASSERT_TRUE(result.heat);
  // 1 / (1 / 2.6 + 1 / 1.5) K/W; 25 s / 0.4 K/W; 900 s / 2.6 K/W
  expectSixDigits(result.heat->network.housingToAmbient, 0.951220, "housing to ambient [K/W]");
  expectSixDigits(result.heat->network.windingCapacity, 62.5, "winding [J/K]");
  expectSixDigits(result.heat->network.housingCapacity, 346.154, "housing [J/K]");
}

TEST(Samples, WalkingKneeNeedsFieldWeakening) {
  Project project = open("2-walking-knee");
  for (Variant& variant : project.variants) variant.controller.fieldWeakening = false;
  EXPECT_EQ(checkOf(evaluate(project), "motor.torque").state, CheckState::Short);
}

// Statics, the straight line of derating, and the energy of a capacitor, C V^2 / 2.
TEST(Samples, WeldingTiltAgreesWithHandCalculation) {
  const Evaluation result = evaluate(open("3-welding-tilt"));
  // 3 A (90 - 65) / (90 - 60)
  expectSixDigits(checkOf(result, "controller.current_rms").capacity, 2.5, "derated current [A]");
  // more comes back per cycle than 470 uF takes from 320 V to 385 V, 10.77 J: held at 385 V
  expectSixDigits(checkOf(result, "supply.voltage_rise").demand, 385, "bus voltage [V]");
  // level and loaded: 9.80665 (95 x 0.07 cos 20 deg + 255 x 0.15 cos 15 deg) / 177 = 2.39324 N m,
  // more than lasts at standstill
  EXPECT_GT(2.39324, quantityValue(result, "envelope.continuous_stall_torque"));
}

// Thin air: 1 % of the rise per 100 m above 1000 m (IEC 60034-1, from memory); torque of the
// no-load current: K_t I_0, two readings make a straight line.
TEST(Samples, BrushedGateAgreesWithHandCalculation) {
  const Evaluation result = evaluate(open("6-brushed-gate"));
  // 266 degF = 130 degC, 104 degF = 40 degC, 5200 ft = 1584.96 m: 40 + 90 (1 - 0.058496)
  expectSixDigits(checkOf(result, "motor.temperature_winding").capacity, 124.735, "limit [degC]");
  // 11.6 ozf in/A = 0.0819140 N m/A; 0.0819140 (1.1 - 0.7) / 167.552 rad/s
  ASSERT_TRUE(result.motor);
  expectSixDigits(result.motor->dragDamping, 1.95555e-4, "no-load damping [N m s/rad]");
  // 0.0573398 - 1.95555e-4 x 104.720
  expectSixDigits(result.motor->dragTorque, 0.0368613, "no-load torque [N m]");
}

}  // namespace
}  // namespace jw
