#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <string_view>
#include <vector>

#include <Eigen/Core>
#include <tl/expected.hpp>

#include "core/model/measured_log.h"
#include "core/model/unset.h"
#include "core/motion/log_motion.h"
#include "core/physics/extension_spring.h"
#include "core/quantity/quantity.h"
#include "core/studies/fitted_value.h"

namespace jw {

/// The terms of tau = J q'' + A cos q + B sin q + c_v q' + c_c sgn(q') + T_0.
enum class LoadTerm { Inertia, GravityCos, GravitySin, Viscous, Coulomb, Offset };
inline constexpr std::size_t kLoadTerms = 6;

std::string_view nameOf(LoadTerm term);  ///< "inertia", "gravity (cos q)", ...
std::string_view unitOf(LoadTerm term);  ///< internal unit, "kg*m^2", "N*m", "N*m*s/rad"
Quantity quantityOf(LoadTerm term);

/// Rows to fit to; equal sizes. A torque of NaN leaves its row out.
struct LoadFitData {
  std::span<const double> position;      ///< [rad] 0 = link horizontal
  std::span<const double> speed;         ///< [rad/s]
  std::span<const double> acceleration;  ///< [rad/s²]
  std::span<const double> torque;        ///< [N·m] at the joint, positive drives positive motion
};

/// Rows `first` to `last` (included) of a log with its motion; `torque` is the log's own, or
/// jointTorque. The vectors must outlive the result.
LoadFitData loadFitData(const LogMotion& motion, const std::vector<double>& torque,
                        std::size_t first, std::size_t last);

/// [N·m] at the joint from the motor's current [A]: current x torqueConstant [N·m/A] x ratio x
/// efficiency. A rough measure: the torque that speeds up rotor and drive, and their friction, are
/// still in it. Tell fitLoad the rotor's inertia; the friction found is that of the whole joint.
std::vector<double> jointTorque(const std::vector<double>& current, double torqueConstant,
                                double ratio, double efficiency = 1);

struct LoadFitOptions {
  std::array<bool, kLoadTerms> terms{true, true, true, true, true, true};
  double restSpeed = kUnset;   ///< [rad/s] slower rows are left out while Coulomb friction is
                               ///< fitted; unset = 2 % of the fastest (common practice, no source)
  double springStiffness = 0;  ///< [N·m/rad] of a known counterbalance, taken off the torque
  double springAngle = 0;      ///< [rad] at which it is slack
  ExtensionSpring extension = {};  ///< known counterbalance, taken off likewise; complete or none
  double reflectedInertia = 0;  ///< [kg·m²] known at the joint besides the load: rotor x ratio²
};

struct LoadFit {
  std::array<FittedValue, kLoadTerms> terms;  ///< NaN where a term was not fitted
  std::array<bool, kLoadTerms> fitted{};
  Eigen::Matrix<double, kLoadTerms, kLoadTerms> covariance;  ///< 0 where not fitted
  std::vector<double> torque;  ///< [N·m] modelled at every row of the data, known parts included
  double residualRms = 0;      ///< [N·m] over the rows used
  double residualPeak = 0;     ///< [N·m]
  double rSquared = 0;         ///< 1 - residual sum of squares / that about the mean
  double autocorrelation = 0;  ///< of the residuals from row to row
  double effectiveRows = 0;    ///< rows (1 - autocorrelation) / (1 + autocorrelation)
  double condition = 1;        ///< of the columns scaled to length 1
  double restSpeed = 0;        ///< [rad/s] used
  std::size_t rows = 0;        ///< used
  std::size_t restRows = 0;    ///< left out because the joint stood
  std::vector<InputError> notes;  ///< what cannot be told apart, was left out, or looks wrong

  const FittedValue& operator[](LoadTerm term) const {
    return terms[static_cast<std::size_t>(term)];
  }
  bool has(LoadTerm term) const { return fitted[static_cast<std::size_t>(term)]; }
};

/// Least squares of measured joint torque over the terms, by a QR decomposition that takes the rows
/// in blocks (O(n), no copy of the data) and a column-pivoting one of what is left.
///
/// Uncertainties are standard errors s² (X'X)^-1. They take the model for right and the residuals
/// for independent of the motion; residuals that follow each other are allowed for by
/// (1 + r)/(1 - r) on the variances with r the autocorrelation from row to row (exact for
/// first-order autoregressive noise and motion that is slow against it; Bayley & Hammersley, J. R.
/// Stat. Soc. Suppl. 8 (1946) 184, from memory). Noise in position, speed and acceleration is not
/// in them; it makes the inertia come out small.
///
/// Terms that the rows cannot tell apart at all are left out, the offset first, with a note; pairs
/// that they can hardly tell apart (condition index above 30; Belsley, Kuh & Welsch, Regression
/// Diagnostics, 1980, from memory) get a note. Fails on data of unequal sizes, values that are not
/// finite, fewer than 20 usable rows, no terms, or a torque that does not change.
tl::expected<LoadFit, InputError> fitLoad(const LoadFitData& data,
                                          const LoadFitOptions& options = {});

}  // namespace jw
