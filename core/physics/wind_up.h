#pragma once

#include <optional>
#include <vector>

#include "core/model/stage.h"

namespace jw {

/// Elastic twist of one stage over the torque at its output: up to three straight pieces, the same
/// for both signs. Data sheets state K1 up to T1, K2 up to T2 and K3 above (common practice, no
/// source); where a later piece is not given the one before it goes on.
class WindUpCurve {
 public:
  /// None if the first stiffness is unset or not above 0.
  static std::optional<WindUpCurve> of(const PiecewiseStiffness& stiffness);

  double angle(double torque) const;      ///< [rad] at a torque [N·m]
  double torque(double angle) const;      ///< [N·m] its inverse
  double stiffness(double torque) const;  ///< [N·m/rad] dT/dangle; at a corner of the lower piece
  const std::vector<double>& corners() const { return corners_; }  ///< [N·m] where it bends

 private:
  std::vector<double> corners_ = {};
  std::vector<double> slopes_ = {};  ///< [N·m/rad] one more than corners
};

/// One stage's part in the wind-up at the joint. A joint turns stage k's output by
/// prod_{i>k} N_i times its own angle, so that angles count divided by it, lossless.
struct StageWindUp {
  double ratioBehind = 1;        ///< prod_{i>k} N_i
  double backlash = 0;           ///< [rad] at the joint; 0 where not given
  double hysteresis = 0;         ///< [rad] at the joint; 0 where not given
  double transmissionError = 0;  ///< [rad] at the joint, peak to peak; 0 where not given
  double windUp = 0;      ///< [rad] at the joint, elastic, at the torque range; 0 where rigid
  double compliance = 0;  ///< [rad/(N·m)] at the joint, tangent at no torque; 0 where rigid
};

/// Twist over torque along one branch of the loop.
struct WindUpBranch {
  std::vector<double> torque;  ///< [N·m]
  std::vector<double> angle;   ///< [rad]
};

/// Wind-up loop of the chain at the joint, input locked.
struct ChainWindUp {
  WindUpBranch rising;   ///< torque from -range to +range; two points at no torque cross the play
  WindUpBranch falling;  ///< back again
  std::vector<StageWindUp> stages;
  std::vector<std::size_t> rigid;              ///< stages without a stiffness, counted as rigid
  std::vector<std::size_t> withoutBacklash;    ///< stages whose play is not given, counted as none
  std::vector<std::size_t> withoutHysteresis;  ///< likewise
  double backlash = 0;                         ///< [rad] of the chain
  double hysteresis = 0;                       ///< [rad] of the chain
  double transmissionError = 0;  ///< [rad] of the chain, peak to peak, all stages at their worst
  double windUp = 0;             ///< [rad] elastic, at the torque range
};

/// [rad] elastic twist at the joint under `torque` [N·m], the sum over the stages at their own
/// torques T / prod N; none if a ratio that it needs is not given.
std::optional<double> chainWindUpAngle(const std::vector<Stage>& stages, double torque);

/// [N·m/rad] tangent stiffness at the joint under `torque`: 1/K = sum 1/(K_k prod N²). +inf if all
/// stages count as rigid; none as above.
std::optional<double> chainStiffness(const std::vector<Stage>& stages, double torque);

/// [rad] play plus elastic twist between -`torque` and +`torque` [N·m] on the loop's centre line,
/// where hysteresis cancels. Lost motion is commonly read at 3 % of the rated torque (trade
/// articles, read second-hand; not universal). None as above.
std::optional<double> lostMotion(const std::vector<Stage>& stages, double torque);

/// The loop between -torqueRange and +torqueRange [N·m]. Branches lie
/// h/2 (1 - (T/T_range)²) to either side of elastic twist plus b/2 sgn T: they close at the ends,
/// are h apart at no torque, and cross the play there (a shape assumed; h is taken as stated
/// whatever the range). None if the range is not above 0 or a ratio is not given.
std::optional<ChainWindUp> chainWindUp(const std::vector<Stage>& stages, double torqueRange);

}  // namespace jw
