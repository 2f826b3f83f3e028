#include "core/files/heat_curve.h"

#include <array>
#include <string>
#include <vector>

#include "core/files/delimited_table.h"

namespace jw {
namespace {

constexpr std::array<TableColumn, 4> kColumns{{
    {"time", {"time", "t"}, Quantity::Time, true},
    {"winding temperature", {"winding", "temperature", "temp"}, Quantity::Temperature, true},
    {"power", {"power", "heat", "loss", "p"}, Quantity::Power, true},
    {"housing temperature", {"housing", "case"}, Quantity::Temperature},
}};
constexpr TableForm kForm{
    kColumns,
    "give time, winding temperature, power and perhaps housing temperature (3 or 4 values), or put "
    "a line of column names first, such as \"time [min], winding [degC], power [W]\""};

Eigen::ArrayXd arrayOf(const std::vector<double>& values) {
  return Eigen::Map<const Eigen::ArrayXd>(values.data(), static_cast<Eigen::Index>(values.size()));
}

}  // namespace

tl::expected<HeatCurve, InputError> readHeatCurve(std::string_view text, std::string_view name) {
  const auto table = readDelimitedTable(text, name, kForm);
  if (!table) return tl::unexpected(table.error());
  if (table->columns[0].empty())
    return tl::unexpected(InputError{"there are no rows below the column names", std::string(name),
                                     "give a line for each point"});
  HeatCurve curve;
  curve.time = arrayOf(table->columns[0]);
  curve.winding = arrayOf(table->columns[1]);
  curve.power = arrayOf(table->columns[2]);
  curve.housing = arrayOf(table->columns[3]);
  return curve;
}

}  // namespace jw
