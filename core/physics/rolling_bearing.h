#pragma once

#include <optional>

#include <Eigen/Core>

#include "core/model/cycle.h"
#include "core/model/load.h"
#include "core/model/stage_geometry.h"
#include "core/motion/sampled_cycle.h"

namespace jw {

/// Exponent of life over load: 3 for balls, 10/3 for rollers (ISO 281, read second-hand).
double lifeExponent(RollingElement element);

/// [turns] L10 = (C/P)^p million turns (ISO 281, read second-hand); rating C and load P [N]; +inf
/// at no load.
double ratingLifeTurns(double rating, double load, double exponent);

/// [s] the same at a mean speed [rad/s]; +inf where nothing turns.
double ratingLife(double rating, double load, double exponent, double meanSpeed);

/// a1 of ISO 281:2007, life at `reliability` over L10:
/// 0.05 + 0.95 (ln(1/R) / ln(1/0.9))^(2/3), which rounds to within 0.006 of the standard's table
/// (from memory). Valid from 0.9 to 0.9995.
double reliabilityFactor(double reliability);

/// [N] P0 = max(F_r, 0.6 F_r + 0.5 F_a) of a deep-groove ball bearing (ISO 76, from memory).
double deepGrooveStaticLoad(double radial, double axial);

/// What an output bearing carries.
struct BearingForces {
  double radial = 0;  ///< [N]
  double axial = 0;   ///< [N]
  double moment = 0;  ///< [N·m] across the axis
};

/// [N] P = X (F_r + 2 M / d_pw) + Y F_a of a slewing bearing with crossed rollers; X = 1, Y = 0.45
/// while F_a <= 1.5 (F_r + 2 M / d_pw), else X = Y = 0.67. Common practice, no source, from memory;
/// the two meet at the limit. Forces not negative; pitch diameter above 0 [m].
double slewingDynamicLoad(const BearingForces& forces, double pitchDiameter);

/// [N] P0 = F_r + 2 M / d_pw + 0.44 F_a; likewise.
double slewingStaticLoad(const BearingForces& forces, double pitchDiameter);

/// [N] load-weighted mean over the cycle, (sum |n| dt P^p / sum |n| dt)^(1/p); 0 if nothing turns.
double equivalentLoad(const SampledCycle& cycle, const Eigen::ArrayXd& load,
                      const Eigen::ArrayXd& speed, double exponent);

/// Forces on the output bearing over the cycle, n samples each, none negative.
/// Across the axis: weight sum(m) times gravity across it plus the inertia of the masses, m r q'^2
/// outward and m r q'' against the motion, added as vectors. Along it: the weight's part. Moment:
/// of each body's force across at its distance along the axis and of its weight along the axis at
/// its distance from it. A tilt does not say to which side the axis points: the worse one counts.
/// Bodies are points here. Forces of the process have no direction given: they add to each.
struct OutputBearingForces {
  Eigen::ArrayXd radial;  ///< [N]
  Eigen::ArrayXd axial;   ///< [N]
  Eigen::ArrayXd moment;  ///< [N·m]
};

OutputBearingForces outputBearingForces(const SampledCycle& cycle, const Cycle& source,
                                        const Load& load);

/// What the output bearing has to bear.
struct OutputBearingLoad {
  OutputBearingForces forces;
  Eigen::ArrayXd dynamicLoad;          ///< [N] equivalent, of every sample
  Eigen::ArrayXd staticLoad;           ///< [N] likewise
  double equivalentLoad = 0;           ///< [N] mean over the cycle
  double worstStaticLoad = 0;          ///< [N]
  double worstMoment = 0;              ///< [N·m]
  double meanSpeed = 0;                ///< [rad/s] mean |q'|, standstill included
  std::optional<double> life;          ///< [s] L10 at the mean speed; none without a dynamic rating
  std::optional<double> staticSafety;  ///< C0 / P0; none without a static rating
};

/// Loads, life and safety of the bearing at the joint; none without a pitch diameter.
std::optional<OutputBearingLoad> outputBearingLoad(const SampledCycle& cycle, const Cycle& source,
                                                   const Load& load, const OutputBearing& bearing);

}  // namespace jw
