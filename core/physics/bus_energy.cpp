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
  double voltage() const {
    if (stored_ == 0) return bus_.voltage;
    return std::sqrt(bus_.voltage * bus_.voltage + 2 * stored_ / bus_.capacitance);
  }

  void step(double power, double duration) {
    if (power >= 0) {
      draw(power * duration);
    } else {
      takeUp(-power, duration);
    }
    out_.voltagePeak = std::max(out_.voltagePeak, voltage());
  }

 private:
  double energyAt(double v) const {
    return bus_.capacitance * (v * v - bus_.voltage * bus_.voltage) / 2;
  }

  void draw(double energy) {
    const double own = std::min(energy, stored_);
    stored_ -= own;
    out_.drawn += energy - own;
  }

  void takeUp(double power, double duration) {
    out_.regenerated += power * duration;
    if (bus_.takesBack) {
      out_.returned += power * duration;
      return;
    }
    stored_ += power * duration;
    if (stored_ <= ceiling_) return;
    const double able = bus_.brakeVoltage * bus_.brakeVoltage / bus_.brakeResistance;
    const double full = stored_ - ceiling_;  // above the switching level during this step
    const double braked = std::min(full, able * duration);
    stored_ -= braked;
    out_.braked += braked;
    out_.brakePowerPeak = std::max(out_.brakePowerPeak, std::min(power, able));
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
  constexpr int kCycles = 8;
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
    if (tally.settles) break;
  }
  if (!tally.settles && !std::isfinite(bus.brakeResistance)) {
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
