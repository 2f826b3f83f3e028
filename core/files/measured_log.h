#pragma once

#include <functional>
#include <numbers>

#include <tl/expected.hpp>

#include "core/files/log_columns.h"
#include "core/model/measured_log.h"

namespace jw {

/// What becomes of rows of one time.
enum class DuplicateTimes { Average, KeepFirst, KeepLast, Refuse };

/// What becomes of rows without time, position, speed or acceleration.
enum class EmptyCells { LeaveRowOut, Refuse };

/// Whether a position that jumps by a turn goes on behind the jump.
enum class WrapAround {
  IfWithinOneTurn,  ///< if all positions lie within one turn and each jump is nearly a whole turn
  Always,           ///< every jump of more than half a turn
  Never
};

/// How a log is mended.
struct LogReading {
  DuplicateTimes duplicates = DuplicateTimes::Average;
  EmptyCells emptyCells = EmptyCells::LeaveRowOut;
  WrapAround wrapAround = WrapAround::IfWithinOneTurn;
  double turn = 2 * std::numbers::pi;  ///< [rad] after which the position begins anew
  double gapFactor = 10;               ///< a pause of more median steps than this is a gap
};

/// [rad] positions beyond this are refused: about 16 000 turns, beyond any joint.
inline constexpr double kLargestLogPosition = 1e5;
/// [s] logs longer than this are refused: about 30 years.
inline constexpr double kLongestLog = 1e9;
inline constexpr std::size_t kMostLogRows = 20'000'000;
inline constexpr std::size_t kFewestLogRows = 5;

/// Whether `columns` can be read: one time, one position, no other role twice, units that suit.
tl::expected<void, InputError> checkColumns(const LogSource& source, const LogColumns& columns);

/// Told from time to time which share of the text has been read, 0 to 1; false stops the reading.
using LogProgress = std::function<bool(double share)>;

/// Reads every row of a log into SI units: value = sign x factor x number in the column's unit; the
/// time begins at 0. Mends what `reading` says and lists it in the result: rows of one time, turns
/// added to the position, rows left out, pauses, turned signs. A torque or current without a number
/// is NaN. O(n).
///
/// All or nothing: fails, naming line and column, on a cell that is no number, a row with more or
/// fewer cells than columns, another decimal sign than the layout's, time that runs backwards,
/// values that are infinite, positions beyond kLargestLogPosition, more rows than kMostLogRows,
/// fewer than kFewestLogRows, text that is shorter than the file claims, and when `progress` stops.
tl::expected<MeasuredLog, InputError> readLog(const LogSource& source, const LogColumns& columns,
                                              const LogReading& reading = {},
                                              const LogProgress& progress = {});

}  // namespace jw
