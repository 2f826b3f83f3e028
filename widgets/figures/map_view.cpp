#include "widgets/figures/map_view.h"

#include <algorithm>
#include <cmath>

#include "widgets/figures/chooser.h"
#include "widgets/figures/margin_chart.h"
#include "widgets/figures/sweep_view.h"
#include "widgets/inputs/field_text.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr double kLeastRegion = 0.04;  // share of the map below which a check is not named

double shown(const SweepAxis& axis, double value) {
  return fromInternal(value, axis.info->unit, axis.info->quantity);
}

ChartAxis axisOf(const Project& project, const SweepAxis& axis, const std::vector<double>& values) {
  const double half = (values.back() - values.front()) / double(values.size() - 1) / 2;
  return {axisTitle(project, axis), {}, values.front() - half, values.back() + half};
}

/// Largest margin of either sign, rounded up to tens of per cent, from 20 % to 100 %.
double colourLimit(const Eigen::ArrayXXd& worst) {
  double most = 0;
  for (const double margin : worst.reshaped())
    if (std::isfinite(margin)) most = std::max(most, std::abs(margin));
  return std::clamp(std::ceil(10 * most - 1e-9) / 10, 0.2, 1.0);
}

void addEdges(MapView& view) {
  for (const ContourLine& line : view.map->edge) {
    QPolygonF points;
    for (const Eigen::Vector2d& p : line.points)
      points << QPointF(shown(view.map->across, p.x()), shown(view.map->up, p.y()));
    view.edges.push_back(std::move(points));
  }
}

/// The cell of a check nearest to the middle of all its cells.
void addRegion(MapView& view, int check) {
  const Eigen::ArrayXXi& at = view.map->worstAt;
  QPointF middle;
  std::vector<QPointF> cells;
  for (Eigen::Index r = 0; r < at.rows(); ++r) {
    for (Eigen::Index c = 0; c < at.cols(); ++c) {
      if (at(r, c) != check || !isSet(view.map->worst(r, c))) continue;
      cells.emplace_back(double(c), double(r));
      middle += cells.back();
    }
  }
  if (double(cells.size()) < kLeastRegion * double(at.size())) return;
  middle /= double(cells.size());
  const auto away = [&](const QPointF& p) {
    return std::hypot(p.x() - middle.x(), p.y() - middle.y());
  };
  const QPointF best = *std::min_element(cells.begin(), cells.end(),
                                         [&](auto& a, auto& b) { return away(a) < away(b); });
  view.regions.emplace_back(QPointF(view.x[std::size_t(best.x())], view.y[std::size_t(best.y())]),
                            checkLabel(view.map->checks[std::size_t(check)].title));
}

void markPresent(MapView& view, const Project& project, double margin) {
  const auto x = findField(project, view.map->across.path);
  const auto y = findField(project, view.map->up.path);
  if (!x || !y || !isSet(x->number()) || !isSet(y->number())) return;
  const QPointF at(shown(view.map->across, x->number()), shown(view.map->up, y->number()));
  const bool inside = at.x() >= view.across.low && at.x() <= view.across.high &&
                      at.y() >= view.up.low && at.y() <= view.up.high;
  if (!inside) return;
  view.present = at;
  view.presentText = QStringLiteral("as it is ") + marginText(margin);
}

std::size_t nearestCell(const std::vector<double>& values, double at) {
  const double step = (values.back() - values.front()) / double(values.size() - 1);
  const double cell = std::round((at - values.front()) / step);
  return std::size_t(std::clamp(cell, 0.0, double(values.size() - 1)));
}

}  // namespace

double smallestMargin(const Evaluation& evaluation) { return designPoint(evaluation).worst; }

MapView mapView(std::shared_ptr<const FieldMap> map, const Project& project, double presentMargin) {
  MapView view;
  if (!map || map->across.value.size() < 2 || map->up.value.size() < 2) return view;
  view.map = std::move(map);
  view.x = shownValues(view.map->across);
  view.y = shownValues(view.map->up);
  view.across = axisOf(project, view.map->across, view.x);
  view.up = axisOf(project, view.map->up, view.y);
  view.title = QStringLiteral("Smallest margin");
  if ((view.map->worst >= 0).any())
    view.remark = QStringLiteral("over both inputs; the line is where all checks begin to hold");
  else
    view.warning = QStringLiteral("no pair of values holds");
  view.limit = colourLimit(view.map->worst);
  addEdges(view);
  markPresent(view, project, presentMargin);
  for (int check = 0; check < int(view.map->checks.size()); ++check) addRegion(view, check);
  return view;
}

QString mapReading(const MapView& view, double x, double y) {
  if (view.empty() || x < view.across.low || x > view.across.high || y < view.up.low ||
      y > view.up.high)
    return {};
  const std::size_t column = nearestCell(view.x, x), row = nearestCell(view.y, y);
  const auto r = Eigen::Index(row), c = Eigen::Index(column);
  QString text = axisText(view.map->across, view.x[column]) + QStringLiteral("  ·  ") +
                 axisText(view.map->up, view.y[row]) + QStringLiteral("  ·  ");
  const int check = view.map->worstAt(r, c);
  if (check < 0) return text + QStringLiteral("no margin is known");
  text += checkLabel(view.map->checks[std::size_t(check)].title) + u' ';
  const double worst = view.map->worst(r, c);
  return text + (isSet(worst) ? marginText(worst) : QStringLiteral("cannot be evaluated"));
}

}  // namespace jw
