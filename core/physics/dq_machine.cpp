#include "core/physics/dq_machine.h"

#include <algorithm>
#include <cstdint>
#include <numbers>

#include <boost/math/tools/minima.hpp>

#include "core/physics/bracketed_root.h"

namespace jw {
namespace {

/// Where f is least between low and high, and how small. Ends after some steps even where f has no
/// number to give.
template <class F>
std::pair<double, double> leastWithin(const F& f, double low, double high) {
  std::uintmax_t steps = 100;
  return boost::math::tools::brent_find_minima(f, low, high, 40, steps);
}

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
  double least = weakness(0);
  for (int k = 1; k < kGrid; ++k) {
    const double here = weakness(k * kStep);
    if (here < least) least = here, best = k * kStep;
  }
  const double angle = leastWithin(weakness, best - kStep, best + kStep).first;
  return atVoltage(m, speed, voltage, angle);
}

/// Nearest point to most torque per ampere on the current circle that fits the voltage, further
/// into the weakening side; empty if none does.
std::optional<DqCurrent> bothLimits(const DqMachine& m, double speed, double voltage,
                                    double current) {
  constexpr int kGrid = 12;
  const DqCurrent start = m.mostTorquePerAmp(current);
  const double from = std::atan2(-start.d, start.q);
  const double step = (std::numbers::pi / 2 - from) / kGrid;
  const auto excess = [&](double angle) {
    return m.voltage(onCircle(current, angle), speed) - voltage;
  };
  int lowest = 1;
  double least = std::numeric_limits<double>::infinity();
  for (int k = 1; k <= kGrid; ++k) {
    const double here = excess(from + k * step);
    if (here <= 0) {
      return onCircle(current, bracketedRoot(excess, from + (k - 1) * step, from + k * step));
    }
    if (here < least) least = here, lowest = k;
  }
  // The voltage may dip below the limit between two points of the grid.
  const auto [angle, bottom] =
      leastWithin(excess, from + (lowest - 1) * step, from + std::min(lowest + 1, kGrid) * step);
  if (!(bottom <= 0)) return std::nullopt;
  return onCircle(current, bracketedRoot(excess, from + (lowest - 1) * step, angle));
}

/// Whether less current would give more torque along the voltage limit: at a point on both limits
/// the torque's gradient is a of the current's and b of the voltage's, with a < 0 (Kuhn and
/// Tucker).
bool lessCurrentIsMore(const DqMachine& m, double speed, const DqCurrent& i) {
  const double w = m.polePairs * speed;
  const double vd = m.resistance * i.d - w * m.inductanceQ * i.q;
  const double vq = m.resistance * i.q + w * (m.inductanceD * i.d + m.fluxLinkage);
  const double voltageD = vd * m.resistance + vq * w * m.inductanceD;
  const double voltageQ = vq * m.resistance - vd * w * m.inductanceQ;
  const double saliency = m.inductanceD - m.inductanceQ;
  const double torqueD = saliency * i.q;
  const double torqueQ = m.fluxLinkage + saliency * i.d;
  const double share =
      (torqueD * voltageQ - torqueQ * voltageD) / (i.d * voltageQ - i.q * voltageD);
  return !(share >= 0);
}

/// i_q that makes `torque` with this i_d.
double quadratureFor(const DqMachine& m, double torque, double d) {
  return torque / (1.5 * m.polePairs * (m.fluxLinkage + (m.inductanceD - m.inductanceQ) * d));
}

/// The least weakening for i_q at the voltage limit with equal inductances: the larger root of
/// (R² + X²) i_d² + 2 X E i_d + (R² + X²) i_q² + 2 R E i_q + E² = V², E the EMF, X the reactance.
std::optional<DqCurrent> equalInductancePoint(const DqMachine& m, double speed, double q,
                                              double voltage) {
  const double w = m.polePairs * speed;
  const double x = w * m.inductanceD;
  const double emf = w * m.fluxLinkage;
  const double square = m.resistance * m.resistance + x * x;
  const double half = x * emf / square;
  const double rest = q * q + (2 * m.resistance * emf * q + emf * emf - voltage * voltage) / square;
  const double discriminant = half * half - rest;
  if (discriminant < 0) return std::nullopt;
  return DqCurrent{-rest / (half + std::sqrt(discriminant)), q};
}

/// Square of the voltage allowed at some currents, and its change with i_d.
struct AllowedSquare {
  double value;
  double slope = 0;
};

/// A voltage limit that is the same for all currents.
struct StiffLimit {
  double voltage;

  AllowedSquare square(const DqCurrent&, double) const { return {voltage * voltage}; }
};

/// One that falls with what the currents draw.
struct SaggingLimit {
  const SaggingVoltage& source;

  /// `slopeQ` = d i_q / d i_d along the line of constant torque.
  AllowedSquare square(const DqCurrent& i, double slopeQ) const {
    const double amplitude = i.amplitude();
    const double left = source.at(amplitude);
    if (amplitude == 0) return {left * left};
    const double amplitudeSlope = (i.d + i.q * slopeQ) / amplitude;
    return {left * left, 2 * left * source.slope(amplitude) * amplitudeSlope};
  }
};

/// The first i_d below `from` that meets the limit along the line of constant torque, by Newton's
/// rule on the excess of the voltage's square; empty if there is none. With q = c / flux and
/// flux = lambda + (L_d - L_q) i_d the terms in R w cancel but for a constant and
/// |v|² = (R² + X_d²) i_d² + (R² + X_q²) q² + 2 w X_d lambda i_d + ..., convex where flux > 0; so
/// are the current's amplitude, with it the power drawn, and less the square of what a sagging bus
/// leaves. The rule thus falls to the root without passing it, and where a tangent rises or its
/// root lies outside of what source and flux allow, there is none.
template <class Limit>
std::optional<double> weakeningByNewton(const DqMachine& m, double speed, double torque,
                                        double from, const Limit& limit) {
  constexpr int kPasses = 60;  // a double root only halves the error
  const double w = m.polePairs * speed;
  const double saliency = m.inductanceD - m.inductanceQ;
  double d = from;
  for (int pass = 0; pass < kPasses; ++pass) {
    const double flux = m.fluxLinkage + saliency * d;
    if (!(flux > 0)) return std::nullopt;
    const double q = torque / (1.5 * m.polePairs * flux);
    const double slopeQ = -saliency * q / flux;
    const double vd = m.resistance * d - w * m.inductanceQ * q;
    const double vq = m.resistance * q + w * (m.inductanceD * d + m.fluxLinkage);
    const AllowedSquare allowed = limit.square({d, q}, slopeQ);
    const double excess = vd * vd + vq * vq - allowed.value;
    if (excess < 1e-12 * allowed.value) return d;
    const double slope = 2 * (vd * (m.resistance - w * m.inductanceQ * slopeQ) +
                              vq * (m.resistance * slopeQ + w * m.inductanceD)) -
                         allowed.slope;
    if (!(excess > 0) || !(slope > 0)) return std::nullopt;
    d -= excess / slope;
    if (excess < 1e-7 * allowed.value) return d;  // the rule squares the error
  }
  return std::nullopt;
}

/// The least weakening below `least` that meets the limit; empty if none does.
template <class Limit>
std::optional<DqCurrent> weakenedPoint(const DqMachine& m, double speed, double torque,
                                       const DqCurrent& least, const Limit& limit) {
  if (m.inductanceD == 0 && m.inductanceQ == 0) return std::nullopt;
  const auto d = weakeningByNewton(m, speed, torque, least.d, limit);
  if (!d) return std::nullopt;
  return DqCurrent{*d, quadratureFor(m, torque, *d)};
}

}  // namespace

double DqMachine::torque(const DqCurrent& i) const {
  return 1.5 * polePairs * (fluxLinkage + (inductanceD - inductanceQ) * i.d) * i.q;
}

double DqMachine::voltage(const DqCurrent& i, double speed) const {
  const double w = polePairs * speed;
  const double vd = resistance * i.d - w * inductanceQ * i.q;
  const double vq = resistance * i.q + w * (inductanceD * i.d + fluxLinkage);
  return std::sqrt(vd * vd + vq * vq);  // hypot takes most of the search's time
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
  // On the line of most torque per ampere L i_d = -(L i_q)² / g with L = L_q - L_d and
  // g = lambda/2 + sqrt(lambda²/4 + (L i_q)²), and the torque is 1.5 p g i_q: convex, so Newton's
  // rule from above falls to the root. Above it, as g exceeds lambda and lambda/2 + L i_q.
  const double saliency = std::abs(inductanceQ - inductanceD);
  const double wanted = std::abs(torque) / (1.5 * polePairs);
  const double half = fluxLinkage / 2;
  double q = std::min(wanted / fluxLinkage,
                      2 * wanted / (half + std::sqrt(half * half + 4 * saliency * wanted)));
  for (int pass = 0; pass < 60; ++pass) {
    const double root = std::sqrt(half * half + saliency * saliency * q * q);
    const double g = half + root;
    const double step = (g * q - wanted) / (g + saliency * saliency * q * q / root);
    q -= step;
    if (!(step > 1e-7 * q)) break;  // the rule squares the error
  }
  return {(inductanceD - inductanceQ) * q * q * q / wanted, std::copysign(q, torque)};
}

std::optional<DqCurrent> DqMachine::strongest(double speed, double voltage, double current) const {
  if (!(voltage >= 0) || !(current >= 0)) return std::nullopt;
  if (!salient()) return highestOfBoth(voltageDisc(*this, speed, voltage), current);
  if (std::isfinite(current)) {
    const DqCurrent free = mostTorquePerAmp(current);
    if (this->voltage(free, speed) <= voltage) return free;
  }
  const auto both = std::isfinite(current) ? bothLimits(*this, speed, voltage, current)
                                           : std::optional<DqCurrent>();
  if (both && !lessCurrentIsMore(*this, speed, *both)) return both;
  const DqCurrent perVolt = mostTorquePerVolt(*this, speed, voltage);
  return perVolt.amplitude() <= current ? perVolt : both;
}

std::optional<DqCurrent> DqMachine::operatingPoint(double speed, double torque,
                                                   double voltage) const {
  const DqCurrent least = leastCurrent(torque);
  if (this->voltage(least, speed) <= voltage) return least;
  if (inductanceD == 0 && inductanceQ == 0) return std::nullopt;
  if (!salient()) return equalInductancePoint(*this, speed, least.q, voltage);
  return weakenedPoint(*this, speed, torque, least, StiffLimit{voltage});
}

std::optional<DqCurrent> DqMachine::operatingPoint(double speed, double torque,
                                                   const SaggingVoltage& source) const {
  if (source.sag == 0) return operatingPoint(speed, torque, source.stiff);
  const DqCurrent least = leastCurrent(torque);
  const double left = source.at(least.amplitude());
  if (std::isnan(left)) return std::nullopt;  // more current only draws more
  if (voltage(least, speed) <= left) return least;
  return weakenedPoint(*this, speed, torque, least, SaggingLimit{source});
}

}  // namespace jw
