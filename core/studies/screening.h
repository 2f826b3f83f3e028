#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include <Eigen/Core>

#include "core/checks/evaluation.h"

namespace jw {

// Quick verdicts on many motors before many chains. Motor torque is linear in the motor's inertia
// and, where the first stage's ratio varies, in that ratio and its inverse. So root mean squares
// over the whole cycle follow exactly from second moments of a few features, and a limit that is
// broken at one real sample of the cycle is broken: a few extreme samples are looked at. The cost
// of one verdict does not grow with the cycle's length. A rejection is always one that the full
// evaluation shares; what is not rejected may still be short and is to be evaluated in full.

/// One instant at which a chain asks much of the motor.
struct ExtremeSample {
  double speed = 0;         ///< [rad/s] of the motor
  double torque = 0;        ///< [N·m] at its shaft, its own inertia apart
  double acceleration = 0;  ///< [rad/s²]
};

/// Most extreme samples that are kept of one chain.
inline constexpr std::size_t kMostExtremes = 16;

/// What a chain asks of any motor; means are over the cycle.
struct ChainScreen {
  double torqueSquare = 0;        ///< [N²m²] mean of T², the motor's own inertia apart
  double torqueAcceleration = 0;  ///< mean of T alpha
  double accelerationSquare = 0;  ///< mean of alpha²
  double torqueSign = 0;          ///< [N·m] mean of T sgn w
  double torqueSpeed = 0;         ///< [W] mean of T w
  double accelerationSign = 0;    ///< mean of alpha sgn w
  double accelerationSpeed = 0;   ///< mean of alpha w
  double moving = 0;              ///< share of the time in which it turns
  double speedAbs = 0;            ///< [rad/s] mean of |w|
  double speedSquare = 0;         ///< mean of w²
  double speedPeak = 0;           ///< [rad/s]
  double inertia = 0;             ///< [kg·m²] stages and load at the motor shaft
  std::array<ExtremeSample, kMostExtremes> extremes{};
  std::size_t extremeCount = 0;
};

/// Features of a chain behind a first stage whose ratio is still open. Made once from the cycle's
/// samples; atRatio then needs no samples.
class OpenChain {
 public:
  /// `evaluation` is of the project with any ratio of stage 0. Cycle, load and chain must be there;
  /// stage 0 must not creep.
  explicit OpenChain(const Evaluation& evaluation);

  /// The chain with `first`, completed at its ratio, as stage 0. Only its ratio may differ, and
  /// what follows from it.
  ChainScreen atRatio(const StageData& first) const;

 private:
  static constexpr int kFeatures = 7;
  Eigen::Matrix<double, kFeatures, kFeatures> moments_;
  double speedAbs_ = 0;
  double moving_ = 0;
  double speedPeak_ = 0;
  double inertiaBehind_ = 0;
  std::vector<std::array<double, kFeatures>> extremes_;
};

/// The chain as it was evaluated, all ratios fixed. Cycle, load and chain must be there.
ChainScreen closedChain(const Evaluation& evaluation);

/// What a motor with its controller and supply allows.
struct MotorScreen {
  double inertia = kUnset;           ///< [kg·m²] rotor and brake; NaN = no demand can be told
  double inertiaRatioMax = kUnset;   ///< NaN = not asked
  double speedMax = kUnset;          ///< [rad/s] NaN = no envelope
  double torquePerAmp = 0;           ///< [N·m/A] of amplitude
  double dragTorque = 0;             ///< [N·m]
  double dragDamping = 0;            ///< [N·m·s/rad]
  double currentSquareMax = kUnset;  ///< [A²] mean of the amplitude's square; NaN = not asked
  double currentPeakMax = kUnset;    ///< [A] amplitude; NaN = not asked
  bool currentByTorque = false;      ///< amplitude is torque over torquePerAmp at least
  std::optional<EnvelopeLimits> envelope;  ///< at the lowest voltage
  std::optional<ContinuousLimit> continuous;
};

/// From an evaluation of the project with that motor.
MotorScreen motorScreen(const Project& project, const Evaluation& evaluation);

/// The check that is short for certain.
enum class Rejection { None, Speed, InertiaRatio, Continuous, CurrentRms, CurrentPeak, Torque };
inline constexpr std::size_t kRejections = 7;

/// Its id, "motor.speed"; empty for none.
std::string_view checkOf(Rejection rejection);

/// The first check, cheapest first, that is short for certain.
Rejection rejectedBy(const ChainScreen& chain, const MotorScreen& motor);

/// The check of a stage on the joint's side of `firstOpen` (index into the transmission) that is
/// short whatever the motor and the stages before it are; empty if none is.
std::string_view chainRejectedBy(const Evaluation& evaluation, int firstOpen);

}  // namespace jw
