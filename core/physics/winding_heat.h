#pragma once

#include <Eigen/Core>

#include "core/motion/sampled_cycle.h"

namespace jw {

/// Two thermal nodes: winding (1) and housing (2). Temperatures in °C.
/// C1 T1' = P20 (1 + a (T1 - 20)) - (T1 - T2)/R12
/// C2 T2' = P2 + (T1 - T2)/R12 - (T2 - T_amb)/R2
/// Lumped-parameter machine heating (Hughes and Drury, Electric Motors and Drives; from memory).
struct HeatNetwork {
  double windingCapacity = 0;    ///< C1 [J/K] > 0
  double housingCapacity = 0;    ///< C2 [J/K] > 0
  double windingToHousing = 0;   ///< R12 [K/W] > 0
  double housingToAmbient = 0;   ///< R2 [K/W] > 0
  double copperCoefficient = 0;  ///< a [1/K] at 20 °C; 0 = loss at constant resistance
  double ambient = 0;            ///< [°C]
};

/// Loss in steps of constant power; equal sizes.
struct HeatLoad {
  Eigen::ArrayXd copper20;  ///< [W] copper loss that a winding at 20 °C would have
  Eigen::ArrayXd housing;   ///< [W] other loss that goes into the housing
  Eigen::ArrayXd duration;  ///< [s] >= 0
};

/// Temperatures (winding, housing) after a stretch of time from those before: x -> gain x + offset.
struct HeatMap {
  Eigen::Matrix2d gain = Eigen::Matrix2d::Identity();
  Eigen::Vector2d offset = Eigen::Vector2d::Zero();

  Eigen::Vector2d operator()(const Eigen::Vector2d& before) const { return gain * before + offset; }
  /// This map, then `next`.
  HeatMap then(const HeatMap& next) const {
    return {next.gain * gain, next.gain * offset + next.offset};
  }
};

/// Exact map of one step of constant power over `duration` [s]: matrix exponential and its integral
/// by Taylor series with doubling (Moler and Van Loan, SIAM Review 45 (2003) 3; from memory).
HeatMap heatStep(const HeatNetwork& network, double copper20, double housing, double duration);

/// Temperature at which the network rests under constant loss; not finite when copper outruns
/// cooling.
Eigen::Vector2d steadyHeat(const HeatNetwork& network, double copper20, double housing);

/// The state that repeats every cycle.
struct PeriodicHeat {
  bool runaway = false;       ///< no periodic state: each cycle ends hotter than the last
  double spectralRadius = 0;  ///< of the cycle's map; >= 1 = runaway
  HeatMap cycleMap;
  Eigen::Vector2d start;   ///< [°C] winding and housing at the start of the cycle
  Eigen::ArrayXd winding;  ///< [°C] at the start and after each step; empty if runaway
  Eigen::ArrayXd housing;  ///< [°C]
  double windingPeak = 0, windingMean = 0, housingPeak = 0, housingMean = 0;  ///< [°C]
};

/// Solves (I - gain) x = offset of the whole cycle: no simulation of hours. n steps, one pass to
/// compose the map and one to follow it. The copper losses are divided by `copperDivisor`.
PeriodicHeat periodicHeat(const HeatNetwork& network, const HeatLoad& load,
                          double copperDivisor = 1);

}  // namespace jw
