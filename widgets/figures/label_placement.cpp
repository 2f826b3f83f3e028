#include "widgets/figures/label_placement.h"

#include <cmath>
#include <limits>

namespace jw {
namespace {

constexpr double kCell = 3;  // [px]

// How much line runs through each cell, summed so that a rectangle is read in four steps.
class LineMap {
 public:
  explicit LineMap(const LabelSurroundings& around) : m_area(around.area) {
    m_columns = qMax(1, int(std::ceil(m_area.width() / kCell)));
    m_rows = qMax(1, int(std::ceil(m_area.height() / kCell)));
    m_sums.assign(std::size_t(m_columns + 1) * std::size_t(m_rows + 1), 0);
    for (const QPolygonF& line : around.lines) addLine(line);
    integrate();
  }

  int countIn(const QRectF& rect) const {
    const int left = column(rect.left());
    const int right = column(rect.right()) + 1;
    const int top = row(rect.top());
    const int bottom = row(rect.bottom()) + 1;
    return sum(right, bottom) - sum(left, bottom) - sum(right, top) + sum(left, top);
  }

 private:
  int column(double x) const { return qBound(0, int((x - m_area.left()) / kCell), m_columns - 1); }
  int row(double y) const { return qBound(0, int((y - m_area.top()) / kCell), m_rows - 1); }
  std::size_t index(int c, int r) const { return std::size_t(r) * std::size_t(m_columns + 1) + c; }
  int sum(int c, int r) const { return m_sums[index(c, r)]; }

  void addLine(const QPolygonF& line) {
    for (qsizetype i = 1; i < line.size(); ++i) {
      const QPointF step = line[i] - line[i - 1];
      const double length = std::hypot(step.x(), step.y());
      if (!(length < 1e5)) continue;
      const int parts = qMax(1, int(length / kCell));
      for (int k = 0; k < parts; ++k) mark(line[i - 1] + step * (double(k) / parts));
    }
  }

  void mark(const QPointF& p) {
    if (m_area.contains(p)) m_sums[index(column(p.x()) + 1, row(p.y()) + 1)] = 1;
  }

  void integrate() {
    for (int r = 1; r <= m_rows; ++r)
      for (int c = 1; c <= m_columns; ++c)
        m_sums[index(c, r)] += sum(c - 1, r) + sum(c, r - 1) - sum(c - 1, r - 1);
  }

  QRectF m_area;
  int m_columns = 0;
  int m_rows = 0;
  std::vector<int> m_sums;
};

std::vector<QRectF> candidatesAround(const QPointF& anchor, const QSizeF& size, double gap) {
  std::vector<QRectF> rects;
  for (const double far : {gap, gap + 10, gap + 26, gap + 52}) {
    const double left = -far - size.width();
    const double up = -far - size.height();
    const double midX = -size.width() / 2;
    const double midY = -size.height() / 2;
    for (const QPointF& offset :
         {QPointF(far, up), QPointF(far, midY), QPointF(left, up), QPointF(midX, up),
          QPointF(left, midY), QPointF(far, far), QPointF(midX, far), QPointF(left, far)})
      rects.emplace_back(anchor + offset, size);
  }
  return rects;
}

bool isFree(const QRectF& rect, const LabelSurroundings& around) {
  if (!around.area.contains(rect)) return false;
  for (const QRectF& other : around.taken)
    if (other.intersects(rect)) return false;
  return true;
}

LabelPlace bestPlace(const LabelRequest& request, const LabelSurroundings& around,
                     const LineMap& lines) {
  LabelPlace best;
  double bestCost = std::numeric_limits<double>::infinity();
  double preference = 0;
  for (const QPointF& anchor : request.anchors) {
    double order = 0;
    for (const QRectF& rect : candidatesAround(anchor, request.size, request.gap)) {
      const double cost = 4.0 * lines.countIn(rect) + 0.35 * order++ + 1.2 * preference;
      if (cost >= bestCost || !isFree(rect, around)) continue;
      bestCost = cost;
      best = {rect, anchor};
    }
    ++preference;
  }
  return best;
}

}  // namespace

std::vector<LabelPlace> placeLabels(const std::vector<LabelRequest>& requests,
                                    const LabelSurroundings& around) {
  const LineMap lines(around);
  LabelSurroundings now{around.area, {}, around.taken};
  std::vector<LabelPlace> places;
  for (const LabelRequest& request : requests) {
    places.push_back(bestPlace(request, now, lines));
    if (!places.back().rect.isNull())
      now.taken.push_back(places.back().rect.adjusted(-2, -1, 2, 1));
  }
  return places;
}

}  // namespace jw
