#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <span>

#include "core/checks/check_writer.h"
#include "core/physics/drive_life.h"
#include "core/physics/rolling_bearing.h"
#include "core/physics/traction_rollers.h"

namespace jw {
namespace {

constexpr double kForever = std::numeric_limits<double>::infinity();
constexpr std::string_view kMeanSource =
    "Mean load that does the same damage (ISO 281, ball p = 3, roller p = 10/3; from memory)";

/// Belts and couplings have no stated life.
bool hasLife(const CheckContext& context) {
  const StageFamily family = context.drive().family;
  return family != StageFamily::Belt && family != StageFamily::Coupling;
}

/// The stage's means over the day; null if the cycle shown is all there is.
const WearMeans* overTheDay(const CheckContext& context) {
  if (!context.result.mix) return nullptr;
  return &context.result.mix->stages[static_cast<std::size_t>(context.stage)];
}

double meanTorque(const CheckContext& context) {
  if (const WearMeans* day = overTheDay(context)) return day->load;
  const StageLoad& load = context.driveLoad();
  return averageTorque(*context.result.cycle, load.outputTorque, load.inputSpeed,
                       context.drive().lifeExponent);
}

double meanSpeed(const CheckContext& context) {
  if (const WearMeans* day = overTheDay(context)) return day->speed;
  return averageSpeed(*context.result.cycle, context.driveLoad().inputSpeed);
}

/// Whether there are means over the cycle or the day.
bool hasMeans(CheckWriter& w) {
  const bool chain = w.has(Part::Chain);
  return w.hasDay() && chain;
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
                 w.cycleOrigin(at)});
  w.follows("T_out", "T_p");
  w.compare(peak, limit);
}

void torqueAverage(const CheckContext& context, CheckWriter& w) {
  w.formula("T_av = (\u2211|n| \u0394t |T|^p / \u2211|n| \u0394t)^{1/p} against T_A");
  w.source(kMeanSource);
  const Stage& stage = context.drive();
  double limit = stage.averageTorque;
  w.follows("T_av", isSet(limit) ? "T_A" : "T_r");
  if (isSet(limit)) {
    w.stageInput(limit, "averageTorque");
  } else {
    w.note("No limit of the average torque is given: the rated torque stands in for it.");
    limit = w.stageInput(stage.ratedTorque, "ratedTorque");
  }
  w.stageInput(stage.lifeExponent, "lifeExponent");
  if (!hasMeans(w)) return;
  const double mean = w.value(meanTorque(context), {"T_av", "Average output torque",
                                                    Quantity::Torque, "N*m", w.meanOrigin()});
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
  w.value(peak, {"n_in", "Highest input speed", Quantity::AngularSpeed, "rpm", w.cycleOrigin(at)});
  w.follows("n_in", "n_p");
  w.compare(peak, limit);
}

void speedAverage(const CheckContext& context, CheckWriter& w) {
  w.formula("n_av = \u2211|n| \u0394t / t_c against n_A");
  w.source("Mean input speed over the cycle, dwells included; common practice, no source");
  const double limit = w.stageInput(context.drive().averageSpeed, "averageSpeed");
  if (!hasMeans(w)) return;
  const double mean = w.value(meanSpeed(context), {"n_av", "Average input speed",
                                                   Quantity::AngularSpeed, "rpm", w.meanOrigin()});
  w.follows("n_av", "n_A");
  w.compare(mean, limit);
}

/// Rollers pressed together by a constant force: their life does not depend on the torque.
bool lastsByContacts(const Stage& stage) {
  return stage.family == StageFamily::Traction && isSet(stage.traction.contactRating);
}

double contactLife(const CheckContext& context, double speed, CheckWriter& w) {
  const Stage& stage = context.drive();
  w.formula("L = a_1 (C_c / F_N)^p 10^6 / \u03bd against L_w");
  w.source("ISO 281 carried over to a rolling contact; read second-hand");
  w.stageInput(stage.traction.contactRating, "contactRating");
  w.stageInput(stage.traction.contactForce, "contactForce");
  w.value(10.0 / 3, {"p", "Exponent of line contact", Quantity::Number, "1", "ISO 281"});
  const auto passes = contactPasses(stage.traction);
  w.value(passes ? passes->most() * speed / (2 * std::numbers::pi) : kUnset,
          {"\u03bd", "Load changes of the surface a second", Quantity::Frequency, "Hz"});
  return tractionLife(stage.traction, speed).value_or(speed > 0 ? kUnset : kForever);
}

double ratedLifeReached(const CheckContext& context, double speed, CheckWriter& w) {
  const Stage& stage = context.drive();
  w.formula("L = a_1 L_r (T_r / T_av)^p n_r / n_av against L_w");
  w.source("ISO 281 basic rating life scaled from the rated point; read second-hand");
  w.stageInput(stage.ratedLife, "ratedLife");
  w.stageInput(stage.ratedTorque, "ratedTorque");
  w.stageInput(stage.ratedSpeed, "ratedSpeed");
  w.stageInput(stage.lifeExponent, "lifeExponent");
  if (!w.has(Part::Chain)) return kUnset;
  const double torque = w.value(meanTorque(context), {"T_av", "Average output torque",
                                                      Quantity::Torque, "N*m", w.meanOrigin()});
  return driveLife(stage.ratedLife, stage.ratedTorque, stage.ratedSpeed, stage.lifeExponent, torque,
                   speed);
}

void life(const CheckContext& context, CheckWriter& w) {
  w.note("In hours of the whole cycle with its dwells.");
  const Requirements& wanted = context.project.requirements;
  w.input(wanted.life, "requirements.life");
  w.input(wanted.reliability, "requirements.reliability");
  double speed = kUnset;
  if (hasMeans(w)) {
    speed = w.value(meanSpeed(context),
                    {"n_av", "Average input speed", Quantity::AngularSpeed, "rpm", w.meanOrigin()});
  }
  const double basic = lastsByContacts(context.drive()) ? contactLife(context, speed, w)
                                                        : ratedLifeReached(context, speed, w);
  const double factor =
      w.value(reliabilityFactor(wanted.reliability),
              {"a_1", "Factor of the reliability", Quantity::Number, "1", "derived", kReliability});
  const std::string_view expression = lastsByContacts(context.drive())
                                          ? "a_1 · (C_c / F_N)^p · 10^6 / \u03bd"
                                          : "a_1 · L_r · (T_r / T_av)^p · n_r / n_av";
  w.follows("L_w", "L");
  w.compare(wanted.life, w.value(factor * basic, {"L", "Life reached", Quantity::Time, "h",
                                                  "derived", expression}));
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
