#pragma once

#include <cmath>

namespace jw {

/// Voltage amplitude that a bus behind a source resistance leaves to the machine, as a function of
/// the current amplitude I: V (1 + sqrt(1 - k P)) / 2 with P = P0 + a I + b I² drawn and
/// k = 4 R_s / V_dc²; V itself where nothing is drawn. Both equations V_bus = V_dc - R_s i and
/// P = V_bus i, i the bus current, solved for the higher voltage.
struct SaggingVoltage {
  double stiff = 0;       ///< [V] V: amplitude with nothing drawn
  double sag = 0;         ///< [1/W] k; 0 = no source resistance
  double fixedPower = 0;  ///< [W] P0: mechanical and idle
  double perAmp = 0;      ///< [W/A] a
  double perSquare = 0;   ///< [W/A²] b

  /// [W] drawn from the bus.
  double power(double amplitude) const {
    return fixedPower + (perAmp + perSquare * amplitude) * amplitude;
  }
  /// [V]; NaN if the source cannot give that much, P > 1/k = V_dc² / (4 R_s).
  double at(double amplitude) const {
    const double drawn = power(amplitude);
    return drawn > 0 ? stiff * (1 + std::sqrt(1 - sag * drawn)) / 2 : stiff;
  }
  /// [V/A] by which the voltage changes with the current; <= 0.
  double slope(double amplitude) const {
    const double drawn = power(amplitude);
    if (!(drawn > 0)) return 0;
    return -stiff * sag * (perAmp + 2 * perSquare * amplitude) / (4 * std::sqrt(1 - sag * drawn));
  }
};

}  // namespace jw
