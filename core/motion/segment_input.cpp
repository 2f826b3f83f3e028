#include "core/motion/segment_input.h"

#include <cmath>

#include <fmt/format.h>

namespace jw {
namespace {

using MaybeError = std::optional<InputError>;

constexpr double kLargestAngle = 1e9;     // [rad]
constexpr double kLongestDuration = 1e9;  // [s]
constexpr double kMostPeriods = 1e5;
constexpr double kShareRounding = 1e-12;  // of accelShare + decelShare, typed as decimals
constexpr int kFewestSamples = 5;
constexpr int kMostSamples = 10'000'000;

/// Reports on the values of one segment.
class SegmentReader {
 public:
  SegmentReader(const Segment& segment, std::size_t index)
      : path_(segmentPath(index)), title_(segmentTitle(segment, index)) {}

  InputError error(std::string_view field, const std::string& what,
                   const std::string& remedy) const {
    return {fmt::format("{}: {}", title_, what), fmt::format("{}.{}", path_, field), remedy};
  }

  /// Unset or outside low..high; `range` says in words what is allowed.
  MaybeError outside(std::string_view field, std::string_view label, double value, bool inRange,
                     const std::string& range) const {
    if (std::isnan(value))
      return error(field, fmt::format("{} is not set", label), "give " + range);
    if (!std::isfinite(value) || !inRange)
      return error(field, fmt::format("{} is {:g}", label, value), "give " + range);
    return std::nullopt;
  }

 private:
  std::string path_, title_;
};

MaybeError durationError(const SegmentReader& read, const Segment& segment) {
  const double value = segment.duration;
  return read.outside("duration", "the duration [s]", value, value > 0 && value <= kLongestDuration,
                      "a time above 0 and at most 1e9 s");
}

MaybeError travelError(const SegmentReader& read, const Segment& segment) {
  return read.outside("travel", "the travel [rad]", segment.travel,
                      std::abs(segment.travel) <= kLargestAngle,
                      "an angle within \u00b11e9 rad; a segment that stands still is a dwell");
}

MaybeError shareError(const SegmentReader& read, const Segment& segment) {
  const double accel = segment.accelShare;
  const double decel = segment.decelShare;
  const double low = segment.travel == 0 ? 0 : std::numeric_limits<double>::min();
  const std::string range = segment.travel == 0 ? "a share from 0 to 1"
                                                : "a share above 0 and at most 1, since the "
                                                  "joint cannot change its speed in no time";
  const auto inRange = [low](double share) { return share >= low && share <= 1; };
  if (auto e =
          read.outside("accelShare", "the share of time speeding up", accel, inRange(accel), range))
    return e;
  if (auto e = read.outside("decelShare", "the share of time slowing down", decel, inRange(decel),
                            range))
    return e;
  if (accel + decel <= 1 + kShareRounding) return std::nullopt;
  return read.error("decelShare",
                    fmt::format("speeding up takes {:g} and slowing down {:g} of the duration, "
                                "{:g} together",
                                accel, decel, accel + decel),
                    "make the two shares at most 1 together");
}

MaybeError jerkShareError(const SegmentReader& read, const Segment& segment) {
  const double share = segment.jerkShare;
  return read.outside("jerkShare", "the jerk share", share, share > 0 && share <= 0.5,
                      "a share above 0 and at most 0.5 of each speed change");
}

MaybeError periodsError(const SegmentReader& read, const Segment& segment) {
  const double periods = segment.periods;
  return read.outside("periods", "the number of periods", periods,
                      periods > 0 && periods <= kMostPeriods, "a number above 0 and at most 1e5");
}

MaybeError smoothingError(const SegmentReader& read, const Segment& segment) {
  if (std::isnan(segment.smoothing)) return std::nullopt;
  return read.outside("smoothing", "the smoothing window [s]", segment.smoothing,
                      segment.smoothing > 0, "a time above 0, or nothing for the usual window");
}

MaybeError lawError(const SegmentReader& read, const Segment& segment) {
  if (segment.law == MotionLaw::Trapezoidal) return shareError(read, segment);
  if (segment.law == MotionLaw::Sinusoid) return periodsError(read, segment);
  if (segment.law != MotionLaw::JerkLimited) return std::nullopt;
  if (auto e = shareError(read, segment)) return e;
  return jerkShareError(read, segment);
}

/// Rows count from 1 in what people read.
MaybeError columnError(const std::vector<double>& column, std::string_view name, double limit,
                       const std::string& path) {
  for (std::size_t row = 0; row < column.size(); ++row) {
    if (std::abs(column[row]) <= limit) continue;
    return InputError{fmt::format("row {}: the {} is {:g}", row + 1, name, column[row]),
                      fmt::format("{}.{}", path, name),
                      fmt::format("give a number within \u00b1{:g} (rad and s)", limit)};
  }
  return std::nullopt;
}

MaybeError timeOrderError(const std::vector<double>& time, const std::string& path) {
  if (time.front() != 0)
    return InputError{fmt::format("row 1: the time is {:g} s", time.front()), path + ".time",
                      "let the time start at 0"};
  for (std::size_t row = 1; row < time.size(); ++row) {
    if (time[row] > time[row - 1]) continue;
    return InputError{fmt::format("row {}: the time goes from {:.9g} s to {:.9g} s", row + 1,
                                  time[row - 1], time[row]),
                      path + ".time", "let the time rise from each row to the next"};
  }
  return std::nullopt;
}

MaybeError tableSizeError(const MotionTable& table, const std::string& path) {
  const std::size_t rows = table.time.size();
  const bool complete = !table.speed.empty() && !table.acceleration.empty();
  const std::size_t fewest = complete ? 2 : 5;
  if (rows < fewest)
    return InputError{rows == 0 ? "the motion table is empty"
                                : fmt::format("the motion table has too few rows: {}", rows),
                      path,
                      complete ? "give at least 2 rows"
                               : "give at least 5 rows, or columns of speed and acceleration"};
  const auto fits = [rows](const std::vector<double>& c) { return c.empty() || c.size() == rows; };
  if (table.angle.size() == rows && fits(table.speed) && fits(table.acceleration))
    return std::nullopt;
  return InputError{
      fmt::format("the columns differ in length: {} times, {} angles, {} speeds, "
                  "{} accelerations",
                  rows, table.angle.size(), table.speed.size(), table.acceleration.size()),
      path, "give each row a value in each column, or leave a column out"};
}

}  // namespace

std::string segmentPath(std::size_t index) {
  return fmt::format("cycle.segments[{}]", index);
}

std::string segmentTitle(const Segment& segment, std::size_t index) {
  if (segment.name.empty()) return fmt::format("segment {}", index + 1);
  return fmt::format("segment {} \"{}\"", index + 1, segment.name);
}

std::optional<InputError> tableInputError(const MotionTable& table, const std::string& path) {
  constexpr double kAny = std::numeric_limits<double>::max();
  if (auto e = tableSizeError(table, path)) return e;
  if (auto e = columnError(table.time, "time", kLongestDuration, path)) return e;
  if (auto e = columnError(table.angle, "angle", kLargestAngle, path)) return e;
  if (auto e = columnError(table.speed, "speed", kAny, path)) return e;
  if (auto e = columnError(table.acceleration, "acceleration", kAny, path)) return e;
  return timeOrderError(table.time, path);
}

std::optional<InputError> segmentInputError(const Segment& segment, std::size_t index) {
  const SegmentReader read(segment, index);
  if (segment.law == MotionLaw::Table) {
    if (auto e = smoothingError(read, segment)) return e;
    auto e = tableInputError(segment.table, segmentPath(index) + ".table");
    if (e) e->what = segmentTitle(segment, index) + ": " + e->what;
    return e;
  }
  if (segment.law != MotionLaw::Dwell) {
    if (auto e = travelError(read, segment)) return e;
  }
  if (auto e = durationError(read, segment)) return e;
  return lawError(read, segment);
}

std::optional<InputError> cycleInputError(const Cycle& cycle) {
  if (cycle.segments.empty())
    return InputError{"the cycle has no segments", "cycle.segments", "add at least one move"};
  if (cycle.samples < kFewestSamples || cycle.samples > kMostSamples)
    return InputError{fmt::format("{} samples are asked for", cycle.samples), "cycle.samples",
                      "give a whole number from 5 to 10 000 000"};
  if (!(std::abs(cycle.startAngle) <= kLargestAngle))
    return InputError{std::isnan(cycle.startAngle)
                          ? "the start angle is not set"
                          : fmt::format("the start angle is {:g} rad", cycle.startAngle),
                      "cycle.startAngle", "give an angle within \u00b11e9 rad"};
  for (std::size_t i = 0; i < cycle.segments.size(); ++i)
    if (auto e = segmentInputError(cycle.segments[i], i)) return e;
  return std::nullopt;
}

}  // namespace jw
