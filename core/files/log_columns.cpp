#include "core/files/log_columns.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "core/files/log_sample.h"
#include "core/files/log_titles.h"
#include "core/files/table_text.h"

namespace jw {
namespace {

constexpr double kAgrees = 0.15;     // share by which two columns may differ
constexpr double kCorrelated = 0.9;  // below it two columns have nothing to do with each other

bool isNear(double value, double wanted) { return std::abs(value - wanted) <= kAgrees * wanted; }

/// Works out the columns one question after the other.
class ColumnGuess {
 public:
  ColumnGuess(const LogSource& source, LogLayout layout) : sample_(sampleLog(source, layout)) {
    out_.layout = std::move(layout);
    out_.columns.resize(out_.layout.columns());
  }

  LogColumns guess() {
    readTitles();
    keepBest();
    findTime();
    findPosition();
    findDerivative(LogRole::Position, LogRole::Speed);
    findDerivative(LogRole::Speed, LogRole::Acceleration);
    settleTimeUnit();
    settleDerivative(LogRole::Position, LogRole::Speed);
    settlePositionUnit();
    settleDerivative(LogRole::Speed, LogRole::Acceleration);
    settleRest();
    return std::move(out_);
  }

 private:
  std::size_t none() const { return out_.columns.size(); }
  std::size_t find(LogRole role) const { return columnOf(out_, role); }
  LogColumn& at(std::size_t index) { return out_.columns[index]; }

  void add(std::size_t index, const std::string& reason) {
    std::string& text = at(index).reason;
    text += text.empty() ? reason : "; " + reason;
  }

  void take(std::size_t index, LogRole role, const std::string& reason) {
    at(index).role = role;
    at(index).reason.clear();
    add(index, reason);
  }

  void doubt(std::size_t index, const std::string& reason) {
    at(index).doubtful = true;
    add(index, reason);
  }

  void readTitles() {
    for (std::size_t i = 0; i < none(); ++i) {
      at(i).title = out_.layout.titles[i];
      const std::string& below = out_.layout.units[i];
      meanings_.push_back(
          readTitle(below.empty() ? at(i).title : fmt::format("{} [{}]", at(i).title, below)));
      at(i).role = meanings_[i].role;
      at(i).unit = meanings_[i].unit;
      at(i).reason = meanings_[i].reason;
      if (!meanings_[i].strangeUnit.empty() && at(i).role != LogRole::Unused)
        doubt(i, fmt::format("{} is no unit known here",
                             table_text::quoted(meanings_[i].strangeUnit)));
    }
  }

  bool isNumeric(std::size_t index) const {
    const auto& values = sample_.columns[index];
    return std::any_of(values.begin(), values.end(), [](double v) { return std::isfinite(v); });
  }

  /// One column for each role: the one of the highest rank, of these the first.
  void keepBest() {
    for (const LogRole role : {LogRole::Time, LogRole::Position, LogRole::Speed,
                               LogRole::Acceleration, LogRole::Torque, LogRole::Current}) {
      std::size_t best = none();
      for (std::size_t i = 0; i < none(); ++i)
        if (at(i).role == role && isNumeric(i) &&
            (best == none() || meanings_[i].rank > meanings_[best].rank))
          best = i;
      for (std::size_t i = 0; i < none(); ++i)
        if (at(i).role == role && i != best) drop(i, best);
    }
  }

  void drop(std::size_t index, std::size_t best) {
    const std::string role(nameOf(at(index).role));
    at(index).role = LogRole::Unused;
    at(index).doubtful = false;
    at(index).reason = best == none()
                           ? "holds no numbers"
                           : fmt::format("could be the {} too; column {} is taken", role, best + 1);
  }

  void findTime() {
    if (find(LogRole::Time) != none()) return;
    for (std::size_t i = 0; i < none(); ++i)
      if (at(i).role == LogRole::Unused && neverFalls(sample_, i))
        return take(i, LogRole::Time, "the first column that never falls");
  }

  bool isFree(std::size_t index) const {
    return out_.columns[index].role == LogRole::Unused &&
           meanings_[index].role == LogRole::Unused && isNumeric(index);
  }

  /// The free column of which `index` is the slope, with `sign`; none() if there is none.
  std::size_t wholeOf(std::size_t index, double sign) const {
    const std::size_t time = columnOf(out_, LogRole::Time);
    for (std::size_t i = 0; i < none(); ++i)
      if (i != index && isFree(i) &&
          sign * relate(sample_, time, i, index).correlation > kCorrelated)
        return i;
    return none();
  }

  /// Columns without a name that tells: the one that has a slope among them and is no slope itself.
  /// In a sine every column is a slope of the other against the sign: that is asked last.
  void findPosition() {
    if (find(LogRole::Position) != none() || find(LogRole::Time) == none()) return;
    for (const double sign : {1.0, -1.0})
      for (std::size_t i = 0; i < none(); ++i) {
        if (!isFree(i)) continue;
        const std::size_t whole = wholeOf(i, sign);
        if (whole == none() || wholeOf(whole, 1) != none()) continue;
        return take(whole, LogRole::Position,
                    fmt::format("its slope agrees with column {}", i + 1));
      }
    for (std::size_t i = 0; i < none(); ++i)
      if (isFree(i)) {
        take(i, LogRole::Position, "the first column besides the time");
        at(i).doubtful = true;
        return;
      }
  }

  void findDerivative(LogRole of, LogRole role) {
    const std::size_t time = find(LogRole::Time), whole = find(of);
    if (find(role) != none() || time == none() || whole == none()) return;
    std::size_t best = none();
    double most = 0;
    for (std::size_t i = 0; i < none(); ++i) {
      if (!isFree(i)) continue;
      const double found = relate(sample_, time, whole, i).correlation;
      const double match = found > 0 ? 1 + found : -found;  // the sign as it should be first
      if (std::abs(found) > kCorrelated && match > most) {
        most = match;
        best = i;
      }
    }
    if (best != none())
      take(best, role, fmt::format("agrees with the slope of the {}", nameOf(of)));
  }

  /// Seconds, unless whole steps of a thousandth or finer are likelier.
  void settleTimeUnit() {
    const std::size_t time = find(LogRole::Time);
    if (time == none() || !at(time).unit.empty()) return;
    std::vector<double> steps;
    const auto& t = sample_.columns[time];
    bool whole = true;
    for (std::size_t i = 1; i < t.size(); ++i) {
      if (t[i] > t[i - 1]) steps.push_back(t[i] - t[i - 1]);
      whole = whole && t[i] == std::floor(t[i]);
    }
    if (steps.empty()) return void(at(time).unit = "s");
    std::nth_element(steps.begin(), steps.begin() + static_cast<long>(steps.size() / 2),
                     steps.end());
    const double step = steps[steps.size() / 2];
    at(time).unit = !whole || step < 1 ? "s" : step < 500 ? "ms" : step < 500e3 ? "us" : "ns";
    const std::string found = fmt::format("steps of {:.4g}: taken for {}", step, at(time).unit);
    if (whole && step == 1) return doubt(time, found + "; could be a row number");
    at(time).unit == "s" ? add(time, found) : doubt(time, found);
  }

  /// [internal unit] one of the column's unit.
  double scaleOf(std::size_t index) {
    return at(index).unit.empty() ? 1 : toInternal(1, at(index).unit, quantityOf(at(index).role));
  }

  /// Unit and sign of a derivative from the column that it belongs to.
  void settleDerivative(LogRole of, LogRole role) {
    const std::size_t time = find(LogRole::Time), whole = find(of), part = find(role);
    if (time == none() || whole == none() || part == none()) return;
    const LogRelation found = relate(sample_, time, whole, part);
    if (std::abs(found.correlation) < kCorrelated)
      return doubt(part, fmt::format("does not agree with the slope of the {}", nameOf(of)));
    if (found.correlation < 0) {
      at(part).sign = -1;
      add(part, fmt::format("runs against the {}: sign turned", nameOf(of)));
    }
    settleSlope(whole, part, std::abs(found.slope) * scaleOf(whole) / scaleOf(time));
  }

  /// `slope` [internal unit of the derivative] that one of the derivative's unit must be.
  void settleSlope(std::size_t whole, std::size_t part, double slope) {
    if (!at(part).unit.empty() && !at(whole).unit.empty()) {
      if (!isNear(slope, scaleOf(part)))
        doubt(part, fmt::format("the slope of column {} is {:.3g} times as large: check the units",
                                whole + 1, slope / scaleOf(part)));
    } else if (!at(part).unit.empty()) {
      settleUnit(whole, scaleOf(part) / slope);
    } else {
      const bool known = !at(whole).unit.empty();
      if (!known) return settleBoth(whole, part, slope);
      settleUnit(part, slope);
    }
  }

  /// Neither has a unit: rad and rad/s if they agree, else what agrees with degrees.
  void settleBoth(std::size_t whole, std::size_t part, double slope) {
    if (isNear(slope, 1)) return;  // one unit of angle in both: the range tells which
    constexpr double kDegree = 0.017453292519943295;
    at(whole).unit = slope > 1 ? "deg" : "rad";
    settleUnit(part, slope > 1 ? slope * kDegree : slope);
    doubt(whole, fmt::format("unit from column {}", part + 1));
  }

  /// The unit of which one is `size` internal ones, if there is such.
  void settleUnit(std::size_t index, double size) {
    const Quantity quantity = quantityOf(at(index).role);
    for (const std::string_view unit : quantityInfo(quantity).units)
      if (isNear(size, toInternal(1, unit, quantity))) {
        at(index).unit = unit;
        return add(index, fmt::format("in {} it agrees with its neighbour", prettyUnit(unit)));
      }
    doubt(index, fmt::format("no unit fits: one of it would be {:.3g} {}", size,
                             prettyUnit(quantityInfo(quantity).internalUnit)));
  }

  /// More than four turns of a joint are likelier degrees.
  void settlePositionUnit() {
    const std::size_t position = find(LogRole::Position);
    if (position == none() || !at(position).unit.empty()) return;
    double most = 0;
    for (const double v : sample_.columns[position])
      if (std::isfinite(v)) most = std::max(most, std::abs(v));
    at(position).unit = most > 25 ? "deg" : "rad";
    doubt(position, fmt::format("values up to {:.3g}: taken for {}", most, at(position).unit));
    const std::size_t speed = find(LogRole::Speed);
    if (speed == none() || !at(speed).unit.empty()) return;
    at(speed).unit = most > 25 ? "deg/s" : "rad/s";
    add(speed, "as the position");
  }

  void settleRest() {
    for (std::size_t i = 0; i < none(); ++i) {
      LogColumn& column = at(i);
      if (column.role == LogRole::Unused) {
        column.unit.clear();
        if (column.reason.empty()) add(i, "neither name nor numbers tell a use");
      } else if (column.unit.empty()) {
        column.unit = quantityInfo(quantityOf(column.role)).internalUnit;
        doubt(i, fmt::format("no unit is stated: taken for {}", prettyUnit(column.unit)));
      }
    }
  }

  LogSample sample_;
  std::vector<TitleMeaning> meanings_;
  LogColumns out_;
};

}  // namespace

tl::expected<LogColumns, InputError> guessColumns(const LogSource& source) {
  auto layout = guessLayout(source);
  if (!layout) return tl::unexpected(layout.error());
  return guessColumns(source, *std::move(layout));
}

LogColumns guessColumns(const LogSource& source, LogLayout layout) {
  return ColumnGuess(source, std::move(layout)).guess();
}

std::size_t columnOf(const LogColumns& columns, LogRole role) {
  const auto found = std::find_if(columns.columns.begin(), columns.columns.end(),
                                  [role](const LogColumn& c) { return c.role == role; });
  return static_cast<std::size_t>(found - columns.columns.begin());
}

}  // namespace jw
