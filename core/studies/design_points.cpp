#include "core/studies/design_points.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/checks/check_writer.h"
#include "core/motion/cycle_reading.h"

namespace jw {
namespace {

double meanLoss(const Evaluation& e) {
  if (!e.demand || !e.load) return kUnset;
  return cycleMean(*e.cycle, e.demand->supplyPower - e.load->total * e.cycle->speed);
}

std::size_t placeOf(std::string_view id) {
  const auto& kinds = checkKinds();
  const auto found =
      std::find_if(kinds.begin(), kinds.end(), [&](const CheckKind& k) { return k.id == id; });
  return static_cast<std::size_t>(found - kinds.begin());
}

}  // namespace

double DesignPoint::marginOf(std::string_view id, int stage) const {
  const auto found = std::find_if(margins.begin(), margins.end(),
                                  [&](const PointMargin& one) { return one.is(id, stage); });
  return found == margins.end() ? kUnset : found->margin;
}

std::string checkTitle(std::string_view id, int stage, const Evaluation& base) {
  for (const Check& check : base.checks) {
    if (check.id == id && check.stage == stage) return check.title;
  }
  for (const CheckKind& kind : checkKinds()) {
    if (kind.id != id) continue;
    if (stage < 0) return fmt::format("{}{}", kind.perStage ? "A stage's " : "", kind.title);
    return fmt::format("Stage {} {}", stage + 1, kind.title);
  }
  return std::string(id);
}

DesignPoint designPoint(const Evaluation& evaluation) {
  DesignPoint point;
  for (const Check& check : evaluation.checks) {
    if (isSet(check.margin) && !(check.margin >= point.worst)) {
      point.worst = check.margin;
      point.worstAt = static_cast<int>(point.margins.size());
    }
    point.margins.push_back({check.id, check.stage, check.margin});
  }
  for (const NamedQuantity& quantity : evaluation.quantities) {
    point.quantities.push_back(quantity.value);
  }
  point.lossMean = meanLoss(evaluation);
  return point;
}

void noteOpenCheck(DesignPoint& point, const DesignPoint& known) {
  point.openAt = -1;
  point.opened = 0;
  for (std::size_t k = 0; k < point.margins.size(); ++k) {
    const PointMargin& one = point.margins[k];
    if (isSet(one.margin)) continue;
    const bool sameOrder = k < known.margins.size() && known.margins[k].is(one.id, one.stage);
    const double there = sameOrder ? known.margins[k].margin : known.marginOf(one.id, one.stage);
    if (!isSet(there)) continue;
    if (point.opened++ == 0) point.openAt = static_cast<int>(k);
  }
}

void noteOpenChecks(std::vector<DesignPoint>& points) {
  DesignPoint known;
  for (const DesignPoint& point : points) {
    if (known.margins.size() < point.margins.size()) {
      known.margins.insert(known.margins.end(), point.margins.begin() + known.margins.size(),
                           point.margins.end());
    }
    for (std::size_t k = 0; k < point.margins.size(); ++k) {
      const PointMargin& one = point.margins[k];
      if (isSet(one.margin) && known.margins[k].is(one.id, one.stage))
        known.margins[k].margin = one.margin;
    }
  }
  for (DesignPoint& point : points) noteOpenCheck(point, known);
}

std::vector<MarginColumn> marginColumns(const std::vector<DesignPoint>& points,
                                        const Evaluation& base) {
  std::vector<MarginColumn> columns;
  const auto columnOf = [&](std::string_view id, int stage) -> MarginColumn& {
    for (MarginColumn& column : columns) {
      if (column.id == id && column.stage == stage) return column;
    }
    return columns.emplace_back(MarginColumn{id, stage, checkTitle(id, stage, base),
                                             std::vector<double>(points.size(), kUnset)});
  };
  for (const Check& check : base.checks) columnOf(check.id, check.stage);
  for (std::size_t k = 0; k < points.size(); ++k) {
    for (const PointMargin& one : points[k].margins)
      columnOf(one.id, one.stage).margin[k] = one.margin;
  }
  std::stable_sort(columns.begin(), columns.end(), [](const auto& a, const auto& b) {
    const std::size_t placeA = placeOf(a.id), placeB = placeOf(b.id);
    return placeA != placeB ? placeA < placeB : a.stage < b.stage;
  });
  return columns;
}

std::vector<QuantityColumn> quantityColumns(const std::vector<DesignPoint>& points,
                                            const Evaluation& base) {
  std::vector<QuantityColumn> columns;
  for (std::size_t q = 0; q < base.quantities.size(); ++q) {
    const NamedQuantity& named = base.quantities[q];
    QuantityColumn column{named.id, named.label, named.quantity, named.unit, {}};
    for (const DesignPoint& point : points) {
      column.value.push_back(q < point.quantities.size() ? point.quantities[q] : kUnset);
    }
    columns.push_back(std::move(column));
  }
  return columns;
}

std::vector<DesignPoint> evaluatePoints(std::size_t count,
                                        const std::function<Project(std::size_t)>& design,
                                        const StudyRun& run) {
  std::vector<DesignPoint> points(count);
  forEachPoint(count, run, [&](std::size_t k) {
    const Evaluation evaluation = evaluate(design(k), run.stop);
    if (!evaluation.stopped) points[k] = designPoint(evaluation);
  });
  return points;
}

}  // namespace jw
