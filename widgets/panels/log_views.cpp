#include "widgets/panels/log_views.h"

#include <cmath>

#include "widgets/theme/number_text.h"

namespace jw {
namespace {

const SeriesLook kMeasured{&Palette::muted, Qt::SolidLine, 1.2};
const SeriesLook kRaw{&Palette::zeroLine, Qt::SolidLine, 1};
const SeriesLook kSmoothed{&Palette::accent, Qt::SolidLine, 1.8};
const SeriesLook kModelled{&Palette::peak, Qt::DashLine, 1.6};
const SeriesLook kFitted{&Palette::continuous, Qt::DotLine, 1.9};

LogRow row(const QString& id, const QString& name, Quantity quantity, const char* unit) {
  return {id,
          QStringLiteral("%1, %2").arg(name, QString::fromStdString(prettyUnit(unit))),
          fromInternal(1, unit, quantity),
          {}};
}

void add(LogRow& to, const QString& name, const SeriesLook& look, const LogTracePtr& trace,
         bool scales = true) {
  if (trace) to.lines.push_back({name, look, trace, scales});
}

LogView emptyView(const LogStudy& study) {
  LogView view;
  const MeasuredLog& log = *study.log;
  view.length = log.time.back();
  view.longestStep = LogReading{}.gapFactor * log.medianStep;
  for (const LogMend& mend : log.mends)
    if (mend.kind == LogMendKind::Gap)
      for (const std::size_t r : mend.rows)
        if (r > 0 && r < log.rows()) view.gaps.push_back({log.time[r - 1], log.time[r]});
  return view;
}

LogRow positionRow(const LogStudy& study) {
  LogRow position = row("position", "position", Quantity::Angle, "deg");
  add(position, "measured", kMeasured, study.position);
  add(position, "smoothed", kSmoothed, study.smoothPosition);
  return position;
}

}  // namespace

LogView motionView(const LogStudy& study) {
  LogView view = emptyView(study);
  LogRow speed = row("speed", "speed", Quantity::AngularSpeed, "rpm");
  add(speed, "measured", kMeasured, study.speed);
  add(speed, "raw differences", kRaw, study.rawSpeed, false);
  add(speed, "smoothed", kSmoothed, study.smoothSpeed);
  LogRow acceleration =
      row("acceleration", "acceleration", Quantity::AngularAcceleration, "rad/s^2");
  add(acceleration, "measured", kMeasured, study.acceleration);
  add(acceleration, "raw differences", kRaw, study.rawAcceleration, false);
  add(acceleration, "smoothed", kSmoothed, study.smoothAcceleration);
  view.rows = {positionRow(study), std::move(speed), std::move(acceleration)};
  return view;
}

LogView torqueView(const LogStudy& study) {
  LogView view = emptyView(study);
  LogRow torque = row("torque", "torque at the joint", Quantity::Torque, "N*m");
  const bool fromCurrent = study.log->torque.empty();
  add(torque, fromCurrent ? "from the current" : "measured", kMeasured, study.torqueMeasured);
  add(torque, "this project's load", kModelled, study.torqueModelled);
  add(torque, "fitted", kFitted, study.torqueFitted);
  view.rows = {std::move(torque), positionRow(study)};
  return view;
}

QString smoothingEffect(const LogMotion& motion) {
  if (motion.window <= 0) return QStringLiteral("Speed and acceleration were measured.");
  if (motion.speedPeak > 0)
    return QStringLiteral("It moves the speed by %1 rms, %2 at most.")
        .arg(quantityText(motion.speedResidual, Quantity::AngularSpeed, "rpm"),
             quantityText(motion.speedPeak, Quantity::AngularSpeed, "rpm"));
  return QStringLiteral("It moves the position by %1 rms, %2 at most.")
      .arg(quantityText(motion.positionResidual, Quantity::Angle, "deg"),
           quantityText(motion.positionPeak, Quantity::Angle, "deg"));
}

QStringList stateTexts(const MotionState& state) {
  // What is left of a closed end is the rounding of the last digit.
  const auto text = [](double value, const char* unit, Quantity quantity) {
    return numberText(fromInternal(std::abs(value) < 1e-9 ? 0 : value, unit, quantity));
  };
  return {text(state.position, "deg", Quantity::Angle),
          text(state.speed, "rpm", Quantity::AngularSpeed),
          text(state.acceleration, "rad/s^2", Quantity::AngularAcceleration)};
}

}  // namespace jw
