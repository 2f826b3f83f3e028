#pragma once

#include <string>
#include <vector>

#include <tl/expected.hpp>

#include "core/files/log_layout.h"
#include "core/model/measured_log.h"

namespace jw {

/// What one column of a log is taken for; every member but the title can be corrected.
struct LogColumn {
  std::string title;  ///< as it stands in the text; empty without names
  LogRole role = LogRole::Unused;
  std::string unit;       ///< of the numbers, such as "deg/s"; empty if unused
  double sign = 1;        ///< 1 or -1
  double factor = 1;      ///< on top of unit and sign: 1 over a ratio, angle of a count
  std::string reason;     ///< why this role, unit and sign
  bool doubtful = false;  ///< the guess needs a look: the unit is not stated, or clashes
};

/// How a log is read: layout of the text and use of each column.
struct LogColumns {
  LogLayout layout;
  std::vector<LogColumn> columns;  ///< one for each column of the text
};

/// Guesses role, unit and sign of each column. Names and units in them come first; of two columns
/// of one role a measured one stands above a wanted one, and the first above later ones. What names
/// leave open is told by eight stretches of 500 rows spread over the text: a column that never
/// falls is the time, a column whose change agrees with the sum of another times the step is the
/// position to that speed, and so is the speed to an acceleration; a unit that is not stated is the
/// one that makes both agree within 15 %, a sign that runs against the position is turned. Fails as
/// guessLayout does. Time or position may be left unassigned: readLog asks for them.
tl::expected<LogColumns, InputError> guessColumns(const LogSource& source);

/// As guessColumns, for a layout that was corrected.
LogColumns guessColumns(const LogSource& source, LogLayout layout);

/// The column of this role, or the number of columns if there is none.
std::size_t columnOf(const LogColumns& columns, LogRole role);

}  // namespace jw
