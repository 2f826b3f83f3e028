#include "core/physics/bus_energy.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace jw {
namespace {

using Eigen::Index;

/// The square of the capacitor's voltage, and what leaves the bus. With the resistor off the square
/// falls in a straight line, with it on exponentially.
class Capacitor {
 public:
  Capacitor(const BusModel& bus, BusEnergy& out)
      : bus_(bus), out_(out), rest_(bus.voltage * bus.voltage), square_(rest_) {
    if (std::isfinite(bus.brakeResistance)) {
      switching_ = std::max(rest_, bus.brakeVoltage * bus.brakeVoltage);
    }
  }

  double voltage() const { return std::sqrt(square_); }
  double square() const { return square_; }
  double energyTo(double square) const { return bus_.capacitance * (square - square_) / 2; }
  bool brakes() const { return std::isfinite(switching_); }
  void set(double square) { square_ = std::max(rest_, square); }
  /// Full up to the level at which the resistor switches on: where small surpluses end.
  void fill() { square_ = switching_; }

  void step(double power, double duration) {
    if (duration == 0) return;
    if (power < 0) out_.regenerated -= power * duration;
    if (power < 0 && bus_.takesBack) {
      giveBack(-power, duration);
    } else {
      double left = duration;
      if (square_ > switching_) left = brakeFor(power, left);
      if (left > 0) power >= 0 ? draw(power, left) : takeUp(-power, left);
    }
    out_.voltagePeak = std::max(out_.voltagePeak, voltage());
  }

 private:
  void giveBack(double power, double duration) {
    const double taken = -sourcePower(bus_.sourceVoltage, bus_.sourceResistance, -power);
    out_.returned += taken * duration;
    out_.sourceLoss += (power - taken) * duration;
    const double lifted = saggedVoltage(bus_.voltage, bus_.sourceResistance, -power);
    out_.voltagePeak = std::max(out_.voltagePeak, lifted);
  }

  /// From the capacitor what it has above the source's voltage, then from the source.
  void draw(double power, double duration) {
    const double stored = -energyTo(rest_);  // not finite without a capacitor
    const double own = std::isfinite(stored) ? std::min(power * duration, stored) : 0;
    if (own > 0) set(square_ - 2 * own / bus_.capacitance);
    if (own >= power * duration) return;
    square_ = rest_;
    const double fromBus = power * duration - own;
    const double given =
        fromBus * sourcePower(bus_.sourceVoltage, bus_.sourceResistance, power) / power;
    out_.drawn += given;
    out_.sourceLoss += given - fromBus;
  }

  /// Into the capacitor up to the switching level, the rest through the resistor.
  void takeUp(double power, double duration) {
    const double space = energyTo(switching_);
    if (!brakes() || power * duration <= space) {
      square_ += 2 * power * duration / bus_.capacitance;
      return;
    }
    square_ = switching_;
    const double left = duration - space / power;
    if (power * bus_.brakeResistance > switching_) {
      brakeFor(-power, left);
    } else {
      brakeAt(power, left);
    }
  }

  /// The resistor switched on and off so that it takes `power` [W] on average.
  void brakeAt(double power, double duration) {
    out_.braked += power * duration;
    out_.brakePowerPeak = std::max(out_.brakePowerPeak, power);
  }

  /// The resistor on for good, down to the switching level; returns the time [s] left then.
  double brakeFor(double power, double duration) {
    const double rest = -power * bus_.brakeResistance;  // where V² ends
    const double halfTime = bus_.brakeResistance * bus_.capacitance / 2;
    const double before = square_;
    double time = duration;
    if (rest < switching_) {
      time = std::min(time, halfTime * std::log1p((before - switching_) / (switching_ - rest)));
    }
    const double share = halfTime > 0 ? -std::expm1(-time / halfTime) : 1;
    square_ = time < duration ? switching_ : before + (rest - before) * share;
    out_.braked += -power * time - bus_.capacitance * (square_ - before) / 2;
    out_.brakePowerPeak =
        std::max(out_.brakePowerPeak, std::max(before, square_) / bus_.brakeResistance);
    return duration - time;
  }

  const BusModel& bus_;
  BusEnergy& out_;
  double rest_;
  double switching_ = std::numeric_limits<double>::infinity();
  double square_;
};

/// One cycle from the capacitor's present voltage.
void followCycle(const BusModel& bus, const Eigen::ArrayXd& power, const Eigen::ArrayXd& duration,
                 Capacitor& capacitor, BusEnergy& tally) {
  const Index n = power.size();
  tally = BusEnergy{};
  tally.voltagePeak = std::max(bus.voltage, capacitor.voltage());
  tally.voltage.resize(n + 1);
  tally.voltage[0] = capacitor.voltage();
  for (Index i = 0; i < n; ++i) {
    capacitor.step(power[i], duration[i]);
    tally.voltage[i + 1] = capacitor.voltage();
  }
}

}  // namespace

BusEnergy followBus(const BusModel& bus, const Eigen::ArrayXd& power,
                    const Eigen::ArrayXd& duration) {
  constexpr int kCycles = 50;
  BusEnergy tally;
  Capacitor capacitor(bus, tally);
  double earlierStart = 0;
  double earlierEnd = 0;
  for (int cycle = 0; cycle < kCycles; ++cycle) {
    const double start = capacitor.square();
    followCycle(bus, power, duration, capacitor, tally);
    const double end = capacitor.square();
    const double gained = bus.capacitance * std::abs(end - start) / 2;
    tally.settles = gained <= 1e-9 * (tally.regenerated + 1e-12);
    if (tally.settles || (!capacitor.brakes() && cycle == 2)) break;
    if (cycle > 0) {
      // What stays gathers cycle by cycle: up to the resistor in equal steps, then in falling ones.
      const double slope = (end - earlierEnd) / (start - earlierStart);
      slope < 1 - 1e-9 ? capacitor.set(end + (end - start) * slope / (1 - slope))
                       : capacitor.fill();
    }
    earlierStart = start;
    earlierEnd = end;
  }
  if (!tally.settles && !capacitor.brakes()) {
    tally.voltagePeak = std::numeric_limits<double>::infinity();
  }
  const double period = duration.sum();
  tally.brakePowerMean = period > 0 ? tally.braked / period : 0;
  return tally;
}

double saggedVoltage(double openVoltage, double sourceResistance, double power) {
  return (openVoltage + std::sqrt(openVoltage * openVoltage - 4 * sourceResistance * power)) / 2;
}

double sourcePower(double openVoltage, double sourceResistance, double power) {
  if (sourceResistance == 0) return power;
  const double sagged = saggedVoltage(openVoltage, sourceResistance, power);
  return power * openVoltage / (std::isnan(sagged) ? openVoltage / 2 : sagged);
}

}  // namespace jw
