#include "widgets/panels/log_study.h"

#include <algorithm>
#include <cmath>

#include "core/motion/raw_differences.h"
#include "core/physics/log_torque.h"
#include "widgets/panels/log_text.h"

namespace jw {
namespace {

using Done = tl::expected<void, InputError>;

template <class Owner>
LogTracePtr traceOf(const std::shared_ptr<Owner>& owner, const MeasuredLog& log,
                    const std::vector<double>& values) {
  if (values.empty()) return nullptr;
  return std::make_shared<const LogTrace>(owner, log.time, values);
}

/// Keeps a curve and the log that holds its times.
template <class Part>
std::shared_ptr<const void> kept(const LogStudy& study, const std::shared_ptr<Part>& part) {
  using Both = std::pair<std::shared_ptr<const MeasuredLog>, std::shared_ptr<const void>>;
  return std::make_shared<const Both>(study.log, part);
}

void forgetFrom(LogStudy& study, LogStage stage) {
  LogStudy left;
  if (stage > LogStage::Text) left.text = study.text;
  if (stage > LogStage::Columns) left.columns = study.columns;
  if (stage > LogStage::Rows) {
    left.log = study.log;
    left.position = study.position;
    left.speed = study.speed;
    left.acceleration = study.acceleration;
  }
  if (stage > LogStage::Motion) {
    left.curves = study.curves;
    left.smoothPosition = study.smoothPosition;
    left.rawSpeed = study.rawSpeed;
    left.smoothSpeed = study.smoothSpeed;
    left.rawAcceleration = study.rawAcceleration;
    left.smoothAcceleration = study.smoothAcceleration;
  }
  if (stage > LogStage::Torque) {
    left.torque = study.torque;
    left.torqueMeasured = study.torqueMeasured;
    left.torqueModelled = study.torqueModelled;
  }
  if (stage > LogStage::Join) left.join = study.join;
  study = std::move(left);
}

Done readText(LogStudy& study, const LogSettings& settings, const LogAdvance& progress) {
  auto text = readLogText(settings.fileName, progress);
  if (!text) return tl::unexpected(text.error());
  study.text = std::make_shared<const LogText>(*std::move(text));
  return {};
}

/// The beginning is enough for a preview; the rest of a long log takes more room than its rows.
void keepBeginning(LogStudy& study) {
  constexpr std::size_t kBeginning = 1 << 20;  // [bytes]
  if (study.text->bytes.size() <= kBeginning) return;
  study.text = std::make_shared<const LogText>(LogText{
      study.text->fileName, study.text->name, study.text->bytes.substr(0, kBeginning), 0, false});
}

Done findColumns(LogStudy& study, const LogSettings& settings) {
  if (settings.columns) {
    study.columns = std::make_shared<const LogColumns>(*settings.columns);
    return {};
  }
  const LogSource source = study.text->source();
  if (settings.layout) {
    study.columns = std::make_shared<const LogColumns>(guessColumns(source, *settings.layout));
    return {};
  }
  auto columns = guessColumns(source);
  if (!columns) return tl::unexpected(columns.error());
  study.columns = std::make_shared<const LogColumns>(*std::move(columns));
  return {};
}

Done readRows(LogStudy& study, const LogSettings& settings, const LogAdvance& progress) {
  auto log = readLog(study.text->source(), *study.columns, settings.reading, progress);
  if (!log) return tl::unexpected(log.error());
  study.log = std::make_shared<const MeasuredLog>(*std::move(log));
  study.position = traceOf(study.log, *study.log, study.log->position);
  study.speed = traceOf(study.log, *study.log, study.log->speed);
  study.acceleration = traceOf(study.log, *study.log, study.log->acceleration);
  keepBeginning(study);
  return {};
}

Done findMotion(LogStudy& study, const LogSettings& settings) {
  const MeasuredLog& log = *study.log;
  const double window = isSet(settings.window) ? settings.window : firstLogWindow(log);
  auto curves = std::make_shared<LogCurves>();
  curves->motion = smoothLog(log, window);
  if (log.speed.empty()) curves->rawSpeed = rawSlope(log.time, log.position);
  if (log.acceleration.empty())
    curves->rawAcceleration =
        log.speed.empty() ? rawCurvature(log.time, log.position) : rawSlope(log.time, log.speed);
  study.curves = curves;
  const auto trace = [&](const std::vector<double>& values) {
    return traceOf(kept(study, curves), log, values);
  };
  const LogMotion& motion = curves->motion;
  if (log.speed.empty()) study.smoothPosition = trace(motion.position);
  if (log.speed.empty() || log.acceleration.empty()) study.smoothSpeed = trace(motion.speed);
  if (log.acceleration.empty()) study.smoothAcceleration = trace(motion.acceleration);
  study.rawSpeed = trace(curves->rawSpeed);
  study.rawAcceleration = trace(curves->rawAcceleration);
  return {};
}

std::pair<std::size_t, std::size_t> rowsOf(const LogSettings& settings, const MeasuredLog& log) {
  const auto [from, to] = stretchOf(settings, log);
  const auto first = std::lower_bound(log.time.begin(), log.time.end(), from);
  const auto end = std::upper_bound(first, log.time.end(), to);
  return {std::size_t(first - log.time.begin()), std::size_t(end - log.time.begin())};
}

double rmsDifference(const std::vector<double>& a, const std::vector<double>& b, std::size_t first,
                     std::size_t end) {
  double sum = 0;
  double count = 0;
  for (std::size_t i = first; i < end; ++i) {
    if (std::isnan(a[i]) || std::isnan(b[i])) continue;
    sum += (a[i] - b[i]) * (a[i] - b[i]);
    count += 1;
  }
  return count > 0 ? std::sqrt(sum / count) : kUnset;
}

Done findTorque(LogStudy& study, const LogSettings& settings) {
  const MeasuredLog& log = *study.log;
  const bool fromCurrent = log.torque.empty();
  if (fromCurrent && log.current.empty()) return {};
  auto torque = std::make_shared<LogTorque>();
  const LogDrive& drive = settings.drive;
  if (fromCurrent && isSet(drive.torqueConstant))
    torque->fromCurrent =
        jw::jointTorque(log.current, drive.torqueConstant, drive.ratio, drive.efficiency);
  torque->modelled = modelledTorque(log, study.curves->motion, settings.load);
  study.torque = torque;
  if (const auto* measured = study.jointTorque())
    study.torqueMeasured = traceOf(kept(study, torque), log, *measured);
  if (isSet(settings.load.inertia))
    study.torqueModelled = traceOf(kept(study, torque), log, torque->modelled);
  return {};
}

Done findJoin(LogStudy& study, const LogSettings& settings) {
  LogJoinResult join = closedCycle(study, settings);
  if (join) join->segment.table = {};
  study.join = std::make_shared<const LogJoinResult>(std::move(join));
  return {};
}

Done findFit(LogStudy& study, const LogSettings& settings) {
  const std::vector<double>* torque = study.jointTorque();
  if (torque == nullptr) return {};
  const auto [first, end] = rowsOf(settings, *study.log);
  LoadFitOptions options;
  options.terms = settings.terms;
  options.springStiffness = settings.load.springStiffness;
  options.springAngle = settings.load.springAngle;
  const ExtensionSpring extension = extensionSpring(settings.load);
  const bool complete = isSet(extension.lengthAt(0) + extension.freeLength);
  if (extension.given() && complete) options.extension = extension;
  if (study.log->torque.empty())
    options.reflectedInertia =
        settings.drive.rotorInertia * settings.drive.ratio * settings.drive.ratio;
  if (end <= first) return {};
  study.torqueDifference = rmsDifference(*torque, study.torque->modelled, first, end);
  const LogMotion& motion = study.curves->motion;
  auto fit = std::make_shared<LogFitResult>(
      fitLoad(loadFitData(motion, *torque, first, end - 1), options));
  study.fit = fit;
  study.fitFirst = first;
  if (*fit) {
    const std::span<const double> time = std::span(study.log->time).subspan(first, end - first);
    study.torqueFitted = std::make_shared<const LogTrace>(kept(study, fit), time, (*fit)->torque);
  }
  return {};
}

}  // namespace

const std::vector<double>* LogStudy::jointTorque() const {
  if (!log) return nullptr;
  if (!log->torque.empty()) return &log->torque;
  return torque && !torque->fromCurrent.empty() ? &torque->fromCurrent : nullptr;
}

QString nameOf(LogStage stage) {
  switch (stage) {
    case LogStage::Text: return QStringLiteral("Reading the file");
    case LogStage::Columns: return QStringLiteral("Looking at the columns");
    case LogStage::Rows: return QStringLiteral("Reading the rows");
    case LogStage::Motion: return QStringLiteral("Smoothing");
    case LogStage::Torque: return QStringLiteral("Working out the torque");
    case LogStage::Join: return QStringLiteral("Closing the stretch");
    default: return QStringLiteral("Fitting the load");
  }
}

std::pair<double, double> stretchOf(const LogSettings& settings, const MeasuredLog& log) {
  return {std::max(settings.from, 0.0), std::min(settings.to, log.time.back())};
}

LogJoinResult closedCycle(const LogStudy& study, const LogSettings& settings) {
  const auto [from, to] = stretchOf(settings, *study.log);
  return closeIntoCycle(*study.log, study.curves->motion, from, to, settings.closing);
}

tl::expected<void, InputError> advance(LogStudy& study, LogStage stage, const LogSettings& settings,
                                       const LogAdvance& progress) {
  forgetFrom(study, stage);
  if (stage > LogStage::Text && !study.text) return {};
  if (stage > LogStage::Columns && !study.columns) return {};
  if (stage > LogStage::Rows && !study.log) return {};
  if (stage > LogStage::Motion && !study.curves) return {};
  const bool reads = stage == LogStage::Columns || stage == LogStage::Rows;
  if (reads && !study.text->whole) {
    if (auto read = readText(study, settings, progress); !read) return read;
  }
  switch (stage) {
    case LogStage::Text: return readText(study, settings, progress);
    case LogStage::Columns: return findColumns(study, settings);
    case LogStage::Rows: return readRows(study, settings, progress);
    case LogStage::Motion: return findMotion(study, settings);
    case LogStage::Torque: return findTorque(study, settings);
    case LogStage::Join: return findJoin(study, settings);
    case LogStage::Fit: return findFit(study, settings);
    case LogStage::Done: break;
  }
  return {};
}

}  // namespace jw
