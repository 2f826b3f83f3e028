#include "core/physics/wind_up.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace jw {
namespace {

/// A stage as the joint sees it.
struct Link {
  std::optional<WindUpCurve> curve;
  double ratioBehind = 1;
};

/// None if the ratio of a stage with another before it is not given.
std::optional<std::vector<Link>> linksOf(const std::vector<Stage>& stages) {
  std::vector<Link> links(stages.size());
  double ratio = 1;
  for (std::size_t k = stages.size(); k-- > 0;) {
    links[k] = {WindUpCurve::of(stages[k].stiffness), ratio};
    ratio *= stages[k].ratio;
    if (k > 0 && !(ratio > 0)) return std::nullopt;
  }
  return links;
}

double twist(const Link& link, double torque) {
  return link.curve ? link.curve->angle(torque / link.ratioBehind) / link.ratioBehind : 0;
}

double twist(const std::vector<Link>& links, double torque) {
  double angle = 0;
  for (const Link& link : links) angle += twist(link, torque);
  return angle;
}

double compliance(const Link& link, double torque) {
  if (!link.curve) return 0;
  return 1 /
         (link.curve->stiffness(torque / link.ratioBehind) * link.ratioBehind * link.ratioBehind);
}

double playOf(const std::vector<Stage>& stages, const std::vector<Link>& links) {
  double play = 0;
  for (std::size_t k = 0; k < stages.size(); ++k) {
    if (isSet(stages[k].backlash)) play += stages[k].backlash / links[k].ratioBehind;
  }
  return play;
}

/// Torques from 0 to the range at which branches are drawn: evenly spaced and every corner.
std::vector<double> torquesOf(const std::vector<Link>& links, double range) {
  constexpr int kPieces = 40;
  std::vector<double> torques;
  for (int i = 0; i <= kPieces; ++i) torques.push_back(range * i / kPieces);
  for (const Link& link : links) {
    if (!link.curve) continue;
    for (const double corner : link.curve->corners()) {
      if (corner * link.ratioBehind < range) torques.push_back(corner * link.ratioBehind);
    }
  }
  std::sort(torques.begin(), torques.end());
  torques.erase(std::unique(torques.begin(), torques.end()), torques.end());
  return torques;
}

/// The branch on which the torque falls; the rising one is its image in the origin.
WindUpBranch fallingBranch(const std::vector<Link>& links, const ChainWindUp& loop, double range) {
  const std::vector<double> torques = torquesOf(links, range);
  WindUpBranch branch;
  const auto add = [&](double torque, double side) {
    const double share = torque / range;
    branch.torque.push_back(torque);
    branch.angle.push_back(twist(links, torque) + side * loop.backlash / 2 +
                           loop.hysteresis / 2 * (1 - share * share));
  };
  for (auto t = torques.rbegin(); t != torques.rend(); ++t) add(*t, 1);
  for (const double t : torques) add(-t, -1);
  return branch;
}

WindUpBranch imageOf(const WindUpBranch& branch) {
  WindUpBranch image = branch;
  for (double& torque : image.torque) torque = -torque;
  for (double& angle : image.angle) angle = -angle;
  return image;
}

/// Adds stage k's part to the chain's.
void addStage(ChainWindUp& loop, const Stage& stage, const Link& link, std::size_t k,
              double range) {
  StageWindUp part;
  part.ratioBehind = link.ratioBehind;
  if (isSet(stage.backlash)) part.backlash = stage.backlash / link.ratioBehind;
  if (isSet(stage.hysteresis)) part.hysteresis = stage.hysteresis / link.ratioBehind;
  if (isSet(stage.transmissionError))
    part.transmissionError = stage.transmissionError / link.ratioBehind;
  part.windUp = twist(link, range);
  part.compliance = compliance(link, 0);
  if (!link.curve) loop.rigid.push_back(k);
  if (!isSet(stage.backlash)) loop.withoutBacklash.push_back(k);
  if (!isSet(stage.hysteresis)) loop.withoutHysteresis.push_back(k);
  loop.backlash += part.backlash;
  loop.hysteresis += part.hysteresis;
  loop.transmissionError += part.transmissionError;
  loop.windUp += part.windUp;
  loop.stages.push_back(part);
}

}  // namespace

std::optional<WindUpCurve> WindUpCurve::of(const PiecewiseStiffness& stiffness) {
  if (!(stiffness.first > 0)) return std::nullopt;
  WindUpCurve curve;
  curve.slopes_ = {stiffness.first};
  if (!(stiffness.firstTorque > 0) || !(stiffness.second > 0)) return curve;
  curve.corners_ = {stiffness.firstTorque};
  curve.slopes_.push_back(stiffness.second);
  if (!(stiffness.secondTorque > stiffness.firstTorque) || !(stiffness.third > 0)) return curve;
  curve.corners_.push_back(stiffness.secondTorque);
  curve.slopes_.push_back(stiffness.third);
  return curve;
}

double WindUpCurve::angle(double torque) const {
  const double size = std::abs(torque);
  double angle = 0;
  double from = 0;
  for (std::size_t i = 0; i < slopes_.size(); ++i) {
    const double to = i < corners_.size() ? std::min(corners_[i], size) : size;
    if (to > from) angle += (to - from) / slopes_[i];
    from = std::max(from, to);
  }
  return std::copysign(angle, torque);
}

double WindUpCurve::torque(double angle) const {
  double left = std::abs(angle);
  double from = 0;
  for (std::size_t i = 0; i < corners_.size(); ++i) {
    const double piece = (corners_[i] - from) / slopes_[i];
    if (left <= piece) return std::copysign(from + left * slopes_[i], angle);
    left -= piece;
    from = corners_[i];
  }
  return std::copysign(from + left * slopes_.back(), angle);
}

double WindUpCurve::stiffness(double torque) const {
  const auto above = std::lower_bound(corners_.begin(), corners_.end(), std::abs(torque));
  return slopes_[static_cast<std::size_t>(above - corners_.begin())];
}

std::optional<double> chainWindUpAngle(const std::vector<Stage>& stages, double torque) {
  const auto links = linksOf(stages);
  if (!links) return std::nullopt;
  return twist(*links, torque);
}

std::optional<double> chainStiffness(const std::vector<Stage>& stages, double torque) {
  const auto links = linksOf(stages);
  if (!links) return std::nullopt;
  double sum = 0;
  for (const Link& link : *links) sum += compliance(link, torque);
  return sum > 0 ? 1 / sum : std::numeric_limits<double>::infinity();
}

std::optional<double> lostMotion(const std::vector<Stage>& stages, double torque) {
  const auto links = linksOf(stages);
  if (!links) return std::nullopt;
  return playOf(stages, *links) + 2 * twist(*links, std::abs(torque));
}

std::optional<ChainWindUp> chainWindUp(const std::vector<Stage>& stages, double torqueRange) {
  const auto links = linksOf(stages);
  if (!links || !(torqueRange > 0)) return std::nullopt;
  ChainWindUp loop;
  for (std::size_t k = 0; k < stages.size(); ++k) {
    addStage(loop, stages[k], (*links)[k], k, torqueRange);
  }
  loop.falling = fallingBranch(*links, loop, torqueRange);
  loop.rising = imageOf(loop.falling);
  return loop;
}

}  // namespace jw
