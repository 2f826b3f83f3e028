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

std::string speedText(double speed) { return formatQuantity(speed, Quantity::AngularSpeed); }
std::string angleText(double angle) { return formatQuantity(angle, Quantity::Angle); }

bool isTable(const Segment& segment) { return segment.law == MotionLaw::Table; }

/// Samples at both sides of the join in front of a move.
struct Join {
  std::size_t before, after;             ///< segments
  Eigen::Index lastSample, firstSample;  ///< of the one before, of the one after
  bool wraps;                            ///< where the cycle repeats
};

Join joinAt(const SampledCycle& sampled, std::size_t run) {
  const std::size_t before = run == 0 ? sampled.runs.size() - 1 : run - 1;
  const Eigen::Index first = sampled.runs[run].first;
  return {static_cast<std::size_t>(sampled.runs[before].segment),
          static_cast<std::size_t>(sampled.runs[run].segment),
          run == 0 ? sampled.size() - 1 : first - 1, first, run == 0};
}

std::optional<InputError> speedJump(const SampledCycle& sampled, const Cycle& cycle,
                                    const Join& join, double peak) {
  const Segment& before = cycle.segments[join.before];
  const Segment& after = cycle.segments[join.after];
  const double from = sampled.speed[join.lastSample];
  const double to = sampled.speed[join.firstSample];
  const double share = isTable(before) || isTable(after) ? kTableSpeedTolerance : kSpeedTolerance;
  if (std::abs(to - from) <= share * peak) return std::nullopt;
  return InputError{
      fmt::format("the speed jumps from {} at the end of {} to {} at the start of {}{}",
                  speedText(from), segmentTitle(before, join.before), speedText(to),
                  segmentTitle(after, join.after), join.wraps ? ", where the cycle repeats" : ""),
      segmentPath(join.after),
      "let both meet at one speed; a jump would take an endless torque and is left out of it"};
}

std::optional<InputError> angleJump(const SampledCycle& sampled, const Cycle& cycle,
                                    const Join& join) {
  const double start = join.wraps ? cycle.startAngle : sampled.angle[join.lastSample];
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
      segmentPath(static_cast<std::size_t>(sampled.runs.back().segment)),
      wholeTurns ? "that is right for a joint that turns on and on; else add a move back"
                 : fmt::format("add a move of {}", angleText(-gap))};
}

}  // namespace

std::vector<InputError> joinWarnings(const SampledCycle& sampled, const Cycle& cycle) {
  std::vector<InputError> warnings;
  const double peak = sampled.speed.abs().maxCoeff();
  const auto add = [&](const std::optional<InputError>& w) {
    // A block that repeats breaks at the same join again and again.
    if (w && std::find(warnings.begin(), warnings.end(), *w) == warnings.end())
      warnings.push_back(*w);
  };
  for (std::size_t run = 1; run <= sampled.runs.size(); ++run) {
    const Join join = joinAt(sampled, run % sampled.runs.size());
    add(angleJump(sampled, cycle, join));
    add(speedJump(sampled, cycle, join, peak));
  }
  add(openCycle(sampled, cycle));
  return warnings;
}

}  // namespace jw
