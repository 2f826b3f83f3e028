#include "core/physics/dq_machine.h"

#include <algorithm>
#include <numbers>

#include <boost/math/tools/minima.hpp>

#include "core/physics/bracketed_root.h"

namespace jw {
namespace {

/// Point on the current circle, `angle` ahead of the q axis (weakening the magnet when positive).
DqCurrent onCircle(double amplitude, double angle) {
  return {-amplitude * std::sin(angle), amplitude * std::cos(angle)};
}

/// Currents for a voltage vector of this amplitude and angle: the two voltage equations solved.
DqCurrent atVoltage(const DqMachine& m, double speed, double amplitude, double angle) {
  const double w = m.polePairs * speed;
  const double xd = w * m.inductanceD;
  const double xq = w * m.inductanceQ;
  const double vd = amplitude * std::cos(angle);
  const double vq = amplitude * std::sin(angle) - w * m.fluxLinkage;
  const double determinant = m.resistance * m.resistance + xd * xq;
  return {(m.resistance * vd + xq * vq) / determinant, (m.resistance * vq - xd * vd) / determinant};
}

/// The voltage limit of a machine with equal inductances: a disc in the current plane.
struct VoltageDisc {
  double d, q, radius;
};

VoltageDisc voltageDisc(const DqMachine& m, double speed, double voltage) {
  const double w = m.polePairs * speed;
  const double x = w * m.inductanceD;
  const double square = m.resistance * m.resistance + x * x;
  return {-w * m.fluxLinkage * x / square, -w * m.fluxLinkage * m.resistance / square,
          voltage / std::sqrt(square)};
}

/// Highest point of two overlapping discs, the second about the origin.
std::optional<DqCurrent> highestOfBoth(const VoltageDisc& disc, double current) {
  const double distance = std::hypot(disc.d, disc.q);
  if (distance > disc.radius + current) return std::nullopt;
  if (std::hypot(disc.d, current - disc.q) <= disc.radius) return DqCurrent{0, current};
  const DqCurrent top{disc.d, disc.q + disc.radius};
  if (top.amplitude() <= current) return top;
  // Where the two circles meet; the meeting point with the larger i_q.
  const double along =
      (distance * distance + current * current - disc.radius * disc.radius) / (2 * distance);
  const double across = std::sqrt(std::max(0.0, current * current - along * along));
  const double ud = disc.d / distance;
  const double uq = disc.q / distance;
  const DqCurrent a{along * ud - across * uq, along * uq + across * ud};
  const DqCurrent b{along * ud + across * uq, along * uq - across * ud};
  return a.q > b.q ? a : b;
}

/// Most torque per volt: the strongest point of the voltage limit, whatever the current.
DqCurrent mostTorquePerVolt(const DqMachine& m, double speed, double voltage) {
  constexpr int kGrid = 48;
  constexpr double kStep = 2 * std::numbers::pi / kGrid;
  const auto weakness = [&](double angle) {
    return -m.torque(atVoltage(m, speed, voltage, angle));
  };
  double best = 0;
  for (int k = 1; k < kGrid; ++k) {
    if (weakness(k * kStep) < weakness(best)) best = k * kStep;
  }
  const double angle =
      boost::math::tools::brent_find_minima(weakness, best - kStep, best + kStep, 40).first;
  return atVoltage(m, speed, voltage, angle);
}

/// Nearest point to most torque per ampere on the current circle that fits the voltage, further
/// into the weakening side; empty if none does.
std::optional<DqCurrent> bothLimits(const DqMachine& m, double speed, double voltage,
                                    double current) {
  constexpr int kGrid = 64;
  const DqCurrent start = m.mostTorquePerAmp(current);
  const double from = std::atan2(-start.d, start.q);
  const double step = (std::numbers::pi / 2 - from) / kGrid;
  const auto excess = [&](double angle) {
    return m.voltage(onCircle(current, angle), speed) - voltage;
  };
  for (int k = 1; k <= kGrid; ++k) {
    if (excess(from + k * step) > 0) continue;
    return onCircle(current, bracketedRoot(excess, from + (k - 1) * step, from + k * step));
  }
  return std::nullopt;
}

/// i_q that makes `torque` with this i_d.
double quadratureFor(const DqMachine& m, double torque, double d) {
  return torque / (1.5 * m.polePairs * (m.fluxLinkage + (m.inductanceD - m.inductanceQ) * d));
}

/// i_d of the least voltage along the line of constant torque, and thus the last that can help.
double deepestWeakening(const DqMachine& m, double speed, double torque, double from) {
  const double reach = std::max(m.characteristicCurrent(), std::abs(from)) * 1.5;
  const auto voltage = [&](double d) { return m.voltage({d, quadratureFor(m, torque, d)}, speed); };
  return boost::math::tools::brent_find_minima(voltage, -reach, from, 40).first;
}

}  // namespace

double DqMachine::torque(const DqCurrent& i) const {
  return 1.5 * polePairs * (fluxLinkage + (inductanceD - inductanceQ) * i.d) * i.q;
}

double DqMachine::voltage(const DqCurrent& i, double speed) const {
  const double w = polePairs * speed;
  return std::hypot(resistance * i.d - w * inductanceQ * i.q,
                    resistance * i.q + w * (inductanceD * i.d + fluxLinkage));
}

double DqMachine::characteristicCurrent() const {
  return inductanceD > 0 ? fluxLinkage / inductanceD : std::numeric_limits<double>::infinity();
}

DqCurrent DqMachine::mostTorquePerAmp(double amplitude) const {
  const double saliency = inductanceQ - inductanceD;
  if (saliency == 0) return {0, amplitude};
  // Without cancellation for small saliency.
  const double root =
      std::sqrt(fluxLinkage * fluxLinkage + 8 * saliency * saliency * amplitude * amplitude);
  const double d = -2 * saliency * amplitude * amplitude / (fluxLinkage + root);
  return {d, std::sqrt(std::max(0.0, amplitude * amplitude - d * d))};
}

DqCurrent DqMachine::leastCurrent(double torque) const {
  const double straight = torque / (1.5 * polePairs * fluxLinkage);
  if (!salient() || torque == 0) return {0, straight};
  // The saliency only helps, so the amplitude lies below the straight one.
  const double size = std::abs(torque);
  const auto lack = [&](double amplitude) {
    return this->torque(mostTorquePerAmp(amplitude)) - size;
  };
  DqCurrent i = mostTorquePerAmp(bracketedRoot(lack, 0, std::abs(straight)));
  i.q = std::copysign(i.q, torque);
  return i;
}

std::optional<DqCurrent> DqMachine::strongest(double speed, double voltage, double current) const {
  if (!salient()) return highestOfBoth(voltageDisc(*this, speed, voltage), current);
  const DqCurrent free = mostTorquePerAmp(current);
  if (this->voltage(free, speed) <= voltage) return free;
  const DqCurrent perVolt = mostTorquePerVolt(*this, speed, voltage);
  if (perVolt.amplitude() <= current) return perVolt;
  return bothLimits(*this, speed, voltage, current);
}

std::optional<DqCurrent> DqMachine::operatingPoint(double speed, double torque,
                                                   double voltage) const {
  const DqCurrent least = leastCurrent(torque);
  if (this->voltage(least, speed) <= voltage) return least;
  if (inductanceD == 0) return std::nullopt;
  const double deepest = deepestWeakening(*this, speed, torque, least.d);
  const auto excess = [&](double d) {
    return this->voltage({d, quadratureFor(*this, torque, d)}, speed) - voltage;
  };
  if (excess(deepest) > 0) return std::nullopt;
  const double d = bracketedRoot(excess, deepest, least.d);
  return DqCurrent{d, quadratureFor(*this, torque, d)};
}

}  // namespace jw
