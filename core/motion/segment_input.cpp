#include "core/motion/segment_input.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "core/model/field_catalogue.h"

namespace jw {
namespace {

using MaybeError = std::optional<InputError>;

constexpr double kLargestAngle = 1e9;     // [rad] of a table
constexpr double kLongestDuration = 1e9;  // [s] of a table
constexpr double kShareRounding = 1e-12;  // of accelShare + decelShare, typed as decimals

/// Fields without a default that sampling cannot do without.
constexpr std::array<std::string_view, 3> kNeeded{"travel", "target", "duration"};

bool isNeeded(const FieldInfo& field) {
  return isSet(field.defaultValue) ||
         std::find(kNeeded.begin(), kNeeded.end(), field.key) != kNeeded.end();
}

/// "Lift: " in front of what is wrong with its values; nothing in front of the cycle's own.
std::string introduction(const std::string& title) { return title.empty() ? "" : title + ": "; }

MaybeError fieldError(const FieldInfo& field, double value, const std::string& title,
                      const std::string& path) {
  if (field.range.contains(value) || (!isSet(value) && !isNeeded(field))) return std::nullopt;
  const std::string found =
      isSet(value) ? fmt::format("is {}", formatQuantity(value, field.quantity, field.unit))
                   : "is not set";
  return InputError{fmt::format("{}\"{}\" {}", introduction(title), field.label, found),
                    fmt::format("{}.{}", path, field.key),
                    fmt::format("give {}", describeRange(field))};
}

/// The first number of `owner` that its own declaration refuses.
template <class T>
MaybeError fieldsError(const T& owner, const std::string& title, const std::string& path) {
  for (const FieldInfo& field : structInfo<T>().fields) {
    const bool isNumber = field.kind == FieldKind::Number || field.kind == FieldKind::Integer;
    if (!isNumber || (field.applies && !field.applies(&owner))) continue;
    if (auto error = fieldError(field, field.number(&owner), title, path)) return error;
  }
  return std::nullopt;
}

MaybeError shareSumError(const Segment& segment, const std::string& title,
                         const std::string& path) {
  const bool hasShares =
      (segment.law == MotionLaw::Trapezoidal || segment.law == MotionLaw::JerkLimited) &&
      segment.timing == MoveTiming::Duration;
  const double sum = segment.accelShare + segment.decelShare;
  if (!hasShares || sum <= 1 + kShareRounding) return std::nullopt;
  return InputError{fmt::format("{}: speeding up takes {:g} and slowing down {:g} of the duration, "
                                "{:g} together",
                                title, segment.accelShare, segment.decelShare, sum),
                    path + ".decelShare", "make the two shares at most 1 together"};
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
  if (table.angle.size() == rows && fits(table.speed) && fits(table.acceleration) &&
      fits(table.torque))
    return std::nullopt;
  return InputError{fmt::format("the columns differ in length: {} times, {} angles, {} speeds, "
                                "{} accelerations, {} external torques",
                                rows, table.angle.size(), table.speed.size(),
                                table.acceleration.size(), table.torque.size()),
                    path, "give each row a value in each column, or leave a column out"};
}

}  // namespace

std::string segmentPath(std::size_t index) { return fmt::format("cycle.segments[{}]", index); }

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
  if (auto e = columnError(table.torque, "external torque", kAny, path)) return e;
  return timeOrderError(table.time, path);
}

std::optional<InputError> segmentInputError(const Segment& segment, std::size_t index) {
  const std::string path = segmentPath(index);
  const std::string title = segmentTitle(segment, index);
  if (auto error = fieldsError(segment, title, path)) return error;
  if (segment.law != MotionLaw::Table) return shareSumError(segment, title, path);
  auto error = tableInputError(segment.table, path + ".table");
  if (error) error->what = introduction(title) + error->what;
  return error;
}

std::optional<InputError> cycleInputError(const Cycle& cycle) {
  if (cycle.segments.empty())
    return InputError{"the cycle has no segments", "cycle.segments", "add at least one move"};
  if (auto error = fieldsError(cycle, "", "cycle")) return error;
  for (std::size_t i = 0; i < cycle.segments.size(); ++i)
    if (auto error =
            cycle.segments[i].disabled ? std::nullopt : segmentInputError(cycle.segments[i], i))
      return error;
  return std::nullopt;
}

}  // namespace jw
