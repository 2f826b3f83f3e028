#include "widgets/panels/power_path.h"

#include <cmath>

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QPainter>

#include "widgets/theme/number_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr int kHeight = int(kPowerRowHeight) + 4;
constexpr int kScrollBar = 10;

}  // namespace

PowerPath::PowerPath(QWidget* parent)
    : QWidget(parent),
      m_scroll(new QScrollArea(this)),
      m_canvas(new PowerPathCanvas),
      m_mode(new QWidget(this)) {
  setObjectName(QStringLiteral("powerPath"));
  setAccessibleName(tr("Power path"));
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  m_scroll->setWidget(m_canvas);
  m_scroll->setFrameShape(QFrame::NoFrame);
  m_scroll->setFocusPolicy(Qt::NoFocus);
  m_scroll->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  connect(m_canvas, &PowerPathCanvas::stationClicked, this, &PowerPath::stationClicked);
  m_mean = makeModeButton(QStringLiteral("powerPath.mean"), tr("cycle mean"));
  m_atCursor = makeModeButton(QStringLiteral("powerPath.atCursor"), tr("at cursor"));
  m_mean->setChecked(true);
  auto* choice = new QButtonGroup(this);
  choice->addButton(m_mean);
  choice->addButton(m_atCursor);
  auto* line = new QHBoxLayout(m_mode);
  line->setContentsMargins(0, 0, 0, 0);
  line->setSpacing(2);
  line->addWidget(m_mean);
  line->addWidget(m_atCursor);
  connect(m_atCursor, &QToolButton::toggled, this, &PowerPath::showStations);
}

QToolButton* PowerPath::makeModeButton(const QString& name, const QString& text) {
  auto* button = new QToolButton(m_mode);
  button->setObjectName(name);
  button->setProperty("role", "segment");
  button->setText(text);
  button->setCheckable(true);
  return button;
}

QSize PowerPath::sizeHint() const { return {1000, kHeight}; }

QSize PowerPath::minimumSizeHint() const { return {300, kHeight}; }

double PowerPath::shownTime() const { return isAtCursor() ? m_cursor : kUnset; }

void PowerPath::showStations() {
  auto stations = stationViews(m_snapshot, shownTime());
  const double largest = largestPower(m_snapshot, stations, shownTime());
  m_canvas->setStations(std::move(stations), largest, m_snapshot.stale);
  placeCanvas();
}

void PowerPath::showSnapshot(const Snapshot& snapshot) {
  m_snapshot = snapshot;
  showStations();
}

void PowerPath::setCursorTime(double s) {
  m_cursor = s;
  m_atCursor->setText(std::isnan(s) ? tr("at cursor") : tr("at %1 s").arg(fixedNumber(s, 2)));
  m_mode->adjustSize();
  if (isAtCursor()) showStations();
}

void PowerPath::setAtCursor(bool atCursor) { (atCursor ? m_atCursor : m_mean)->setChecked(true); }

void PowerPath::setChosenStation(const QString& path) { m_canvas->setChosen(path); }

void PowerPath::placeCanvas() {
  const int needed = m_canvas->neededWidth();
  m_canvas->resize(std::max(needed, width() - 2), kHeight - 4);
  m_canvas->arrange();
  m_mode->adjustSize();
  m_mode->move(14, kHeight - m_mode->height() - 10);
  m_mode->raise();
  const bool scrolls = needed > width();
  setFixedHeight(kHeight + (scrolls ? kScrollBar : 0));
  m_scroll->setGeometry(rect().adjusted(1, 1, -1, -1));
}

void PowerPath::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange) m_canvas->update();
  QWidget::changeEvent(event);
}

void PowerPath::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  placeCanvas();
}

void PowerPath::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(jw::palette().line);
  painter.setBrush(jw::palette().panel);
  painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 6, 6);
}

}  // namespace jw
