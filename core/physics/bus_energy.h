#pragma once

#include <limits>

#include <Eigen/Core>

namespace jw {

/// What the bus does with power that comes back from the motor.
struct BusModel {
  double voltage = 0;        ///< [V] when nothing comes back
  double capacitance = 0;    ///< [F] on the bus
  bool takesBack = false;    ///< the source accepts returned power (a battery, an active front end)
  double sourceVoltage = 0;  ///< [V] of the source at no load; counts with its resistance
  double sourceResistance = 0;  ///< [Ohm] of source and leads; what it turns to heat is drawn too
  double brakeVoltage =
      std::numeric_limits<double>::infinity();  ///< [V] brake resistor switches on
  double brakeResistance = std::numeric_limits<double>::infinity();  ///< [Ohm]; +inf = none
};

/// Where the energy of one cycle goes, in the state that repeats.
struct BusEnergy {
  double drawn = 0;           ///< [J] per cycle from the source, loss in its resistance included
  double returned = 0;        ///< [J] per cycle into a source that takes back, less that loss
  double sourceLoss = 0;      ///< [J] per cycle in the source resistance, both ways
  double braked = 0;          ///< [J] per cycle turned to heat in the brake resistor
  double regenerated = 0;     ///< [J] per cycle that came back to the bus
  double voltagePeak = 0;     ///< [V] highest bus voltage; +inf if energy has nowhere to go
  double brakePowerPeak = 0;  ///< [W] the resistor has to take
  double brakePowerMean = 0;  ///< [W]
  bool settles = true;        ///< false: with no outlet the voltage would climb cycle by cycle
  Eigen::ArrayXd voltage;     ///< [V] at the start and after each step, last cycle followed
};

/// Follows the bus capacitor through steps of constant net power `power` [W] (negative = coming
/// back) of `duration` [s] until the cycle repeats. Charge balance: C/2 (V2² - V1²) = -P t while
/// the source is blocked. The resistor holds the voltage at its switching level V_br as far as
/// V_br²/R allows; a weaker one stays on above it, C/2 d(V²)/dt = -P - V²/R, which is solved
/// exactly: V² goes exponentially, with the time constant R C/2, towards -P R. The state that
/// repeats is found by the secant rule, so the peaks are those of the settled cycle.
/// With a source resistance R_s the source gives V_0 i for the power V i of the bus.
BusEnergy followBus(const BusModel& bus, const Eigen::ArrayXd& power,
                    const Eigen::ArrayXd& duration);

/// [V] bus voltage with `power` [W] drawn through a source resistance [Ohm]:
/// V = (V0 + sqrt(V0² - 4 R P)) / 2; NaN if the source cannot give that much.
double saggedVoltage(double openVoltage, double sourceResistance, double power);

/// [W] that the source gives behind its resistance while the bus draws `power` [W]: V0 i; negative
/// when power goes back. Where the source cannot give that much, counted at half its voltage.
double sourcePower(double openVoltage, double sourceResistance, double power);

}  // namespace jw
