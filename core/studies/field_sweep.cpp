#include "core/studies/field_sweep.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "core/studies/ratio_sweep.h"

namespace jw {
namespace {

constexpr const char* kRangeExample =
    "write from..to:step or from..to/count, e.g. 40..160:1 or 0.5 kg..5 kg/20";

using Values = tl::expected<std::vector<double>, InputError>;

tl::unexpected<InputError> refuse(std::string what) {
  return tl::unexpected(InputError{std::move(what), "", kRangeExample});
}

Values evenly(double from, double to, std::size_t count) {
  std::vector<double> values;
  for (std::size_t k = 0; k < count; ++k) {
    const double share = static_cast<double>(k) / static_cast<double>(count - 1);
    values.push_back(k + 1 == count ? to : from + share * (to - from));
  }
  return values;
}

Values byCount(double from, double to, std::string_view text) {
  const auto count = parseQuantity(text, Quantity::Number, "1");
  if (!count || count->value != std::floor(count->value) || count->value < 2) {
    return refuse("the count is no whole number above 1");
  }
  if (count->value > static_cast<double>(kMostSweepPoints)) return refuse("too many values");
  return evenly(from, to, static_cast<std::size_t>(count->value));
}

/// [internal unit] a step; of temperatures a difference.
tl::expected<double, InputError> readStep(const FieldInfo& info, std::string_view text) {
  const bool point = info.quantity == Quantity::Temperature;
  const Quantity quantity = point ? Quantity::TemperatureDifference : info.quantity;
  const auto step = parseQuantity(text, quantity, point ? "K" : info.unit);
  if (!step) return tl::unexpected(step.error());
  return step->value;
}

Values byStep(const FieldInfo& info, double from, double to, std::string_view text) {
  const auto step = readStep(info, text);
  if (!step) return refuse("the step: " + step.error().what);
  if (!(*step > 0)) return refuse("the step is not above 0");
  const double steps = (to - from) / *step;
  if (steps > static_cast<double>(kMostSweepPoints)) return refuse("too many values");
  const auto whole = static_cast<std::size_t>(std::floor(steps + 1e-6));
  std::vector<double> values;
  for (std::size_t k = 0; k <= whole; ++k) {
    values.push_back(std::min(to, from + static_cast<double>(k) * *step));
  }
  return values;
}

FieldRef ownField(const Project& project, const SweepAxis& axis) {
  return *findField(project, axis.path);
}

bool isStageRatio(const FieldRef& field) {
  return field.info->key == "ratio" && field.path.starts_with("transmission[");
}

/// Sets a value that was checked; the text as typed no longer holds.
void setValue(Project& project, const SweepAxis& axis, double value) {
  const FieldRef field = ownField(project, axis);
  if (isStageRatio(field)) {
    project = withStageRatio(project, std::stoi(axis.path.substr(13)), value);
    return;
  }
  assignNumber(field, value);
}

std::optional<InputError> notAllowed(const SweepAxis& axis) {
  for (const double value : axis.value) {
    const bool whole = axis.info->kind != FieldKind::Integer || value == std::floor(value);
    if (whole && axis.info->range.contains(value)) continue;
    return InputError{fmt::format("{} is not allowed",
                                  formatQuantity(value, axis.info->quantity, axis.info->unit, 6)),
                      axis.path, "allowed is " + describeRange(*axis.info)};
  }
  return std::nullopt;
}

std::vector<MarginColumn> namesOnly(std::vector<MarginColumn> columns) {
  for (MarginColumn& column : columns) column.margin.clear();
  return columns;
}

/// Whether a check that is known elsewhere is open here, and none is short.
bool isOpen(const DesignPoint& point) { return point.openAt >= 0 && !(point.worst < 0); }

int columnOf(const std::vector<MarginColumn>& columns, const DesignPoint& point) {
  const int at = isOpen(point) ? point.openAt : point.worstAt;
  if (at < 0) return -1;
  const PointMargin& worst = point.margins[static_cast<std::size_t>(at)];
  const auto found = std::find_if(columns.begin(), columns.end(), [&](const MarginColumn& column) {
    return worst.is(column.id, column.stage);
  });
  return static_cast<int>(found - columns.begin());
}

Eigen::ArrayXd asArray(const std::vector<double>& values) {
  return Eigen::Map<const Eigen::ArrayXd>(values.data(), static_cast<Eigen::Index>(values.size()));
}

}  // namespace

Values readSweepRange(const FieldInfo& info, std::string_view range) {
  const auto dots = range.find("..");
  if (dots == range.npos) return refuse("this is no range");
  const std::string_view rest = range.substr(dots + 2);
  const auto end = rest.find(':') != rest.npos ? rest.find(':') : rest.rfind('/');
  if (end == rest.npos) return refuse("the step or the count is missing");
  const auto from = parseQuantity(range.substr(0, dots), info.quantity, info.unit);
  if (!from) return refuse("the start: " + from.error().what);
  const auto to = parseQuantity(rest.substr(0, end), info.quantity, info.unit);
  if (!to) return refuse("the end: " + to.error().what);
  if (!(to->value > from->value)) return refuse("the range does not rise");
  const std::string_view last = rest.substr(end + 1);
  return rest[end] == '/' ? byCount(from->value, to->value, last)
                          : byStep(info, from->value, to->value, last);
}

tl::expected<SweepAxis, InputError> readSweepAxis(const Project& project, std::string_view path,
                                                  std::string_view range) {
  const auto field = findField(project, path);
  if (!field) return tl::unexpected(field.error());
  const FieldKind kind = field->info->kind;
  if (kind != FieldKind::Number && kind != FieldKind::Integer) {
    return tl::unexpected(
        InputError{"only a number can be swept", field->path, "name a field that is a number"});
  }
  auto values = readSweepRange(*field->info, range);
  if (!values) {
    values.error().where = field->path;
    return tl::unexpected(values.error());
  }
  SweepAxis axis{field->path, field->info, std::move(*values)};
  if (const auto error = notAllowed(axis)) return tl::unexpected(*error);
  return axis;
}

FieldSweep fieldSweep(const Project& project, const SweepAxis& axis, const StudyRun& run) {
  FieldSweep sweep;
  sweep.axis = axis;
  const auto design = [&](std::size_t k) {
    Project changed = project;
    setValue(changed, axis, axis.value[k]);
    return changed;
  };
  sweep.points = evaluatePoints(axis.value.size(), design, run);
  noteOpenChecks(sweep.points);
  const Evaluation base = evaluate(project);
  sweep.checks = marginColumns(sweep.points, base);
  sweep.quantities = quantityColumns(sweep.points, base);
  sweep.stopped = run.stop.stop_requested();
  return sweep;
}

FieldMap fieldMap(const Project& project, const SweepAxis& across, const SweepAxis& up,
                  const StudyRun& run) {
  FieldMap map;
  map.across = across;
  map.up = up;
  const std::size_t columns = across.value.size();
  const auto design = [&](std::size_t k) {
    Project changed = project;
    setValue(changed, across, across.value[k % columns]);
    setValue(changed, up, up.value[k / columns]);
    return changed;
  };
  auto points = evaluatePoints(columns * up.value.size(), design, run);
  noteOpenChecks(points);
  map.checks = namesOnly(marginColumns(points, evaluate(project)));
  const auto rows = static_cast<Eigen::Index>(up.value.size());
  map.worst.resize(rows, static_cast<Eigen::Index>(columns));
  map.worstAt.resize(map.worst.rows(), map.worst.cols());
  for (std::size_t k = 0; k < points.size(); ++k) {
    const auto row = static_cast<Eigen::Index>(k / columns);
    const auto column = static_cast<Eigen::Index>(k % columns);
    map.worst(row, column) = isOpen(points[k]) ? kUnset : points[k].worst;
    map.worstAt(row, column) = columnOf(map.checks, points[k]);
  }
  map.edge = contourLines(asArray(across.value), asArray(up.value), map.worst, 0);
  map.stopped = run.stop.stop_requested();
  return map;
}

}  // namespace jw
