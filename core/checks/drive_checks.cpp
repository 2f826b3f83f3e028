#include <array>
#include <cmath>
#include <span>

#include "core/checks/check_writer.h"
#include "core/physics/drive_life.h"

namespace jw {
namespace {

constexpr std::string_view kMeanSource =
    "Mean load that does the same damage (ISO 281, ball p = 3, roller p = 10/3; from memory)";

/// Belts and couplings have no stated life.
bool hasLife(const CheckContext& context) {
  const StageFamily family = context.drive().family;
  return family != StageFamily::Belt && family != StageFamily::Coupling;
}

double meanTorque(const CheckContext& context) {
  const StageLoad& load = context.driveLoad();
  return averageTorque(*context.result.cycle, load.outputTorque, load.inputSpeed,
                       context.drive().lifeExponent);
}

double meanSpeed(const CheckContext& context) {
  return averageSpeed(*context.result.cycle, context.driveLoad().inputSpeed);
}

void torquePeak(const CheckContext& context, CheckWriter& w) {
  w.formula("max |T_out| against T_p");
  w.source("Repeated peak torque as the reducer's data state it; common practice, no source");
  w.note("Emergency stops and collisions are rarer and harder; they are not in the cycle.");
  const double limit = w.stageInput(context.drive().peakTorque, "peakTorque");
  if (!w.has(Part::Chain)) return;
  Eigen::Index at = 0;
  const double peak = context.driveLoad().outputTorque.abs().maxCoeff(&at);
  w.at(at);
  w.value(peak, {"T_out", "Highest torque at the stage's output", Quantity::Torque, "N*m",
                 "from the cycle"});
  w.compare(peak, limit);
}

void torqueAverage(const CheckContext& context, CheckWriter& w) {
  w.formula("T_av = (\u2211|n| \u0394t |T|^p / \u2211|n| \u0394t)^(1/p) against T_A");
  w.source(kMeanSource);
  const Stage& stage = context.drive();
  double limit = stage.averageTorque;
  if (isSet(limit)) {
    w.stageInput(limit, "averageTorque");
  } else {
    w.note("No limit of the average torque is given: the rated torque stands in for it.");
    limit = w.stageInput(stage.ratedTorque, "ratedTorque");
  }
  w.stageInput(stage.lifeExponent, "lifeExponent");
  if (!w.has(Part::Chain)) return;
  const double mean = w.value(meanTorque(context), {"T_av", "Average output torque",
                                                    Quantity::Torque, "N*m", "from the cycle"});
  w.compare(mean, limit);
}

void speedPeak(const CheckContext& context, CheckWriter& w) {
  w.formula("max |n_in| against n_p");
  w.source("Highest input speed as the reducer's data state it; common practice, no source");
  const double limit = w.stageInput(context.drive().peakSpeed, "peakSpeed");
  if (!w.has(Part::Chain)) return;
  Eigen::Index at = 0;
  const double peak = context.driveLoad().inputSpeed.abs().maxCoeff(&at);
  w.at(at);
  w.value(peak, {"n_in", "Highest input speed", Quantity::AngularSpeed, "rpm", "from the cycle"});
  w.compare(peak, limit);
}

void speedAverage(const CheckContext& context, CheckWriter& w) {
  w.formula("n_av = \u2211|n| \u0394t / t_c against n_A");
  w.source("Mean input speed over the cycle, dwells included; common practice, no source");
  const double limit = w.stageInput(context.drive().averageSpeed, "averageSpeed");
  if (!w.has(Part::Chain)) return;
  const double mean =
      w.value(meanSpeed(context),
              {"n_av", "Average input speed", Quantity::AngularSpeed, "rpm", "from the cycle"});
  w.compare(mean, limit);
}

void life(const CheckContext& context, CheckWriter& w) {
  w.formula("L = L_r (T_r / T_av)^p n_r / n_av against L_w");
  w.source("ISO 281 basic rating life scaled from the rated point; read second-hand");
  w.note("At 90 % reliability, in hours of the whole cycle with its dwells.");
  const Stage& stage = context.drive();
  const double ratedLife = w.stageInput(stage.ratedLife, "ratedLife");
  const double ratedTorque = w.stageInput(stage.ratedTorque, "ratedTorque");
  const double ratedSpeed = w.stageInput(stage.ratedSpeed, "ratedSpeed");
  const double exponent = w.stageInput(stage.lifeExponent, "lifeExponent");
  const double wanted = w.input(context.project.requirements.life, "requirements.life");
  if (!w.has(Part::Chain)) return;
  const double torque = w.value(meanTorque(context), {"T_av", "Average output torque",
                                                      Quantity::Torque, "N*m", "from the cycle"});
  const double speed =
      w.value(meanSpeed(context),
              {"n_av", "Average input speed", Quantity::AngularSpeed, "rpm", "from the cycle"});
  const double reached =
      w.value(driveLife(ratedLife, ratedTorque, ratedSpeed, exponent, torque, speed),
              {"L", "Life reached", Quantity::Time, "h"});
  w.compare(wanted, reached);
}

constexpr std::array kKinds{
    CheckKind{"drive.torque_peak", "peak torque", Quantity::Torque, "N*m", true, false, nullptr,
              &torquePeak},
    CheckKind{"drive.torque_average", "average torque", Quantity::Torque, "N*m", true, false,
              &hasLife, &torqueAverage},
    CheckKind{"drive.speed_peak", "peak speed", Quantity::AngularSpeed, "rpm", true, false, nullptr,
              &speedPeak},
    CheckKind{"drive.speed_average", "average speed", Quantity::AngularSpeed, "rpm", true, false,
              &hasLife, &speedAverage},
    CheckKind{"drive.life", "life", Quantity::Time, "h", true, true, &hasLife, &life},
};

}  // namespace

std::span<const CheckKind> driveChecks() { return kKinds; }

}  // namespace jw
