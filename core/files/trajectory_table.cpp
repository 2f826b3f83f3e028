#include "core/files/trajectory_table.h"

#include <fmt/format.h>

#include "core/files/delimited_table.h"
#include "core/files/table_text.h"

namespace jw {

tl::expected<JointTrajectory, InputError> readTrajectory(std::string_view text,
                                                         std::string_view fileName,
                                                         std::span<const TrajectoryColumn> joints) {
  std::vector<std::string> names;
  names.reserve(joints.size());  // views point into them
  std::vector<TableColumn> columns{{"time", {"time", "t"}, Quantity::Time, true}};
  for (const TrajectoryColumn& column : joints) {
    names.push_back(table_text::smallLetters(column.joint));
    columns.push_back({column.joint, {names.back()}, column.quantity, true});
  }
  const TableForm form{columns,
                       "give the time and each joint, or put a line of names first: the joints' "
                       "names as the description has them"};
  auto read = readDelimitedTable(text, fileName, form);
  if (!read) return tl::unexpected(read.error());
  JointTrajectory trajectory;
  trajectory.time = std::move(read->columns.front());
  if (trajectory.time.size() < 5) {
    return tl::unexpected(InputError{
        fmt::format("there are too few rows: {}", trajectory.time.size()), std::string(fileName),
        "give at least 5: speed and acceleration are found from neighbouring rows"});
  }
  for (std::size_t k = 1; k < read->columns.size(); ++k) {
    trajectory.place.push_back(std::move(read->columns[k]));
  }
  return trajectory;
}

}  // namespace jw
