#include "core/files/log_mending.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace jw {
namespace {

constexpr std::size_t kMostPlaces = 100;

std::string timeText(double seconds) { return formatQuantity(seconds, Quantity::Time, "s", 6); }

void keepIfAny(MeasuredLog& log, LogMend mend, std::string text) {
  if (mend.count == 0) return;
  mend.text = std::move(text);
  log.mends.push_back(std::move(mend));
}

std::string plural(std::size_t count, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

/// Whole turns by which the position jumps from one row to the next; 0 if by less than half.
double turnsBetween(double before, double after, double turn) {
  return std::round((after - before) / turn);
}

/// Whether all positions lie within a turn and every jump looks like the end of one.
bool looksWrapped(const std::vector<double>& position, double turn) {
  const auto [low, high] = std::minmax_element(position.begin(), position.end());
  if (*high - *low > turn * 1.001) return false;
  bool found = false;
  for (std::size_t i = 1; i < position.size(); ++i) {
    const double jump = position[i] - position[i - 1];
    const double turns = turnsBetween(position[i - 1], position[i], turn);
    if (turns == 0) continue;
    if (std::abs(jump - turns * turn) > 0.25 * turn) return false;
    found = true;
  }
  return found;
}

void unwrap(RawLog& raw, const LogReading& reading) {
  if (reading.wrapAround == WrapAround::Never || !(reading.turn > 0)) return;
  std::vector<double>& position = raw.log.position;
  if (reading.wrapAround == WrapAround::IfWithinOneTurn && !looksWrapped(position, reading.turn))
    return;
  LogMend mend{LogMendKind::WrapAround, {}, 0, {}, {}};
  double turns = 0, before = position.front();
  for (std::size_t i = 1; i < position.size(); ++i) {
    const double jump = turnsBetween(before, position[i], reading.turn);
    before = position[i];
    turns -= jump;
    position[i] += turns * reading.turn;
    if (jump != 0) addPlace(mend, raw.lines[i], i);
  }
  keepIfAny(raw.log, mend,
            fmt::format("the position begins anew {}: turns of {} were added",
                        plural(mend.count, "time", "times"),
                        formatQuantity(reading.turn, Quantity::Angle)));
}

std::array<std::vector<double>*, 6> columnsOf(MeasuredLog& log) {
  return {&log.time, &log.position, &log.speed, &log.acceleration, &log.torque, &log.current};
}

/// Rows of one time: [first, last) becomes row `to`.
void merge(std::vector<double>& column, std::size_t first, std::size_t last, std::size_t to,
           DuplicateTimes rule) {
  if (rule == DuplicateTimes::KeepFirst) return void(column[to] = column[first]);
  if (rule == DuplicateTimes::KeepLast) return void(column[to] = column[last - 1]);
  double sum = 0, count = 0;
  for (std::size_t i = first; i < last; ++i) {
    if (std::isnan(column[i])) continue;
    sum += column[i];
    count += 1;
  }
  column[to] = count > 0 ? sum / count : column[first];
}

void mergeDuplicates(RawLog& raw, LogMend& mend, DuplicateTimes rule) {
  MeasuredLog& log = raw.log;
  std::size_t to = 0;
  for (std::size_t first = 0, last = 0; first < log.rows(); first = last, ++to) {
    while (last < log.rows() && log.time[last] == log.time[first]) ++last;
    for (std::size_t i = first + 1; i < last; ++i) addPlace(mend, raw.lines[i], to);
    if (last == first + 1 && to == first) continue;
    for (auto* column : columnsOf(log))
      if (!column->empty() && column != &log.time) merge(*column, first, last, to, rule);
    log.time[to] = log.time[first];
    raw.lines[to] = raw.lines[first];
  }
  for (auto* column : columnsOf(log))
    if (!column->empty()) column->resize(to);
  raw.lines.resize(to);
}

std::optional<InputError> mendDuplicates(RawLog& raw, DuplicateTimes rule, std::string_view name) {
  const std::vector<double>& time = raw.log.time;
  const auto same = std::adjacent_find(time.begin(), time.end());
  if (same == time.end()) return std::nullopt;
  const auto row = static_cast<std::size_t>(same - time.begin());
  if (rule == DuplicateTimes::Refuse)
    return InputError{fmt::format("the time {} stands in two rows", timeText(*same)),
                      fmt::format("{}, line {}, column time", name, raw.lines[row + 1]),
                      "let the time rise, or have rows of one time averaged"};
  LogMend mend{LogMendKind::Duplicate, {}, 0, {}, {}};
  mergeDuplicates(raw, mend, rule);
  const std::string_view how = rule == DuplicateTimes::Average     ? "the mean is taken"
                               : rule == DuplicateTimes::KeepFirst ? "the first is kept"
                                                                   : "the last is kept";
  keepIfAny(raw.log, mend,
            fmt::format("{} a time that stood there before: {}",
                        plural(mend.count, "row repeats", "rows repeat"), how));
  return std::nullopt;
}

void findGaps(RawLog& raw, double factor) {
  MeasuredLog& log = raw.log;
  std::vector<double> steps(log.rows() - 1);
  for (std::size_t i = 0; i < steps.size(); ++i) steps[i] = log.time[i + 1] - log.time[i];
  const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
  std::nth_element(steps.begin(), middle, steps.end());
  log.medianStep = *middle;
  LogMend mend{LogMendKind::Gap, {}, 0, {}, {}};
  for (std::size_t i = 1; i < log.rows(); ++i) {
    const double step = log.time[i] - log.time[i - 1];
    log.largestStep = std::max(log.largestStep, step);
    if (step > factor * log.medianStep) addPlace(mend, raw.lines[i], i);
  }
  keepIfAny(log, mend,
            fmt::format("{} of more than {:g} steps of {}; the longest {}",
                        plural(mend.count, "gap", "gaps"), factor, timeText(log.medianStep),
                        timeText(log.largestStep)));
}

void shiftStart(RawLog& raw) {
  MeasuredLog& log = raw.log;
  log.startTime = log.time.front();
  if (log.startTime == 0) return;
  for (double& t : log.time) t -= log.startTime;
  LogMend mend{LogMendKind::StartShifted, {}, 0, {}, {}};
  addPlace(mend, raw.lines.front(), 0);
  keepIfAny(log, mend, fmt::format("the time begins at {}: set to 0", timeText(log.startTime)));
}

}  // namespace

void addPlace(LogMend& mend, std::size_t line, std::size_t row) {
  ++mend.count;
  if (mend.lines.size() >= kMostPlaces) return;
  mend.lines.push_back(line);
  mend.rows.push_back(row);
}

std::optional<InputError> mendLog(RawLog& raw, const LogReading& reading, std::string_view name) {
  unwrap(raw, reading);
  if (auto error = mendDuplicates(raw, reading.duplicates, name)) return error;
  if (raw.log.rows() < kFewestLogRows)
    return InputError{fmt::format("there are too few rows: {}", raw.log.rows()), std::string(name),
                      fmt::format("give at least {} rows of different times", kFewestLogRows)};
  findGaps(raw, reading.gapFactor);
  shiftStart(raw);
  return std::nullopt;
}

}  // namespace jw
