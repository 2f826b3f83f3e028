#include <algorithm>

#include <QKeyEvent>
#include <QPainter>

#include "widgets/panels/power_path.h"
#include "widgets/theme/theme.h"

namespace jw {

StationCard::StationCard(QWidget* parent) : QAbstractButton(parent) {
  setFocusPolicy(Qt::StrongFocus);
  setCursor(Qt::PointingHandCursor);
}

void StationCard::setStation(const StationView& station, bool stale) {
  m_station = station;
  m_stale = stale;
  setObjectName(QStringLiteral("station.") + station.path);
  QString name = station.title;
  if (!station.ratio.isEmpty()) name += u' ' + station.ratio;
  setText(name);
  setAccessibleName(name);
  setAccessibleDescription(station.hint);
  setToolTip(station.hint);
  update();
}

void StationCard::setChosen(bool chosen) {
  m_chosen = chosen;
  update();
}

void StationCard::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  if (m_stale) painter.setOpacity(0.5);
  paintCard(painter, rect(), m_station, {underMouse(), hasFocus(), m_chosen}, jw::palette());
}

void StationCard::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Right: focusNextChild(); return;
    case Qt::Key_Left: focusPreviousChild(); return;
    case Qt::Key_Return:
    case Qt::Key_Enter: click(); return;
    default: QAbstractButton::keyPressEvent(event);
  }
}

void StationCard::enterEvent(QEnterEvent* event) {
  QAbstractButton::enterEvent(event);
  update();
}

void StationCard::leaveEvent(QEvent* event) {
  QAbstractButton::leaveEvent(event);
  update();
}

PowerPathCanvas::PowerPathCanvas(QWidget* parent) : QWidget(parent) {}

void PowerPathCanvas::makeCards() {
  while (m_cards.size() > m_stations.size()) {
    delete m_cards.back();
    m_cards.pop_back();
  }
  while (m_cards.size() < m_stations.size()) {
    auto* card = new StationCard(this);
    connect(card, &StationCard::clicked, this,
            [this, card] { emit stationClicked(card->station().path); });
    card->show();
    m_cards.push_back(card);
  }
}

void PowerPathCanvas::setStations(std::vector<StationView> stations, double largest, bool stale) {
  m_stations = std::move(stations);
  m_largest = largest;
  m_stale = stale;
  makeCards();
  for (std::size_t i = 0; i < m_cards.size(); ++i) m_cards[i]->setStation(m_stations[i], stale);
  setChosen(m_chosen);
  arrange();
}

void PowerPathCanvas::setChosen(const QString& path) {
  m_chosen = path;
  for (StationCard* card : m_cards) card->setChosen(card->station().path == path);
}

int PowerPathCanvas::neededWidth() const {
  return int(powerPathLayout(int(m_stations.size()), 0, false).size.width());
}

void PowerPathCanvas::arrange() {
  m_layout = powerPathLayout(int(m_stations.size()), width(), false);
  for (std::size_t i = 0; i < m_cards.size(); ++i)
    m_cards[i]->setGeometry(m_layout.cards[i].toRect());
  update();
}

void PowerPathCanvas::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  if (m_stale) painter.setOpacity(0.45);
  paintFlow(painter, m_stations, m_layout, m_largest, jw::palette());
}

void PowerPathCanvas::resizeEvent(QResizeEvent*) { arrange(); }

}  // namespace jw
