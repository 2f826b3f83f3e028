#pragma once

#include <QStyledItemDelegate>

#include "widgets/panels/verdict_rows.h"

namespace jw {

/// Where the parts of a verdict's row stand [px].
struct VerdictGeometry {
  QPointF mark;
  QRectF title;
  QRectF margin;
  QRectF bar;
  QRectF amounts;
  QRectF needs;     ///< of an open verdict, in place of bar and amounts
  QRectF depends;   ///< of the chosen verdict, three lines
  double zero = 0;  ///< x of margin 0 in the bar
};

VerdictGeometry verdictGeometry(const QRectF& row);

/// x [px] of a margin in the bar; −50 % and +100 % and beyond stand at its ends.
double marginPosition(const VerdictGeometry& geometry, double margin);

/// Draws one verdict in two lines; under the chosen one what it depends on most.
class VerdictDelegate : public QStyledItemDelegate {
  Q_OBJECT

 public:
  using QStyledItemDelegate::QStyledItemDelegate;
  void setStale(bool stale) { m_stale = stale; }
  void setChosen(int row);  ///< −1 = none
  void paint(QPainter* painter, const QStyleOptionViewItem& option,
             const QModelIndex& index) const override;
  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

 private:
  bool m_stale = false;
  int m_chosen = -1;
};

}  // namespace jw
