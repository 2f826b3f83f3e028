#include "core/physics/motor_constants.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

namespace jw {
namespace {

constexpr double kSqrt2 = std::numbers::sqrt2;
constexpr double kSqrt3 = std::numbers::sqrt3;
/// Figures that differ by more than this share contradict each other.
constexpr double kTolerance = 0.03;

bool isDirect(const Motor& motor) { return motor.kind != MotorKind::Sinusoidal; }

/// Phase amplitude of the equivalent star [V] for one volt in the measure of the data sheet. In
/// delta a phase winding lies between two lines.
double phaseAmplitudePerVolt(VoltageMeasure measure, WindingConnection connection) {
  const double toStar = connection == WindingConnection::Delta ? 1 / kSqrt3 : 1.0;
  switch (measure) {
    case VoltageMeasure::LineToLinePeak: return 1 / kSqrt3;
    case VoltageMeasure::LineToLineRms: return kSqrt2 / kSqrt3;
    case VoltageMeasure::PhasePeak: return toStar;
    case VoltageMeasure::PhaseRms: return kSqrt2 * toStar;
  }
  throw std::logic_error("unknown voltage measure");
}

/// The same for a block-commutated machine, whose direct voltage is the flat line-to-line EMF: two
/// star phases in series, each flat at the same time.
double directPerVolt(VoltageMeasure measure, WindingConnection connection) {
  const double phases = connection == WindingConnection::Star ? 2 : 1;
  switch (measure) {
    case VoltageMeasure::LineToLinePeak: return 1;
    case VoltageMeasure::LineToLineRms: return kSqrt2;
    case VoltageMeasure::PhasePeak: return phases;
    case VoltageMeasure::PhaseRms: return kSqrt2 * phases;
  }
  throw std::logic_error("unknown voltage measure");
}

double emfPerVolt(const Motor& motor, VoltageMeasure measure) {
  if (motor.kind == MotorKind::BrushedDc) return 1;
  return isDirect(motor) ? directPerVolt(measure, motor.connection)
                         : phaseAmplitudePerVolt(measure, motor.connection);
}

/// One data-sheet figure turned into phase EMF amplitude per speed [V·s/rad].
struct EmfFigure {
  std::string_view key;
  double emf;     ///< kUnset when not given
  double stated;  ///< as stated, internal unit
  Quantity quantity;
  std::string_view unit;
};

double emfFromTorqueConstant(const Motor& motor) {
  if (isDirect(motor)) return motor.torqueConstant;
  const bool rms = motor.torqueConstantMeasure == CurrentMeasure::Rms;
  return motor.torqueConstant / (rms ? 1.5 * kSqrt2 : 1.5);
}

double emfFromFluxLinkage(const Motor& motor) {
  if (isDirect(motor)) return kUnset;
  const bool delta = motor.connection == WindingConnection::Delta;
  return motor.polePairs * motor.fluxLinkage / (delta ? kSqrt3 : 1.0);
}

/// All figures that give the EMF, the one that wins first.
std::vector<EmfFigure> emfFigures(const Motor& m) {
  return {{"torqueConstant", emfFromTorqueConstant(m), m.torqueConstant, Quantity::TorqueConstant,
           "N*m/A"},
          {"backEmfConstant", m.backEmfConstant * emfPerVolt(m, m.backEmfMeasure),
           m.backEmfConstant, Quantity::VoltageConstant, "V/krpm"},
          {"speedConstant", emfPerVolt(m, m.speedConstantMeasure) / m.speedConstant,
           m.speedConstant, Quantity::SpeedConstant, "rpm/V"},
          {"fluxLinkage", emfFromFluxLinkage(m), m.fluxLinkage, Quantity::FluxLinkage, "Wb"}};
}

InputError contradiction(const EmfFigure& used, const EmfFigure& other) {
  // Every figure is proportional to the EMF, but K_v to its inverse.
  const double ratio = used.emf / other.emf;
  const double implied =
      other.quantity == Quantity::SpeedConstant ? other.stated / ratio : other.stated * ratio;
  return {fmt::format("{} says {}, but {} means {}", other.key,
                      formatQuantity(other.stated, other.quantity, other.unit), used.key,
                      formatQuantity(implied, other.quantity, other.unit)),
          fmt::format("motor.{}", other.key),
          fmt::format("check which convention (rms or peak, line or phase) each figure uses; {} is "
                      "used",
                      used.key)};
}

double starResistance(const Motor& m, double value, WindingMeasure measure) {
  if (measure == WindingMeasure::LineToLine) return value / 2;
  return m.connection == WindingConnection::Delta ? value / 3 : value;
}

double resistanceOf(const Motor& m) {
  if (m.kind == MotorKind::BrushedDc) return m.resistance;
  const double star = starResistance(m, m.resistance, m.resistanceMeasure);
  return isDirect(m) ? 2 * star : star;
}

double starInductance(const Motor& m, double value) {
  if (isDirect(m) || !isSet(value)) return 0;
  return starResistance(m, value, m.inductanceMeasure);
}

/// No-load torque from readings of the no-load current: all constant from one, split from two.
void dragFromNoLoad(const Motor& m, MotorConstants& c) {
  if (!isSet(m.noLoadCurrent)) return;
  const bool rms = m.torqueConstantMeasure == CurrentMeasure::Rms;
  const double perAmp = rms ? c.torquePerRmsAmp() : c.torquePerAmp;
  c.dragTorque = perAmp * m.noLoadCurrent;
  c.dragDamping = 0;
  if (!isSet(m.noLoadCurrent2) || !isSet(m.noLoadSpeed) || !isSet(m.noLoadSpeed2)) return;
  if (m.noLoadSpeed == m.noLoadSpeed2) return;
  const double slope =
      perAmp * (m.noLoadCurrent2 - m.noLoadCurrent) / (m.noLoadSpeed2 - m.noLoadSpeed);
  const double constant = c.dragTorque - slope * m.noLoadSpeed;
  // Readings that fall with speed, or start below nothing, are kept as far as they make sense.
  c.dragDamping = std::max(0.0, slope);
  c.dragTorque = std::max(0.0, slope < 0 ? c.dragTorque : constant);
}

InputError missing(std::string_view key, std::string_view what) {
  return {fmt::format("{} is not given", what), fmt::format("motor.{}", key),
          "take it from the motor's data sheet"};
}

}  // namespace

double MotorConstants::drag(double speed) const {
  if (speed == 0) return 0;
  return std::copysign(dragTorque, speed) + dragDamping * speed;
}

double MotorConstants::torque(const DqCurrent& i) const {
  return (torquePerAmp + 1.5 * polePairs * (inductance - inductanceQ) * i.d) * i.q;
}

double MotorConstants::voltage(const DqCurrent& i, double speed) const {
  const double w = polePairs * speed;
  return std::hypot(resistance * i.d - w * inductanceQ * i.q,
                    resistance * i.q + w * inductance * i.d + emfPerSpeed * speed);
}

tl::expected<MotorConversion, InputError> convertMotor(const Motor& motor) {
  MotorConversion result;
  const EmfFigure* used = nullptr;
  const std::vector<EmfFigure> figures = emfFigures(motor);
  for (const EmfFigure& figure : figures) {
    if (!isSet(figure.emf)) continue;
    if (used == nullptr) {
      used = &figure;
    } else if (std::abs(figure.emf / used->emf - 1) > kTolerance) {
      result.contradictions.push_back(contradiction(*used, figure));
    }
  }
  if (used == nullptr) return tl::unexpected(missing("torqueConstant", "a torque constant"));
  if (!isSet(motor.resistance)) return tl::unexpected(missing("resistance", "the resistance"));
  MotorConstants& c = result.constants;
  c.direct = isDirect(motor);
  c.polePairs = motor.polePairs;
  c.emfPerSpeed = used->emf;
  c.torquePerAmp = c.direct ? used->emf : 1.5 * used->emf;
  c.resistance = resistanceOf(motor);
  c.inductance = starInductance(motor, motor.inductance);
  c.inductanceQ =
      isSet(motor.inductanceQ) ? starInductance(motor, motor.inductanceQ) : c.inductance;
  c.dragTorque = motor.dragTorque;
  c.dragDamping = motor.dragDamping;
  dragFromNoLoad(motor, c);
  return result;
}

MotorConstants atTemperature(const MotorConstants& constants, const Motor& motor, double winding,
                             double magnet) {
  const auto factor = [&](double coefficient, double temperature) {
    // Far outside the linear law neither resistance nor magnet may vanish or turn round.
    return std::max(0.05, 1 + coefficient * (temperature - 20)) /
           std::max(0.05, 1 + coefficient * (motor.referenceTemperature - 20));
  };
  MotorConstants at = constants;
  at.resistance *= factor(motor.copperCoefficient, winding);
  at.torquePerAmp *= factor(motor.magnetCoefficient, magnet);
  at.emfPerSpeed *= factor(motor.magnetCoefficient, magnet);
  return at;
}

double amplitudeOf(const MotorConstants& constants, double current, CurrentMeasure measure) {
  if (constants.direct || measure == CurrentMeasure::Amplitude) return current;
  return current * kSqrt2;
}

}  // namespace jw
