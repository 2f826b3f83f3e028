#include "core/motion/joins.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include <fmt/format.h>

#include "core/motion/segment_input.h"

namespace jw {
namespace {

constexpr double kSpeedTolerance = 1e-6;       // of the peak speed
constexpr double kTableSpeedTolerance = 0.01;  // of the peak speed
constexpr double kAngleTolerance = 1e-6;       // [rad], 0.2 arcsec
constexpr double kTurn = 2 * std::numbers::pi;

std::string speedText(double speed) {
  return formatQuantity(speed, Quantity::AngularSpeed);
}
std::string angleText(double angle) {
  return formatQuantity(angle, Quantity::Angle);
}

bool isTable(const Segment& segment) {
  return segment.law == MotionLaw::Table;
}

/// Samples at both sides of the join in front of a segment.
struct Join {
  std::size_t before, after;             ///< segments
  Eigen::Index lastSample, firstSample;  ///< of the one before, of the one after
};

std::vector<Join> findJoins(const SampledCycle& sampled) {
  const auto segmentOf = [&](Eigen::Index i) {
    return static_cast<std::size_t>(sampled.segment[i]);
  };
  const Eigen::Index last = sampled.size() - 1;
  std::vector<Join> joins;
  for (Eigen::Index i = 1; i <= last; ++i)
    if (sampled.segment[i] != sampled.segment[i - 1])
      joins.push_back({segmentOf(i - 1), segmentOf(i), i - 1, i});
  joins.push_back({segmentOf(last), 0, last, 0});
  return joins;
}

std::optional<InputError> speedJump(const SampledCycle& sampled, const Cycle& cycle,
                                    const Join& join, double peak) {
  const Segment& before = cycle.segments[join.before];
  const Segment& after = cycle.segments[join.after];
  const double from = sampled.speed[join.lastSample];
  const double to = sampled.speed[join.firstSample];
  const double share = isTable(before) || isTable(after) ? kTableSpeedTolerance : kSpeedTolerance;
  if (std::abs(to - from) <= share * peak) return std::nullopt;
  const bool wraps = join.after == 0;
  return InputError{
      fmt::format("the speed jumps from {} at the end of {} to {} at the start of {}{}",
                  speedText(from), segmentTitle(before, join.before), speedText(to),
                  segmentTitle(after, join.after), wraps ? ", where the cycle repeats" : ""),
      segmentPath(join.after),
      "let both meet at one speed; a jump would take an endless torque and is left out of it"};
}

std::optional<InputError> angleJump(const SampledCycle& sampled, const Cycle& cycle,
                                    const Join& join) {
  const double start = join.after == 0 ? cycle.startAngle : sampled.angle[join.lastSample];
  const double jump = sampled.angle[join.firstSample] - start;
  if (std::abs(jump) <= kAngleTolerance) return std::nullopt;
  return InputError{fmt::format("the angle jumps by {} at the start of {}", angleText(jump),
                                segmentTitle(cycle.segments[join.after], join.after)),
                    segmentPath(join.after), "let the angles of the table start at 0"};
}

std::optional<InputError> openCycle(const SampledCycle& sampled, const Cycle& cycle) {
  const double gap = sampled.angle[sampled.size() - 1] - cycle.startAngle;
  if (std::abs(gap) <= kAngleTolerance) return std::nullopt;
  const bool wholeTurns = std::abs(gap - kTurn * std::round(gap / kTurn)) <= kAngleTolerance;
  return InputError{
      fmt::format("the cycle does not return to its start: it ends {} from there", angleText(gap)),
      segmentPath(cycle.segments.size() - 1),
      wholeTurns ? "that is right for a joint that turns on and on; else add a move back"
                 : fmt::format("add a move of {}", angleText(-gap))};
}

}  // namespace

std::vector<InputError> joinWarnings(const SampledCycle& sampled, const Cycle& cycle) {
  std::vector<InputError> warnings;
  const double peak = sampled.speed.abs().maxCoeff();
  const auto add = [&](const std::optional<InputError>& w) {
    if (w) warnings.push_back(*w);
  };
  for (const Join& join : findJoins(sampled)) {
    add(angleJump(sampled, cycle, join));
    add(speedJump(sampled, cycle, join, peak));
  }
  add(openCycle(sampled, cycle));
  return warnings;
}

}  // namespace jw
