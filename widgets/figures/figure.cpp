#include "widgets/figures/figure.h"

#include <algorithm>
#include <cmath>

#include <QApplication>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QKeyEvent>
#include <QMenu>
#include <QPainter>

#include "widgets/figures/figure_export.h"
#include "widgets/figures/missing_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

QString noticeHtml(const QStringList& links) {
  if (links.isEmpty()) return QStringLiteral("<p>Nothing to draw yet.</p>");
  return QStringLiteral("<p>Not enough is known to draw this.</p><p>%1</p>")
      .arg(links.join(QStringLiteral("<br>")));
}

}  // namespace

Figure::Figure(QWidget* parent) : QWidget(parent), m_notice(new QLabel(this)) {
  setFocusPolicy(Qt::StrongFocus);
  m_notice->setObjectName(QStringLiteral("figure.notice"));
  m_notice->setProperty("role", "muted");
  m_notice->setAlignment(Qt::AlignCenter);
  m_notice->setWordWrap(true);
  m_notice->setTextInteractionFlags(Qt::TextBrowserInteraction);
  m_notice->hide();
  connect(m_notice, &QLabel::linkActivated, this,
          [this](const QString& link) { emit fieldRequested(fieldOfLink(link)); });
}

void Figure::setCursorTime(double s) {
  if (s == m_cursor || (std::isnan(s) && std::isnan(m_cursor))) return;
  m_cursor = s;
  drawCursor();
}

void Figure::moveCursor(double s) {
  const double time = std::clamp(s, 0.0, std::max(m_period, 0.0));
  if (m_period <= 0 || time == m_cursor) return;
  setCursorTime(time);
  emit cursorTimeChanged(time);
}

void Figure::keepSnapshot(const Snapshot& snapshot, bool empty, const std::vector<Part>& parts) {
  keepSnapshotWithNotice(snapshot, empty ? noticeHtml(missingLinks(snapshot, parts)) : QString());
}

void Figure::keepSnapshotWithNotice(const Snapshot& snapshot, const QString& notice) {
  m_snapshot = snapshot;
  const bool known = snapshot.evaluation && snapshot.evaluation->cycle;
  m_period = known ? snapshot.evaluation->cycle->period : 0;
  m_notice->setVisible(!notice.isEmpty());
  if (notice.isEmpty()) return;
  m_notice->setText(notice);
  placeNotice();
  m_notice->raise();
}

void Figure::placeNotice() {
  const int width = std::min(this->width() - 40, 460);
  const int height = m_notice->heightForWidth(width);
  m_notice->setGeometry((this->width() - width) / 2, (this->height() - height) / 2, width, height);
}

void Figure::copyPicture() const {
  Snapshot shown = m_snapshot;
  shown.instant = m_cursor;
  QApplication::clipboard()->setImage(figureImage(shown, exportName(), {}));
}

void Figure::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange) restyle();
  QWidget::changeEvent(event);
}

void Figure::contextMenuEvent(QContextMenuEvent* event) {
  QMenu menu(this);
  menu.addAction(tr("&Copy picture"), this, &Figure::copyPicture);
  menu.addAction(tr("&Export picture…"), this, [this] { emit exportRequested(exportName()); });
  menu.addSeparator();
  menu.addAction(tr("Show &all"), this, [this] { resetZoom(); });
  menu.exec(event->globalPos());
}

bool Figure::stepCursor(int key, bool large) {
  const double now = std::isnan(m_cursor) ? 0 : m_cursor;
  const double step = m_period * (large ? 0.05 : 0.005);
  switch (key) {
    case Qt::Key_Left: moveCursor(now - step); return true;
    case Qt::Key_Right: moveCursor(now + step); return true;
    case Qt::Key_Home: moveCursor(0); return true;
    case Qt::Key_End: moveCursor(m_period); return true;
    default: return false;
  }
}

void Figure::keyPressEvent(QKeyEvent* event) {
  if (stepCursor(event->key(), event->modifiers().testFlag(Qt::ShiftModifier))) return;
  switch (event->key()) {
    case Qt::Key_Plus: zoomBy(1 / 1.25); return;
    case Qt::Key_Minus: zoomBy(1.25); return;
    case Qt::Key_0: resetZoom(); return;
    default: QWidget::keyPressEvent(event);
  }
}

void Figure::focusInEvent(QFocusEvent* event) {
  QWidget::focusInEvent(event);
  update();
}

void Figure::focusOutEvent(QFocusEvent* event) {
  QWidget::focusOutEvent(event);
  update();
}

void Figure::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), jw::palette().panel);
  if (!hasFocus()) return;
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(jw::palette().accent, 1));
  painter.drawRoundedRect(QRectF(rect()).adjusted(1.5, 1.5, -1.5, -1.5), 4, 4);
}

void Figure::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  if (!m_notice->isHidden()) placeNotice();
}

}  // namespace jw
