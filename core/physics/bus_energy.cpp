#include "core/physics/bus_energy.h"

#include <algorithm>
#include <cmath>

namespace jw {
namespace {

using Eigen::Index;

/// The capacitor's energy above its resting voltage, and what leaves the bus.
class Capacitor {
 public:
  Capacitor(const BusModel& bus, BusEnergy& out) : bus_(bus), out_(out) {
    const double v = std::max(bus.brakeVoltage, bus.voltage);
    ceiling_ =
        std::isfinite(bus.brakeResistance) ? energyAt(v) : std::numeric_limits<double>::infinity();
  }

  double stored() const { return stored_; }
  bool overflows() const { return stored_ > ceiling_; }
  double voltage() const {
    if (stored_ == 0) return bus_.voltage;
    return std::sqrt(bus_.voltage * bus_.voltage + 2 * stored_ / bus_.capacitance);
  }

  void step(double power, double duration) {
    const double before = stored_;
    const double able = brakePower();
    if (power >= 0) {
      draw(power * duration);
    } else {
      takeUp(-power * duration);
    }
    if (stored_ > ceiling_)
      brake(before > ceiling_ ? able : std::min(-power, able), able, duration);
    out_.voltagePeak = std::max(out_.voltagePeak, voltage());
  }

  /// Full up to the level at which the resistor switches on: where small surpluses end.
  void fill() { stored_ = ceiling_; }

 private:
  double energyAt(double v) const {
    return bus_.capacitance * (v * v - bus_.voltage * bus_.voltage) / 2;
  }

  void draw(double energy) {
    const double own = std::min(energy, stored_);
    stored_ -= own;
    out_.drawn += energy - own;
  }

  void takeUp(double energy) {
    out_.regenerated += energy;
    (bus_.takesBack ? out_.returned : stored_) += energy;
  }

  /// [W] that the resistor takes when switched on for good: V²/R.
  double brakePower() const {
    const double v = std::max(bus_.brakeVoltage, voltage());
    return v * v / bus_.brakeResistance;
  }

  /// Back towards the switching level, as far as the resistor is `able` [W].
  void brake(double power, double able, double duration) {
    const double braked = std::min(stored_ - ceiling_, able * duration);
    stored_ -= braked;
    out_.braked += braked;
    out_.brakePowerPeak = std::max(out_.brakePowerPeak, power);
  }

  const BusModel& bus_;
  BusEnergy& out_;
  double ceiling_;
  double stored_ = 0;
};

BusEnergy emptyTally(const BusModel& bus) {
  BusEnergy tally;
  tally.voltagePeak = bus.voltage;
  return tally;
}

}  // namespace

BusEnergy followBus(const BusModel& bus, const Eigen::ArrayXd& power,
                    const Eigen::ArrayXd& duration) {
  constexpr int kCycles = 50;
  const bool brakes = std::isfinite(bus.brakeResistance);
  const Index n = power.size();
  BusEnergy tally;
  Capacitor capacitor(bus, tally);
  for (int cycle = 0; cycle < kCycles; ++cycle) {
    const double before = capacitor.stored();
    tally = emptyTally(bus);
    tally.voltage.resize(n + 1);
    tally.voltage[0] = capacitor.voltage();
    for (Index i = 0; i < n; ++i) {
      capacitor.step(power[i], duration[i]);
      tally.voltage[i + 1] = capacitor.voltage();
    }
    tally.settles = std::abs(capacitor.stored() - before) <= 1e-9 * (tally.regenerated + 1e-12);
    if (tally.settles || (!brakes && cycle == 2)) break;
    // What stays each cycle gathers until the resistor switches on.
    if (cycle == 2 && !capacitor.overflows()) capacitor.fill();
  }
  if (!tally.settles && !brakes) {
    tally.voltagePeak = std::numeric_limits<double>::infinity();
  }
  const double period = duration.sum();
  tally.brakePowerMean = period > 0 ? tally.braked / period : 0;
  return tally;
}

double saggedVoltage(double openVoltage, double sourceResistance, double power) {
  return (openVoltage + std::sqrt(openVoltage * openVoltage - 4 * sourceResistance * power)) / 2;
}

}  // namespace jw
