#include "core/files/motion_table.h"

#include <array>
#include <cmath>
#include <string>

#include <fmt/format.h>

#include "core/files/delimited_table.h"

namespace jw {
namespace {

constexpr std::array<TableColumn, 5> kColumns{{
    {"time", {"time", "t"}, Quantity::Time, true},
    {"angle", {"angle", "position", "pos", "q"}, Quantity::Angle, true},
    {"speed", {"speed", "velocity", "v"}, Quantity::AngularSpeed},
    {"acceleration", {"acceleration", "accel", "a"}, Quantity::AngularAcceleration},
    {"external torque", {"external torque", "torque external"}, Quantity::Torque},
}};
constexpr TableForm kForm{
    kColumns,
    "give time, angle, speed, acceleration, external torque (2 to 5 values), or put a line of column names first, "
    "such as \"time [s], angle [deg]\""};

tl::unexpected<InputError> refuse(std::string what, std::string_view name, std::string remedy) {
  return tl::unexpected(InputError{std::move(what), std::string(name), std::move(remedy)});
}

/// Differences of huge values can overflow, those of close times can vanish.
tl::expected<void, InputError> checkShifted(const MotionTable& table, std::string_view name) {
  for (std::size_t i = 1; i < table.time.size(); ++i) {
    if (!std::isfinite(table.time[i]) || !std::isfinite(table.angle[i]))
      return refuse(fmt::format("point {} is too far from the first one", i + 1), name,
                    "give times and angles of a usable size");
    if (!(table.time[i] > table.time[i - 1]))
      return refuse(fmt::format("points {} and {} are too close in time", i, i + 1), name,
                    "let the time start nearer to 0, or rise more from line to line");
  }
  return {};
}

}  // namespace

tl::expected<MotionTable, InputError> readMotionTable(std::string_view csv, std::string_view name) {
  auto read = readDelimitedTable(csv, name, kForm);
  if (!read) return tl::unexpected(read.error());
  auto& columns = read->columns;
  if (columns[0].size() < 2)
    return refuse(fmt::format("there are too few points: {}", columns[0].size()), name,
                  "give at least 2 lines with numbers");
  for (std::vector<double>* column : {&columns[0], &columns[1]}) {
    const double first = column->front();
    for (double& value : *column) value -= first;
  }
  const MotionTable table{std::move(columns[0]), std::move(columns[1]), std::move(columns[2]),
                          std::move(columns[3]), std::move(columns[4])};
  if (auto fits = checkShifted(table, name); !fits) return tl::unexpected(fits.error());
  return table;
}

}  // namespace jw
