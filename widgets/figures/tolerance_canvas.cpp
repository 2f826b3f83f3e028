#include "widgets/figures/tolerance_canvas.h"

#include <algorithm>

#include <QMouseEvent>
#include <QScrollBar>

#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr double kStaleOpacity = 0.5;

}  // namespace

ChanceTable::ChanceTable(QWidget* parent) : QAbstractScrollArea(parent) {
  setObjectName(QStringLiteral("tolerance.chances"));
  setAccessibleName(tr("How likely each verdict holds"));
  setFrameShape(QFrame::NoFrame);
  setFocusPolicy(Qt::StrongFocus);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setMinimumSize(340, 160);
}

void ChanceTable::showView(ToleranceView view, bool stale) {
  m_view = std::move(view);
  m_stale = stale;
  m_chosen = std::clamp(m_chosen, 0, std::max(0, int(m_view.rows.size()) - 1));
  updateScroll();
  viewport()->update();
}

void ChanceTable::choose(const std::string& id, int stage) {
  for (std::size_t k = 0; k < m_view.rows.size(); ++k)
    if (m_view.rows[k].id == id && m_view.rows[k].stage == stage) m_chosen = int(k);
  viewport()->update();
}

void ChanceTable::updateScroll() {
  const int content = kChanceHeadHeight + int(m_view.rows.size()) * kChanceRowHeight + 4;
  verticalScrollBar()->setPageStep(viewport()->height());
  verticalScrollBar()->setSingleStep(kChanceRowHeight);
  verticalScrollBar()->setRange(0, std::max(0, content - viewport()->height()));
}

void ChanceTable::resizeEvent(QResizeEvent*) { updateScroll(); }

void ChanceTable::paintEvent(QPaintEvent*) {
  QPainter painter(viewport());
  const Palette& p = jw::palette();
  const double width = viewport()->width();
  painter.fillRect(viewport()->rect(), p.panel);
  if (m_stale) painter.setOpacity(kStaleOpacity);
  const int scrolled = verticalScrollBar()->value();
  for (std::size_t k = 0; k < m_view.rows.size(); ++k) {
    const QRectF row(0, kChanceHeadHeight + double(k) * kChanceRowHeight - scrolled, width,
                     kChanceRowHeight);
    if (row.bottom() < kChanceHeadHeight || row.top() > viewport()->height()) continue;
    paintChanceRow(painter, row, m_view.rows[k], p, int(k) == m_chosen);
  }
  const QRectF head(0, 0, width, kChanceHeadHeight);
  painter.setOpacity(1);
  painter.fillRect(head, p.panel);
  if (m_stale) painter.setOpacity(kStaleOpacity);
  if (!m_view.empty()) paintChanceHead(painter, head, m_view, p);
}

int ChanceTable::rowAt(const QPointF& at) const {
  if (at.y() < kChanceHeadHeight) return -1;
  const int row =
      int((at.y() - kChanceHeadHeight + verticalScrollBar()->value()) / kChanceRowHeight);
  return row < int(m_view.rows.size()) ? row : -1;
}

void ChanceTable::pick(int row) {
  if (row < 0 || row >= int(m_view.rows.size())) return;
  m_chosen = row;
  const int top = row * kChanceRowHeight;
  const int room = viewport()->height() - kChanceHeadHeight - kChanceRowHeight;
  QScrollBar* bar = verticalScrollBar();
  bar->setValue(std::clamp(bar->value(), top - std::max(room, 0), top));
  viewport()->update();
  emit rowChosen(row);
}

void ChanceTable::mousePressEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton) pick(rowAt(event->position()));
}

void ChanceTable::mouseDoubleClickEvent(QMouseEvent* event) {
  const int row = rowAt(event->position());
  if (row >= 0) emit rowOpened(row);
}

void ChanceTable::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Up: return pick(m_chosen - 1);
    case Qt::Key_Down: return pick(m_chosen + 1);
    case Qt::Key_Home: return pick(0);
    case Qt::Key_End: return pick(int(m_view.rows.size()) - 1);
    case Qt::Key_Return:
    case Qt::Key_Enter: emit rowOpened(m_chosen); return;
    default: QAbstractScrollArea::keyPressEvent(event);
  }
}

TornadoCanvas::TornadoCanvas(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("tolerance.tornado"));
  setAccessibleName(tr("What a margin depends on"));
  setMinimumSize(340, 160);
}

void TornadoCanvas::showView(TornadoView view, bool stale) {
  m_view = std::move(view);
  m_stale = stale;
  update();
}

void TornadoCanvas::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), jw::palette().panel);
  if (m_stale) painter.setOpacity(kStaleOpacity);
  if (!m_view.rows.empty()) paintTornado(painter, size(), m_view, jw::palette());
}

}  // namespace jw
