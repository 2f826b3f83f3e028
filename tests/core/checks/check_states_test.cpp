// Every check in each of its states, and what an open check asks for.
#include <cmath>
#include <map>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/check_writer.h"
#include "core/checks/evaluation.h"
#include "core/model/field_catalogue.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

using testing::ElementsAre;

Check checkOf(const Project& project, std::string_view id) {
  const Evaluation evaluation = evaluate(project);
  Check found;
  int count = 0;
  // Of the two stages the last that has the check: belt, then reducer.
  for (const Check& check : evaluation.checks) {
    if (check.id == id && ++count > 0) found = check;
  }
  EXPECT_GT(count, 0) << id;
  return found;
}

/// A field and what to type there.
struct Setting {
  std::string path;
  std::string text;
};

/// What makes a check fail, and each input whose absence alone leaves it open.
struct Provocation {
  Setting tooLittle;
  std::vector<std::string> needs;
};

const std::map<std::string_view, Provocation>& provocations() {
  static const std::map<std::string_view, Provocation> kAll{
      {"motor.torque",
       {{"controller.currentPeak", "2 A"},
        {"supply.voltage", "motor.torqueConstant", "motor.resistance", "motor.rotorInertia",
         "load.inertia", "transmission[1].ratio", "transmission[0].efficiency",
         "cycle.segments[0].duration"}}},
      {"motor.speed",
       {{"motor.maxSpeed", "1000 rpm"},
        {"supply.voltage", "motor.torqueConstant", "load.inertia", "transmission[1].ratio"}}},
      {"motor.continuous",
       {{"motor.thermalResistanceHousing", "60 K/W"},
        {"motor.rotorInertia", "supply.voltage", "motor.resistance",
         "transmission[1].ratedTorque"}}},
      {"motor.temperature_winding",
       {{"motor.windingTemperatureMax", "50 degC"},
        {"motor.thermalResistanceWinding", "motor.thermalResistanceHousing",
         "motor.windingCapacity", "motor.housingCapacity", "motor.rotorInertia", "load.inertia"}}},
      {"motor.temperature_housing",
       {{"motor.housingTemperatureMax", "45 degC"},
        {"motor.housingTemperatureMax", "motor.thermalResistanceHousing", "motor.resistance"}}},
      {"motor.magnet",
       {{"motor.demagnetizingCurrent", "5 A"},
        {"motor.housingCapacity", "motor.torqueConstant", "motor.rotorInertia"}}},
      {"motor.touch_temperature",
       {{"motor.thermalResistanceHousing", "20 K/W"}, {"motor.thermalResistanceHousing"}}},
      {"supply.power_peak",
       {{"supply.powerPeak", "50 W"},
        {"supply.powerPeak", "supply.voltage", "motor.rotorInertia", "load.inertia"}}},
      {"supply.power_mean",
       {{"supply.powerMean", "5 W"},
        {"supply.powerMean", "supply.voltage", "supply.busCapacitance"}}},
      {"supply.voltage_rise",
       {{"supply.busVoltageMax", "55 V"},
        {"supply.busVoltageMax", "supply.voltage", "supply.busCapacitance"}}},
      {"supply.brake_resistor",
       {{"supply.brakePowerMean", "1 W"},
        {"supply.brakeVoltage", "supply.brakePowerMean", "supply.brakePowerPeak",
         "supply.busCapacitance"}}},
      {"controller.overload",
       {{"controller.peakTime", "1 ms"},
        {"controller.peakTime", "controller.currentPeak", "controller.currentContinuous",
         "motor.torqueConstant"}}},
      {"controller.current_peak",
       {{"controller.currentPeak", "2 A"},
        {"controller.currentPeak", "motor.torqueConstant", "motor.rotorInertia"}}},
      {"controller.current_rms",
       {{"controller.currentContinuous", "1 A"},
        {"controller.currentContinuous", "motor.torqueConstant", "motor.rotorInertia"}}},
      {"drive.torque_peak",
       {{"transmission[1].peakTorque", "20 N*m"}, {"transmission[1].peakTorque", "load.inertia"}}},
      {"drive.torque_average",
       {{"transmission[1].averageTorque", "10 N*m"}, {"load.inertia", "transmission[1].ratio"}}},
      {"drive.speed_peak",
       {{"transmission[1].peakSpeed", "500 rpm"}, {"transmission[1].peakSpeed"}}},
      {"drive.speed_average",
       {{"transmission[1].averageSpeed", "100 rpm"}, {"transmission[1].averageSpeed"}}},
      {"drive.life",
       {{"requirements.life", "1e6 h"},
        {"requirements.life", "transmission[1].ratedLife", "transmission[1].ratedTorque",
         "transmission[1].ratedSpeed"}}},
      {"drive.torque_momentary",
       {{"requirements.emergencyTorque", "1 kN*m"},
        {"transmission[1].momentaryTorque", "load.inertia"}}},
      {"drive.bearing_life",
       {{"requirements.life", "1e9 h"},
        {"requirements.life", "transmission[1].bearingDynamicRating",
         "transmission[1].bearingPitchDiameter"}}},
      {"drive.bearing_static",
       {{"transmission[1].bearingStaticRating", "100 N"},
        {"transmission[1].bearingStaticRating", "transmission[1].bearingPitchDiameter"}}},
      {"drive.bearing_moment", {{"transmission[1].bearingMoment", "1 N*m"}, {"load.inertia"}}},
      {"drive.geometry", {{"transmission[0].spanPretension", "1 N"}, {"load.inertia"}}},
      {"drive.teeth_in_mesh",
       {{"transmission[0].teethInMeshMin", "20"},
        {"transmission[0].jointPulleyTeeth", "transmission[0].pitch",
         "transmission[0].centreDistance"}}},
      {"joint.inertia_ratio",
       {{"requirements.inertiaRatioMax", "0.01"},
        {"requirements.inertiaRatioMax", "motor.rotorInertia", "load.inertia"}}},
      {"joint.end_stops", {{"load.stopHigh", "60 deg"}, {"cycle.segments[0].duration"}}},
      {"joint.holding",
       {{"motor.brakeTorque", "10 mN*m"},
        {"motor.brakeTorque", "load.inertia", "transmission[1].ratio"}}},
      {"joint.stopping",
       {{"requirements.stopTime", "1 ms"},
        {"requirements.stopTime", "motor.brakeTorque", "motor.rotorInertia", "load.inertia"}}},
      {"joint.stopping_angle",
       {{"motor.brakeDelay", "1 s"},
        {"requirements.stopAngle", "motor.brakeTorque", "motor.rotorInertia", "load.inertia"}}},
      {"joint.stopping_torque",
       {{"transmission[1].momentaryTorque", "20 N*m"},
        {"requirements.stopTime", "transmission[1].momentaryTorque", "motor.brakeTorque",
         "load.inertia"}}},
      {"joint.stopping_energy",
       {{"motor.brakeStopEnergy", "1 J"}, {"motor.brakeStopEnergy", "motor.brakeTorque"}}},
      {"joint.stopping_power",
       {{"requirements.stopsPerHour", "10000"},
        {"motor.brakePower", "requirements.stopsPerHour", "motor.brakeTorque"}}},
      {"joint.collision",
       {{"requirements.collisionSpeed", "60 rpm"},
        {"transmission[1].momentaryTorque", "motor.rotorInertia", "load.inertia"}}},
      {"joint.positioning",
       {{"requirements.reach", "20 m"},
        {"requirements.toolError", "transmission[0].backlash", "transmission[1].backlash",
         "load.inertia"}}},
      {"joint.resonance",
       {{"requirements.bandwidth", "100 Hz"},
        {"requirements.bandwidth", "motor.rotorInertia", "load.inertia"}}},
      {"joint.backdrive",
       {{"motor.dragTorque", "1 N*m"}, {"motor.torqueConstant", "transmission[1].ratio"}}},
      {"joint.mass",
       {{"motor.mass", "9 kg"}, {"requirements.massMax", "motor.mass", "transmission[0].mass"}}},
      {"joint.size",
       {{"motor.length", "1 m"},
        {"requirements.lengthMax", "motor.length", "transmission[1].length"}}},
      {"joint.diameter",
       {{"transmission[0].diameter", "1 m"},
        {"requirements.diameterMax", "motor.diameter", "transmission[1].diameter"}}},
  };
  return kAll;
}

/// Where both demand and capacity count from; 0 but for temperatures and the bus voltage.
double baseOf(const Project& project, std::string_view id) {
  if (id == "supply.voltage_rise") return project.active().supply.voltage;
  return id.find("temperature") != id.npos ? project.requirements.ambient : 0;
}

Project with(Project project, const Setting& setting) {
  const auto done = setField(project, setting.path, setting.text);
  EXPECT_TRUE(done.has_value()) << (done ? "" : describe(done.error()));
  return project;
}

TEST(CheckStates, EveryKindIsProvoked) {
  for (const CheckKind& kind : checkKinds()) {
    EXPECT_TRUE(provocations().contains(kind.id)) << kind.id << " has no test here";
  }
}

TEST(CheckStates, HoldsAndClose) {
  for (const auto& [id, unused] : provocations()) {
    Project project = exampleProject();
    const Check plain = checkOf(project, id);
    ASSERT_TRUE(std::isfinite(plain.margin)) << id;
    ASSERT_GT(plain.margin, 0) << id;
    const double base = baseOf(project, id);
    const double margin = (plain.capacity - base) / (plain.demand - base) - 1;
    EXPECT_NEAR(plain.margin, margin, 1e-12 * (1 + margin)) << id;
    project.requirements.targetMargin = plain.margin * 0.99;
    EXPECT_EQ(checkOf(project, id).state, CheckState::Holds) << id;
    project.requirements.targetMargin = plain.margin * 1.01;
    EXPECT_EQ(checkOf(project, id).state, CheckState::Close) << id;
  }
}

TEST(CheckStates, Short) {
  for (const auto& [id, provocation] : provocations()) {
    const Check check = checkOf(with(exampleProject(), provocation.tooLittle), id);
    EXPECT_EQ(check.state, CheckState::Short) << id << " margin " << check.margin;
    EXPECT_LT(check.capacity, check.demand) << id;
    EXPECT_LT(check.margin, 0) << id;
  }
}

TEST(CheckStates, OpenNamesExactlyTheFieldToFill) {
  for (const auto& [id, provocation] : provocations()) {
    for (const std::string& path : provocation.needs) {
      SCOPED_TRACE(std::string(id) + " without " + path);
      const Project project = with(exampleProject(), {path, ""});
      const Check check = checkOf(project, id);
      EXPECT_EQ(check.state, CheckState::Open);
      EXPECT_TRUE(std::isnan(check.margin));
      EXPECT_THAT(check.missing, ElementsAre(path));
      EXPECT_TRUE(findField(project, path).has_value());
    }
  }
}

TEST(CheckStates, OpenNamesEveryFieldToFill) {
  Project project = exampleProject();
  for (const char* path :
       {"motor.rotorInertia", "supply.voltage", "motor.thermalResistanceWinding"}) {
    project = with(project, {path, ""});
  }
  EXPECT_THAT(checkOf(project, "motor.continuous").missing,
              testing::UnorderedElementsAre("motor.rotorInertia", "supply.voltage",
                                            "motor.continuousTorque"));
}

// One temperature may never settle: a copper loss that grows faster than the network cools.
TEST(CheckStates, RunawayIsShortOfEveryTemperature) {
  const Project project = with(exampleProject(), {"motor.thermalResistanceHousing", "200 K/W"});
  ASSERT_TRUE(evaluate(project).heat->periodic.runaway);
  for (const char* id :
       {"motor.temperature_winding", "motor.temperature_housing", "motor.touch_temperature"}) {
    const Check check = checkOf(project, id);
    EXPECT_EQ(check.state, CheckState::Short) << id;
    EXPECT_EQ(check.margin, -1) << id;
    EXPECT_TRUE(std::isinf(check.demand)) << id;
  }
}

// By hand: a ferrite magnet of +0.4 %/K stands least when cold: 60 A (1 + 0.004 (40 - 20)) = 64.8
// A.
TEST(CheckStates, FerriteIsWeakestCold) {
  const Project project = with(exampleProject(), {"motor.demagnetizingCoefficient", "0.004 1/K"});
  EXPECT_NEAR(checkOf(project, "motor.magnet").capacity, 64.8, 1e-12);
}

TEST(CheckStates, EnergyWithoutOutletIsShort) {
  const Project idle = with(exampleProject(), {"controller.idlePower", "0 W"});
  const Project project = with(idle, {"supply.brakeResistance", ""});
  const Check check = checkOf(project, "supply.voltage_rise");
  ASSERT_TRUE(std::isfinite(check.margin));  // the next lift uses it up
  EXPECT_EQ(check.state, CheckState::Short);
  for (const Check& other : evaluate(project).checks) EXPECT_NE(other.id, "supply.brake_resistor");
}

TEST(CheckStates, HeldByTheMotorOrByNothing) {
  Project project = exampleProject();
  project.requirements.holdingMeans = HoldingMeans::Motor;
  EXPECT_NEAR(checkOf(project, "joint.holding").capacity,
              evaluate(project).envelope->continuousTorque(0), 1e-15);
  const Setting noHeat{"motor.thermalResistanceWinding", ""};
  EXPECT_THAT(checkOf(with(project, noHeat), "joint.holding").missing,
              ElementsAre("motor.continuousTorque"));
  project.requirements.holdingMeans = HoldingMeans::NotNeeded;
  for (const Check& check : evaluate(project).checks) EXPECT_NE(check.id, "joint.holding");
}

// By hand: 1.5 times the torque at the horizontal, full payload, behind 160 : 1; from 60° to 80°
// the lowest angle is the worst.
TEST(CheckStates, HoldingOverTheTravelWithTheHeaviestPayload) {
  Project project = exampleProject();
  const double level = 9.80665 * (6 * 0.25 + 5 * 0.55);
  EXPECT_NEAR(checkOf(project, "joint.holding").demand, 1.5 * level / 160, 1e-12);
  project = with(with(project, {"requirements.travelMin", "60 deg"}),
                 {"requirements.travelMax", "80 deg"});
  EXPECT_NEAR(checkOf(project, "joint.holding").demand, 1.5 * level / 2 / 160, 1e-12);
}

TEST(CheckStates, RatedTorqueStandsInForTheAverageLimit) {
  const Project project = with(exampleProject(), {"transmission[1].averageTorque", ""});
  EXPECT_EQ(checkOf(project, "drive.torque_average").capacity, 60);
}

TEST(CheckStates, BeltsHaveNoLife) {
  for (const Check& check : evaluate(exampleProject()).checks) {
    if (check.stage != 0) continue;
    EXPECT_NE(check.id, "drive.life");
    EXPECT_NE(check.id, "drive.torque_average");
  }
}

TEST(CheckStates, NothingDemandedHoldsWithoutLimit) {
  Project project = exampleProject();
  project.cycle.segments.resize(2);
  project.cycle.segments.erase(project.cycle.segments.begin());  // stands still
  EXPECT_TRUE(std::isinf(checkOf(project, "motor.speed").margin));
  EXPECT_EQ(checkOf(project, "motor.speed").state, CheckState::Holds);
  EXPECT_TRUE(std::isinf(checkOf(project, "drive.life").margin));
}

// A pure inertia turns fastest where its torque passes through 0, and there a speed limit is
// nearest: peak speed 1.875 h/t of the 3-4-5 polynomial, 562.5 rad/s, against 450: factor 0.8,
// margin -20 %.
TEST(CheckStates, SpeedWithoutTorqueCountsToo) {
  Project project;
  project.load.inertia = 1e-6;
  Segment move;
  move.law = MotionLaw::Polynomial345;
  move.travel = 300;
  move.duration = 1;
  project.cycle.segments = {move};
  Variant& variant = project.active();
  variant.motor.kind = MotorKind::BrushedDc;
  variant.motor.torqueConstant = 0.1;
  variant.motor.resistance = 0.1;
  variant.motor.rotorInertia = 1e-6;
  variant.motor.maxSpeed = 450;
  variant.supply.voltage = 100;
  const Check check = checkOf(project, "motor.torque");
  EXPECT_EQ(check.state, CheckState::Short);
  EXPECT_NEAR(check.margin, -0.2, 1e-9);
}

}  // namespace
}  // namespace jw
