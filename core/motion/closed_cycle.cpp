#include "core/motion/closed_cycle.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include <fmt/format.h>

namespace jw {
namespace {

constexpr double kTurn = 2 * std::numbers::pi;
constexpr std::size_t kFewestRows = 5;
/// A mend that adds more than this share of the peak acceleration changes the load visibly.
constexpr double kMuch = 0.1;

double largestOf(const std::vector<double>& values) {
  double largest = 0;
  for (const double v : values) largest = std::max(largest, std::abs(v));
  return largest;
}

/// Rows as absolute values: the table's angle is made relative at the end.
struct Stretch {
  std::vector<double> time, position, speed, acceleration;

  MotionState at(std::size_t row) const { return {position[row], speed[row], acceleration[row]}; }

  MotionState mismatch(bool wholeTurns) const {
    const MotionState first = at(0), last = at(time.size() - 1);
    double angle = last.position - first.position;
    if (wholeTurns) angle -= kTurn * std::round(angle / kTurn);
    return {angle, last.speed - first.speed, last.acceleration - first.acceleration};
  }

  void takeOff(std::size_t row, const MotionState& mend) {
    position[row] -= mend.position;
    speed[row] -= mend.speed;
    acceleration[row] -= mend.acceleration;
  }
};

/// What the blend takes off, at a share `s` of its length [s].
MotionState blendAt(const MotionState& mismatch, double s, double length) {
  const double p = mismatch.position;
  const double v = mismatch.speed * length;
  const double a = mismatch.acceleration * length * length;
  const double c3 = 10 * p - 4 * v + a / 2;
  const double c4 = -15 * p + 7 * v - a;
  const double c5 = 6 * p - 3 * v + a / 2;
  return {s * s * s * (c3 + s * (c4 + s * c5)),
          s * s * (3 * c3 + s * (4 * c4 + s * 5 * c5)) / length,
          s * (6 * c3 + s * (12 * c4 + s * 20 * c5)) / length / length};
}

void noteLargest(MotionState& largest, const MotionState& mend) {
  largest.position = std::max(largest.position, std::abs(mend.position));
  largest.speed = std::max(largest.speed, std::abs(mend.speed));
  largest.acceleration = std::max(largest.acceleration, std::abs(mend.acceleration));
}

void close(Stretch& stretch, ClosedCycle& result, const ClosingOptions& options) {
  if (options.closing == CycleClosing::LeaveOpen) return;
  const double duration = stretch.time.back();
  const bool blend = options.closing == CycleClosing::Blend;
  const double length = blend ? options.blendShare * duration : duration;
  const double begin = duration - length;
  for (std::size_t i = 0; i < stretch.time.size(); ++i) {
    if (blend && stretch.time[i] <= begin) continue;
    const double s = (stretch.time[i] - begin) / length;
    const MotionState mend =
        blend ? blendAt(result.mismatch, s, length)
              : MotionState{s * result.mismatch.position, result.mismatch.position / duration, 0};
    stretch.takeOff(i, mend);
    noteLargest(result.largestMend, mend);
  }
}

InputError refuse(std::string what, std::string remedy) {
  return {std::move(what), "stretch of the log", std::move(remedy)};
}

tl::expected<void, InputError> checkOptions(const ClosingOptions& options) {
  if (options.closing != CycleClosing::Blend || (options.blendShare > 0 && options.blendShare <= 1))
    return {};
  return tl::unexpected(
      refuse(fmt::format("the blend takes {:g} of the stretch", options.blendShare),
             "give a share above 0, at most 1"));
}

/// First row and one past the last.
tl::expected<std::pair<std::size_t, std::size_t>, InputError> rowsBetween(const MeasuredLog& log,
                                                                          double from, double to) {
  const auto& t = log.time;
  const auto first =
      static_cast<std::size_t>(std::lower_bound(t.begin(), t.end(), from) - t.begin());
  const auto last = static_cast<std::size_t>(std::upper_bound(t.begin(), t.end(), to) - t.begin());
  const std::size_t count = last > first ? last - first : 0;
  if (count < kFewestRows)
    return tl::unexpected(refuse(
        fmt::format("there are {} rows between {} and {}", count,
                    formatQuantity(from, Quantity::Time), formatQuantity(to, Quantity::Time)),
        fmt::format("choose a stretch of {} rows or more", kFewestRows)));
  if (count > kMostTablePoints)
    return tl::unexpected(refuse(fmt::format("the stretch has {} rows", count),
                                 fmt::format("choose one of at most {}", kMostTablePoints)));
  return std::pair{first, last};
}

std::vector<double> part(const std::vector<double>& column, std::size_t first, std::size_t last) {
  return {column.begin() + static_cast<std::ptrdiff_t>(first),
          column.begin() + static_cast<std::ptrdiff_t>(last)};
}

void noteSize(const Stretch& stretch, ClosedCycle& result) {
  const double peak = largestOf(stretch.acceleration);
  const double added = result.largestMend.acceleration;
  if (added <= kMuch * peak) return;
  result.notes.push_back(
      refuse(fmt::format("closing adds up to {}, {:.0f} % of the stretch's peak acceleration",
                         formatQuantity(added, Quantity::AngularAcceleration), 100 * added / peak),
             "move the ends to where position and speed agree, or blend over a longer share"));
}

/// Sets speeds below `restSpeed` to 0 and counts them.
std::size_t rest(Stretch& stretch, double restSpeed) {
  std::size_t count = 0;
  for (double& v : stretch.speed) {
    if (v == 0 || !(std::abs(v) < restSpeed)) continue;
    v = 0;
    ++count;
  }
  return count;
}

Segment segmentOf(Stretch stretch, double window, bool keepDerivatives) {
  Segment segment;
  segment.name = "Measured";
  segment.law = MotionLaw::Table;
  const double start = stretch.position.front();
  for (double& q : stretch.position) q -= start;
  segment.table.time = std::move(stretch.time);
  segment.table.angle = std::move(stretch.position);
  if (keepDerivatives) {
    segment.table.speed = std::move(stretch.speed);
    segment.table.acceleration = std::move(stretch.acceleration);
  } else if (window > 0) {
    segment.smoothing = window;
  }
  return segment;
}

}  // namespace

tl::expected<ClosedCycle, InputError> closeIntoCycle(const MeasuredLog& log,
                                                     const LogMotion& motion, double from,
                                                     double to, const ClosingOptions& options) {
  if (auto valid = checkOptions(options); !valid) return tl::unexpected(valid.error());
  const auto rows = rowsBetween(log, from, to);
  if (!rows) return tl::unexpected(rows.error());
  const auto [first, last] = *rows;
  Stretch stretch{part(log.time, first, last), part(motion.position, first, last),
                  part(motion.speed, first, last), part(motion.acceleration, first, last)};
  const double start = stretch.time.front();
  for (double& t : stretch.time) t -= start;
  ClosedCycle result;
  result.firstRow = first;
  result.lastRow = last - 1;
  result.mismatch = stretch.mismatch(options.wholeTurns);
  close(stretch, result, options);
  result.left = stretch.mismatch(options.wholeTurns);
  noteSize(stretch, result);
  result.restRows = rest(stretch, options.restSpeed);
  result.startAngle = stretch.position.front();
  result.segment = segmentOf(std::move(stretch), motion.window, options.keepDerivatives);
  return result;
}

double closingEnd(const MeasuredLog& log, const LogMotion& motion, double from, double to,
                  double reach) {
  const auto& t = log.time;
  const auto rowAt = [&t](double time) {
    return static_cast<std::size_t>(std::lower_bound(t.begin(), t.end(), time) - t.begin());
  };
  const auto unlike = [](const std::vector<double>& values, std::size_t a, std::size_t b,
                         double largest) {
    const double difference = largest > 0 ? (values[a] - values[b]) / largest : 0;
    return difference * difference;
  };
  const MotionState largest{largestOf(motion.position), largestOf(motion.speed),
                            largestOf(motion.acceleration)};
  const std::size_t start = rowAt(from);
  double best = to, least = std::numeric_limits<double>::infinity();
  for (std::size_t i = std::max(rowAt(to - reach), start + kFewestRows);
       i < t.size() && t[i] <= to + reach; ++i) {
    const double sum = unlike(motion.position, i, start, largest.position) +
                       unlike(motion.speed, i, start, largest.speed) +
                       unlike(motion.acceleration, i, start, largest.acceleration);
    if (sum >= least) continue;
    least = sum;
    best = t[i];
  }
  return best;
}

}  // namespace jw
