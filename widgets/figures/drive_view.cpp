#include "widgets/figures/drive_view.h"

#include <cmath>

#include <QRegularExpression>

#include "core/motion/cycle_reading.h"
#include "core/physics/stage_data.h"
#include "core/studies/drive_forces.h"
#include "widgets/figures/missing_text.h"
#include "widgets/panels/power_stations.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

std::string pathOf(int stage) { return "transmission[" + std::to_string(stage) + "]"; }

QString utf8(const std::string& text) { return QString::fromStdString(text); }

QString ratioText(double ratio) { return numberText(std::abs(ratio), 5) + QStringLiteral(" : 1"); }

QString headlineOf(const DriveShapes& shapes) {
  const QString text = QStringLiteral("Ratio ") + ratioText(shapes.ratio);
  if (!shapes.ratioFormula.empty()) return text + QStringLiteral(" = ") + utf8(shapes.ratioFormula);
  return shapes.ratio < 0 ? text + QStringLiteral(", reversed") : text;
}

// The ratio typed in, where it is another than that of the parts.
QString contrastOf(const Stage& stage, const DriveShapes& shapes) {
  const double typed = stage.ratio;
  if (!isSet(typed) || std::abs(typed - std::abs(shapes.ratio)) <= 1e-6 * std::abs(typed))
    return {};
  return QStringLiteral("data sheet ") + ratioText(typed);
}

// Mass, size and torque for its mass, as far as the data sheet gives them.
QString bodyOf(const Stage& stage) {
  QStringList parts;
  if (isSet(stage.mass)) parts << quantityText(stage.mass, Quantity::Mass, "kg");
  const auto millimetres = [](double length) {
    return numberText(fromInternal(length, "mm", Quantity::Length), 4);
  };
  if (isSet(stage.diameter) && isSet(stage.length))
    parts << QStringLiteral("⌀ %1 × %2 mm")
                 .arg(millimetres(stage.diameter), millimetres(stage.length));
  else if (isSet(stage.diameter))
    parts << QStringLiteral("⌀ %1 mm").arg(millimetres(stage.diameter));
  else if (isSet(stage.length))
    parts << QStringLiteral("%1 mm long").arg(millimetres(stage.length));
  if (const double density = torquePerMass(stage); isSet(density))
    parts << QStringLiteral("peak torque per mass %1 N·m/kg").arg(numberText(density, 3));
  return parts.join(QStringLiteral(" · "));
}

QString noticeOf(const Project& project, const std::vector<InputError>& errors) {
  QStringList links;
  for (const InputError& error : errors) links << fieldLink(project, error);
  return QStringLiteral("<p>The drawing needs:</p><p>%1</p>")
      .arg(links.join(QStringLiteral("<br>")));
}

void draw(DriveView& view, const Project& project) {
  const Stage& stage = project.active().transmission[std::size_t(view.stage)];
  auto shapes = driveShapes(stage, pathOf(view.stage));
  if (!shapes) {
    view.notice = noticeOf(project, shapes.error());
    return;
  }
  view.headline = headlineOf(*shapes);
  view.contrast = contrastOf(stage, *shapes);
  view.body = bodyOf(stage);
  view.source = stage;
  view.shapes = std::make_shared<const DriveShapes>(std::move(*shapes));
}

const StageLoad* loadOf(const DriveView& view) {
  if (!view.evaluation || !view.evaluation->chain) return nullptr;
  const auto& stages = view.evaluation->chain->stages;
  return std::size_t(view.stage) < stages.size() ? &stages[std::size_t(view.stage)] : nullptr;
}

// Product of the signed ratios from this stage to the joint.
double ratioBehind(const Evaluation& evaluation, int stage) {
  if (!evaluation.chain || std::size_t(stage) >= evaluation.chain->stages.size()) return kUnset;
  double ratio = 1;
  for (std::size_t k = std::size_t(stage); k < evaluation.chain->stages.size(); ++k)
    ratio *= evaluation.chain->stages[k].ratio;
  return ratio;
}

double largestOf(const std::vector<DriveForce>& forces) {
  double largest = 0;
  for (const DriveForce& force : forces) largest = std::max(largest, force.force.norm());
  return largest;
}

// The longest arrow of the cycle is a good part of the drawing. Ring pins are many and share the
// load, so that theirs would often be too short to see.
void scaleArrows(DriveView& view) {
  if (view.empty() || !std::isfinite(view.largestTorque) || view.largestTorque == 0) return;
  const DriveForces forces = driveForces(view.source, 0, view.largestTorque);
  if (forces.pins.empty()) return;
  const double size = view.shapes->bounds.high.x() - view.shapes->bounds.low.x();
  const double others = std::max(forces.bearing.force.norm(), largestOf(forces.outputPins));
  view.arrowLength = 0.2 * size / std::max(others, forces.largestPinForce);
  const double pins = view.arrowLength * forces.largestPinForce;
  view.pinArrowFactor = std::max(1.0, std::floor(0.12 * size / pins));
}

QString roleText(DriveRole role) {
  switch (role) {
    case DriveRole::Input: return QStringLiteral("input · ");
    case DriveRole::Output: return QStringLiteral("output · ");
    case DriveRole::Held:
    case DriveRole::Between: break;
  }
  return {};
}

}  // namespace

int mainStage(const Project& project) {
  const auto& stages = project.active().transmission;
  int main = stages.empty() ? -1 : 0;
  double largest = 0;
  for (std::size_t k = 0; k < stages.size(); ++k) {
    const auto shapes = driveShapes(stages[k], {});
    if (!shapes || !(std::abs(shapes->ratio) > largest)) continue;
    largest = std::abs(shapes->ratio);
    main = int(k);
  }
  return main;
}

DriveView driveView(const Snapshot& snapshot, int stage) {
  DriveView view;
  const Project* project =
      snapshot.evaluatedProject ? snapshot.evaluatedProject.get() : snapshot.project.get();
  if (!project) return view;
  const auto& stages = project->active().transmission;
  for (const Stage& one : stages) view.stages << stageTitle(one);
  view.stage = stage >= 0 && std::size_t(stage) < stages.size() ? stage : mainStage(*project);
  if (view.stage < 0) {
    view.notice = QStringLiteral("<p>The motor drives the joint directly: there is no stage.</p>");
    return view;
  }
  draw(view, *project);
  view.evaluation = snapshot.evaluation;
  if (view.evaluation) view.inputRatio = ratioBehind(*view.evaluation, view.stage);
  if (const StageLoad* load = loadOf(view); load && load->outputTorque.size() > 0)
    view.largestTorque = load->outputTorque.abs().maxCoeff();
  scaleArrows(view);
  return view;
}

DriveInstant driveInstant(const DriveView& view, double time) {
  DriveInstant instant;
  if (view.empty() || !view.moves() || view.evaluation->cycle->size() == 0) return instant;
  const SampledCycle& cycle = *view.evaluation->cycle;
  if (std::isnan(time)) {
    Eigen::Index fastest = 0;
    cycle.speed.abs().maxCoeff(&fastest);
    instant.angle = view.inputRatio * cycle.angle[0];
    instant.speed = view.inputRatio * cycle.speed[fastest];
    instant.torque = view.largestTorque;
    instant.when = QStringLiteral("at the highest speed of the cycle");
  } else {
    instant.angle = view.inputRatio * valueAt(cycle, cycle.angle, time);
    instant.speed = view.inputRatio * valueAt(cycle, cycle.speed, time);
    if (const StageLoad* load = loadOf(view))
      instant.torque = valueAt(cycle, load->outputTorque, time);
    instant.clockwise = instant.torque * view.shapes->ratio < 0;
    instant.when = QStringLiteral("at %1 s").arg(fixedNumber(time, 2));
  }
  if (!std::isfinite(instant.angle)) instant.angle = 0;
  return instant;
}

DriveInstant turningInstant(const DriveView& view, double angle) {
  DriveInstant instant;
  instant.angle = angle;
  instant.torque = view.largestTorque;
  return instant;
}

QString driveForceText(const DriveView& view, const DriveInstant& instant) {
  if (!(view.arrowLength > 0) || !std::isfinite(instant.torque)) return {};
  const DriveForces forces =
      driveForces(view.source, instant.angle, instant.torque, instant.clockwise);
  const auto newtons = [](double force) { return quantityText(force, Quantity::Force, "N"); };
  QString text = QStringLiteral(
                     "Arrows: forces on the front disc under %1 at the output. "
                     "Largest at a ring pin %2")
                     .arg(quantityText(std::abs(instant.torque), Quantity::Torque, "N*m"),
                          newtons(forces.largestPinForce));
  if (!forces.outputPins.empty())
    text += QStringLiteral(", eccentric %1").arg(newtons(forces.bearing.force.norm()));
  text += u'.';
  if (view.pinArrowFactor > 1)
    text += QStringLiteral(" Those of ring pins are drawn %1 times as long.")
                .arg(numberText(view.pinArrowFactor));
  return text;
}

QString driveSpeedText(const DriveLabel& label, const DriveInstant& instant) {
  if (label.role == DriveRole::Held) return QStringLiteral("held");
  if (label.rate == 0) return QStringLiteral("does not turn");
  if (std::isfinite(instant.speed))
    return roleText(label.role) +
           quantityText(instant.speed * label.rate, Quantity::AngularSpeed, "rpm");
  if (label.role == DriveRole::Input) return QStringLiteral("input");
  return roleText(label.role) + numberText(label.rate) + QStringLiteral(" × input");
}

int driveStageOf(const QString& figureName) {
  static const QRegularExpression kForm(QStringLiteral("^drive([1-9][0-9]?)?$"));
  const auto match = kForm.match(figureName);
  if (!match.hasMatch()) return -2;
  return match.captured(1).isEmpty() ? -1 : match.captured(1).toInt() - 1;
}

}  // namespace jw
