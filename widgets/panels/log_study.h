#pragma once

#include <array>
#include <functional>
#include <memory>
#include <optional>

#include <QString>
#include <tl/expected.hpp>

#include "core/files/log_columns.h"
#include "core/files/measured_log.h"
#include "core/model/load.h"
#include "core/motion/closed_cycle.h"
#include "core/studies/load_fit.h"
#include "widgets/figures/log_trace.h"

namespace jw {

/// A file's text: whole until its rows have been read, then its beginning, for the preview. It is
/// read again when its rows are.
struct LogText {
  QString fileName;
  std::string name;  ///< for messages
  std::string bytes;
  std::uint64_t size = 0;  ///< bytes that the file has by its folder; 0 = no matter
  bool whole = true;

  LogSource source() const { return {bytes, name, size}; }
};

/// Where the joint's torque comes from if only the motor's current was measured.
struct LogDrive {
  double torqueConstant = kUnset;  ///< [N·m/A] of the current as logged
  double ratio = 1;                ///< motor turns for one of the joint
  double efficiency = 1;           ///< share of the torque that comes through
  double rotorInertia = 0;         ///< [kg·m²]
  bool operator==(const LogDrive& other) const {
    const bool unset = !isSet(torqueConstant) && !isSet(other.torqueConstant);
    return (unset || torqueConstant == other.torqueConstant) && ratio == other.ratio &&
           efficiency == other.efficiency && rotorInertia == other.rotorInertia;
  }
};

/// What the person has settled about a log.
struct LogSettings {
  QString fileName;
  std::optional<LogLayout> layout;    ///< empty = guessed
  std::optional<LogColumns> columns;  ///< empty = guessed
  LogReading reading;
  double window = kUnset;  ///< [s] of the smoother; unset = firstLogWindow
  Load load;
  LogDrive drive;
  double from = 0;       ///< [s] of the stretch
  double to = INFINITY;  ///< [s]
  ClosingOptions closing;
  std::array<bool, kLoadTerms> terms{true, true, true, true, true, true};
};

/// Motion of a log and what the raw differences of its rows would give instead.
struct LogCurves {
  LogMotion motion;
  std::vector<double> rawSpeed;         ///< [rad/s]; empty if the speed was measured
  std::vector<double> rawAcceleration;  ///< [rad/s²]; empty if the acceleration was measured
};

/// Torque at the joint.
struct LogTorque {
  std::vector<double> fromCurrent;  ///< [N·m]; empty if the torque itself was measured
  std::vector<double> modelled;     ///< [N·m] of the project's load
};

using LogFitResult = tl::expected<LoadFit, InputError>;
using LogJoinResult = tl::expected<ClosedCycle, InputError>;

/// What is known about a log. Parts come one after the other; each is immutable and shared.
struct LogStudy {
  std::shared_ptr<const LogText> text;
  std::shared_ptr<const LogColumns> columns;
  std::shared_ptr<const MeasuredLog> log;
  std::shared_ptr<const LogCurves> curves;
  std::shared_ptr<const LogTorque> torque;    ///< null if neither torque nor current was measured
  std::shared_ptr<const LogJoinResult> join;  ///< without its rows
  std::shared_ptr<const LogFitResult> fit;    ///< null without a torque
  double torqueDifference = kUnset;           ///< [N·m] rms of measured less modelled
  std::size_t fitFirst = 0;                   ///< row of the log at which the fitted rows begin
  LogTracePtr position, smoothPosition, speed, rawSpeed, smoothSpeed, acceleration, rawAcceleration,
      smoothAcceleration, torqueMeasured, torqueModelled, torqueFitted;

  /// The measured torque at the joint [N·m], null if there is none.
  const std::vector<double>* jointTorque() const;
};

/// The parts in the order in which they follow from one another.
enum class LogStage { Text, Columns, Rows, Motion, Torque, Join, Fit, Done };

/// "reading the file" and so on.
QString nameOf(LogStage stage);

/// Told the share of a stage that is done, 0 to 1; false = stop.
using LogAdvance = std::function<bool(double share)>;

/// Works out one stage of `study`, from what is there, and takes away what followed from an older
/// one. Stages that lack what they need do nothing. Fails, naming line and column, on a file that
/// cannot be read; the study then has nothing of this stage and the following ones.
tl::expected<void, InputError> advance(LogStudy& study, LogStage stage, const LogSettings& settings,
                                       const LogAdvance& progress);

/// The stretch of the settings as one of the log, [s].
std::pair<double, double> stretchOf(const LogSettings& settings, const MeasuredLog& log);

/// The chosen stretch as a cycle, with all its rows.
LogJoinResult closedCycle(const LogStudy& study, const LogSettings& settings);

}  // namespace jw
