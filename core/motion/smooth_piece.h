#pragma once

#include <array>
#include <vector>

#include <Eigen/Core>

namespace jw {

/// One smooth stretch of a motion law in normalised form: time u runs from 0 to 1 over the move,
/// position s from 0 to 1. With x = u − begin,
///   s(x) = Σ coefficients[k]·x^k + amplitude·sin(frequency·x + phase),
/// which covers every law in use and has all its derivatives in closed form.
struct SmoothPiece {
  double begin = 0;  ///< [1] u at the start
  double end = 1;    ///< [1] u at the end, above `begin`
  std::array<double, 8> coefficients{};
  double amplitude = 0;
  double frequency = 0;           ///< [rad] per unit of u
  double phase = 0;               ///< [rad]
  Eigen::Index minIntervals = 2;  ///< even; sampling must not be coarser than this
};

/// Normalised position, speed ds/du, acceleration d²s/du² and jerk d³s/du³.
struct MotionState {
  double position = 0;
  double speed = 0;
  double acceleration = 0;
  double jerk = 0;
};

/// The state at time u, from the closed form of `piece` (the limit from inside at its ends).
MotionState stateAt(const SmoothPiece& piece, double u);

/// Columns to fill with the samples of one piece; all of one length.
struct SampleColumns {
  Eigen::Ref<Eigen::ArrayXd> position;
  Eigen::Ref<Eigen::ArrayXd> speed;
  Eigen::Ref<Eigen::ArrayXd> acceleration;
};

/// Fills `columns` with the normalised states at n equally spaced times, both ends included;
/// n = length of the columns, at least 2. Within 1e-14 of stateAt for states of order one.
void samplePiece(const SmoothPiece& piece, SampleColumns columns);

/// A law under construction: pieces given by their acceleration, joined with continuous position
/// and speed from rest at 0.
class AccelerationChain {
 public:
  /// Adds a stretch whose acceleration goes linearly `from` -> `to`. No effect if length <= 0.
  void addLinear(double length, double from, double to);

  /// Adds a stretch with acceleration peak·sin(phase), phase going linearly from -> to [rad].
  void addSine(double length, double peak, double phaseFrom, double phaseTo);

  /// The pieces, scaled so that the law ends at position 1 at u = 1.
  std::vector<SmoothPiece> scaledToUnitTravel() const;

 private:
  void append(SmoothPiece piece);

  std::vector<SmoothPiece> pieces_;
  MotionState end_;
};

}  // namespace jw
