#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace jw {

/// What a column of a measured log holds.
enum class LogRole { Unused, Time, Position, Speed, Acceleration, Torque, Current };

/// What was mended, or only noticed, on reading a log.
enum class LogMendKind {
  Gap,             ///< a pause between rows far longer than the usual step; nothing changed
  Duplicate,       ///< rows of one time made one row
  WrapAround,      ///< the position jumped by a turn; the turns were added
  SignTurned,      ///< a column taken with the opposite sign
  EmptyCell,       ///< rows left out, or a torque left open, because a cell is empty or NaN
  EndMissing,      ///< the last line has no end: the file may be cut short
  StartShifted,    ///< the time was set to 0 at the first row
  LinesPassedOver  ///< lines in front of the rows that are no rows
};

/// One kind of mend and where it was done.
struct LogMend {
  LogMendKind kind = LogMendKind::Gap;
  std::string text;                ///< a sentence for people, with count and size
  std::size_t count = 0;           ///< how often
  std::vector<std::size_t> lines;  ///< of the text, from 1; the first 100 places
  std::vector<std::size_t> rows;   ///< of the log, from 0, next to the places in `lines`
};

/// A measured log of one joint in SI units. A column that was not measured is empty; the others
/// have a value for each row. Time strictly rises from 0; torque and current may hold NaN.
struct MeasuredLog {
  std::vector<double> time;          ///< [s]
  std::vector<double> position;      ///< [rad]
  std::vector<double> speed;         ///< [rad/s]
  std::vector<double> acceleration;  ///< [rad/s²]
  std::vector<double> torque;        ///< [N·m] at the joint
  std::vector<double> current;       ///< [A] of the motor, as logged
  double startTime = 0;              ///< [s] time stamp of the first row
  double medianStep = 0;             ///< [s] from row to row
  double largestStep = 0;            ///< [s]
  std::vector<LogMend> mends;

  std::size_t rows() const { return time.size(); }
};

}  // namespace jw
