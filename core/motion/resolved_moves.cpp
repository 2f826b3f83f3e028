#include "core/motion/resolved_moves.h"

#include <cmath>
#include <numbers>
#include <optional>

#include <fmt/format.h>

#include "core/motion/least_time.h"
#include "core/motion/segment_input.h"

namespace jw {
namespace {

using MaybeError = std::optional<InputError>;

double firstSet(double own, double shared) {
  if (isSet(own)) return own;
  return isSet(shared) ? shared : std::numeric_limits<double>::infinity();
}

/// The limit that a law cannot do without, by key of the segment's field; empty if it has enough.
std::string_view lackingLimit(MotionLaw law, const MotionLimits& limits) {
  const bool jerk = std::isfinite(limits.jerk);
  if (law == MotionLaw::JerkLimited) return jerk ? "" : "jerkLimit";
  const bool acceleration = std::isfinite(limits.acceleration);
  if (law == MotionLaw::Trapezoidal) return acceleration ? "" : "accelerationLimit";
  const bool any = std::isfinite(limits.speed) || acceleration || (jerk && hasBoundedJerk(law));
  return any ? "" : "accelerationLimit";
}

/// Builds the list move by move, keeping the joint angle for the targets.
class Resolver {
 public:
  explicit Resolver(const Cycle& cycle) : cycle_(cycle), angle_(cycle.startAngle) {}

  tl::expected<ResolvedCycle, InputError> run() {
    std::vector<MoveGroup> groups = moveGroups(cycle_);
    if (auto error = countError(groups)) return tl::unexpected(*error);
    for (const MoveGroup& group : groups) noteUnused(group);
    for (const MoveGroup& group : groups) {
      for (int n = 0; n < group.repeats; ++n) {
        if (auto error = addGroup(group)) return tl::unexpected(*error);
      }
    }
    if (out_.moves.empty()) return tl::unexpected(noTime());
    return std::move(out_);
  }

 private:
  MaybeError countError(const std::vector<MoveGroup>& groups) const {
    std::size_t count = 0;
    for (const MoveGroup& group : groups) {
      std::size_t enabled = 0;
      for (std::size_t i = group.first; i <= group.last; ++i)
        enabled += cycle_.segments[i].disabled ? 0 : 1;
      count += enabled * static_cast<std::size_t>(group.repeats);
      if (count <= kMostMoves) continue;
      return InputError{fmt::format("with this one's repeats the cycle has {} moves", count),
                        segmentPath(group.first) + ".repeats",
                        fmt::format("repeat less often: at most {} moves in all", kMostMoves)};
    }
    if (count > 0) return std::nullopt;
    return InputError{"every move of the cycle is switched off", "cycle.segments",
                      "switch on at least one"};
  }

  void warn(std::size_t index, std::string_view key, const std::string& what, std::string remedy) {
    out_.warnings.push_back(
        {fmt::format("{}: {}", segmentTitle(cycle_.segments[index], index), what),
         fmt::format("{}.{}", segmentPath(index), key), std::move(remedy)});
  }

  /// Says once what a move gives that cannot be used.
  void noteUnused(const MoveGroup& group) {
    for (std::size_t i = group.first; i <= group.last; ++i) {
      const Segment& segment = cycle_.segments[i];
      if (segment.disabled) continue;
      if (i > group.first && segment.repeats != 1 && segment.repeats != group.repeats) {
        warn(i, "repeats",
             fmt::format("its {} repeats do not count inside a block", segment.repeats),
             fmt::format("the block \"{}\" runs {} times, as its first move says", segment.block,
                         group.repeats));
      }
      if (byLimits(segment) && !hasBoundedJerk(segment.law) &&
          std::isfinite(limitsOf(segment, cycle_).jerk)) {
        warn(i, "law",
             "the jerk limit cannot be kept: where its acceleration jumps, the jerk is "
             "endless",
             "take a law of bounded jerk, such as jerk-limited or modified sine");
      }
    }
  }

  static bool byLimits(const Segment& segment) {
    return segment.timing == MoveTiming::Limits && segment.law != MotionLaw::Dwell &&
           segment.law != MotionLaw::Table;
  }

  MaybeError addGroup(const MoveGroup& group) {
    for (std::size_t i = group.first; i <= group.last; ++i) {
      if (cycle_.segments[i].disabled) continue;
      if (auto error = addMove(i)) return error;
    }
    return std::nullopt;
  }

  double travelOf(const Segment& segment) const {
    if (segment.law == MotionLaw::Dwell || segment.law == MotionLaw::Table) return 0;
    const bool aims = segment.aim == MoveAim::To && segment.law != MotionLaw::Sinusoid;
    return aims ? segment.target - angle_ : segment.travel;
  }

  /// [rad] from the joint angle at its start to that at its end.
  static double progress(const Segment& segment, double travel) {
    if (segment.law == MotionLaw::Table) return segment.table.angle.back();
    if (segment.law != MotionLaw::Sinusoid) return travel;
    return travel * std::sin(2 * std::numbers::pi * segment.periods);
  }

  MaybeError addMove(std::size_t index) {
    const Segment& segment = cycle_.segments[index];
    ResolvedMove move{index, shapeOf(segment), segment.duration};
    move.shape.travel = travelOf(segment);
    if (segment.law == MotionLaw::Table) move.duration = segment.table.time.back();
    if (byLimits(segment)) {
      if (auto error = limitMove(move, segment)) return error;
    }
    angle_ += progress(segment, move.shape.travel);
    if (move.duration > 0) out_.moves.push_back(move);
    return std::nullopt;
  }

  MaybeError limitMove(ResolvedMove& move, const Segment& segment) const {
    const MotionLimits limits = limitsOf(segment, cycle_);
    const std::string_view lacking = lackingLimit(segment.law, limits);
    if (!lacking.empty()) return lackingError(move.origin, lacking);
    const double distance = std::abs(move.shape.travel);
    if (distance == 0) {
      move.duration = 0;
      return std::nullopt;
    }
    const LeastTime least = leastTime(segment.law, distance, limits, segment.periods);
    move.duration = least.duration;
    move.shape.accelShare = move.shape.decelShare = least.rampShare;
    move.shape.jerkShare = least.jerkShare;
    return std::nullopt;
  }

  InputError lackingError(std::size_t index, std::string_view key) const {
    const Segment& segment = cycle_.segments[index];
    const bool jerk = key == "jerkLimit";
    const std::string_view needed = jerk ? "a jerk limit"
                                    : segment.law == MotionLaw::Trapezoidal
                                        ? "an acceleration limit"
                                        : "a limit of speed, "
                                          "acceleration or jerk";
    return {fmt::format("{}: as fast as the limits allow needs {}", segmentTitle(segment, index),
                        needed),
            fmt::format("{}.{}", segmentPath(index), key),
            "give it here or for the whole cycle, or give the move a duration"};
  }

  InputError noTime() const {
    return {"the cycle takes no time: none of its moves goes anywhere", "cycle.segments",
            "give a move some way or a duration"};
  }

  const Cycle& cycle_;
  double angle_;  ///< [rad] where the joint is
  ResolvedCycle out_;
};

}  // namespace

MotionLimits limitsOf(const Segment& segment, const Cycle& cycle) {
  return {firstSet(segment.speedLimit, cycle.speedLimit),
          firstSet(segment.accelerationLimit, cycle.accelerationLimit),
          firstSet(segment.jerkLimit, cycle.jerkLimit)};
}

std::vector<MoveGroup> moveGroups(const Cycle& cycle) {
  std::vector<MoveGroup> groups;
  for (std::size_t i = 0; i < cycle.segments.size(); ++i) {
    const Segment& segment = cycle.segments[i];
    const bool continues =
        i > 0 && !segment.block.empty() && segment.block == cycle.segments[i - 1].block;
    if (continues) {
      groups.back().last = i;
    } else {
      groups.push_back({i, i, segment.repeats});
    }
  }
  return groups;
}

tl::expected<ResolvedCycle, InputError> resolveMoves(const Cycle& cycle) {
  return Resolver(cycle).run();
}

}  // namespace jw
