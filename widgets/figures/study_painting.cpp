#include "widgets/figures/study_painting.h"

#include "core/studies/study_ranges.h"
#include "widgets/figures/map_plot.h"
#include "widgets/figures/ratio_plot.h"
#include "widgets/figures/sweep_view.h"

namespace jw {
namespace {

std::shared_ptr<const RatioSweep> ratiosOf(const Snapshot& snapshot) {
  if (snapshot.ratios || !snapshot.evaluation || !snapshot.evaluatedProject) return snapshot.ratios;
  const auto request = usualRatioSweep(*snapshot.evaluatedProject, *snapshot.evaluation);
  if (!request) return nullptr;
  auto sweep = ratioSweep(*snapshot.evaluatedProject, *request);
  return sweep ? std::make_shared<const RatioSweep>(std::move(*sweep)) : nullptr;
}

std::shared_ptr<const FieldSweep> sweepOf(const Snapshot& snapshot) {
  if (snapshot.sweep || !snapshot.evaluatedProject) return snapshot.sweep;
  const auto axis = usualAxis(*snapshot.evaluatedProject, kSweepPoints);
  if (!axis) return nullptr;
  return std::make_shared<const FieldSweep>(fieldSweep(*snapshot.evaluatedProject, *axis));
}

std::shared_ptr<const FieldMap> mapOf(const Snapshot& snapshot) {
  if (snapshot.map || !snapshot.evaluatedProject) return snapshot.map;
  const Project& project = *snapshot.evaluatedProject;
  const auto across = usualAxis(project, kMapSide);
  const auto up = across ? usualAxis(project, kMapSide, across->path) : std::nullopt;
  if (!up) return nullptr;
  return std::make_shared<const FieldMap>(fieldMap(project, *across, *up));
}

void paintChartAt(QCPPainter& painter, const QRectF& rect, LineChart chart) {
  painter.save();
  painter.translate(rect.topLeft());
  QCustomPlot plot;
  LineChartPlot lines(plot);
  lines.setStyle(printPlotStyle());
  lines.show(std::move(chart), false);
  paintPlot(painter, plot, rect.size());
  painter.restore();
}

}  // namespace

void paintPlot(QCPPainter& painter, QCustomPlot& plot, const QSizeF& size) {
  painter.setModes(QCPPainter::pmVectorized | QCPPainter::pmNoCaching | QCPPainter::pmNonCosmetic);
  plot.toPainter(&painter, int(size.width()), int(size.height()));
}

bool hasRatios(const Snapshot& snapshot) {
  return snapshot.evaluation && snapshot.evaluatedProject &&
         usualRatioSweep(*snapshot.evaluatedProject, *snapshot.evaluation).has_value();
}

bool paintRatio(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot) {
  const auto sweep = ratiosOf(snapshot);
  if (!sweep) return false;
  RatioView view = ratioView(sweep, *snapshot.evaluatedProject);
  if (view.empty()) return false;
  QCustomPlot plot;
  RatioPlot ratio(plot);
  ratio.setStyle(printPlotStyle());
  ratio.show(std::move(view), false);
  paintPlot(painter, plot, size);
  return true;
}

bool paintSweep(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot) {
  const auto sweep = sweepOf(snapshot);
  if (!sweep) return false;
  SweepView view = sweepView(sweep, *snapshot.evaluatedProject, kUsualQuantity);
  if (view.empty()) return false;
  const double upper = (view.quantity.empty() ? 1.0 : 0.62) * size.height();
  paintChartAt(painter, {0, 0, size.width(), upper}, std::move(view.margins));
  if (!view.quantity.empty())
    paintChartAt(painter, {0, upper, size.width(), size.height() - upper},
                 std::move(view.quantity));
  return true;
}

bool paintMap(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot) {
  const auto map = mapOf(snapshot);
  if (!map || (!(map->worst == map->worst).any())) return false;
  QCustomPlot plot;
  MapPlot drawn(plot);
  drawn.setStyle(printPlotStyle());
  const double margin = snapshot.evaluation ? smallestMargin(*snapshot.evaluation) : kUnset;
  drawn.show(mapView(map, *snapshot.evaluatedProject, margin), false);
  paintPlot(painter, plot, size);
  return true;
}

}  // namespace jw
