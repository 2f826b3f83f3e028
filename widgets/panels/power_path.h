#pragma once

#include <limits>

#include <QAbstractButton>
#include <QScrollArea>
#include <QToolButton>

#include "widgets/panels/power_path_painter.h"
#include "widgets/snapshot.h"

namespace jw {

/// One station as a button.
class StationCard : public QAbstractButton {
  Q_OBJECT

 public:
  explicit StationCard(QWidget* parent);
  void setStation(const StationView& station, bool stale);
  void setChosen(bool chosen);
  const StationView& station() const { return m_station; }
  QSize sizeHint() const override { return {124, 76}; }

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void enterEvent(QEnterEvent* event) override;
  void leaveEvent(QEvent* event) override;

 private:
  StationView m_station;
  bool m_chosen = false;
  bool m_stale = false;
};

/// The cards with the ribbons between them.
class PowerPathCanvas : public QWidget {
  Q_OBJECT

 public:
  explicit PowerPathCanvas(QWidget* parent = nullptr);
  void setStations(std::vector<StationView> stations, double largest, bool stale);
  void setChosen(const QString& path);
  int neededWidth() const;
  /// Puts the cards in their places; a hidden widget gets no resize event in time.
  void arrange();
  const PowerPathLayout& pathLayout() const { return m_layout; }
  const std::vector<StationView>& stations() const { return m_stations; }

 signals:
  void stationClicked(const QString& path);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void makeCards();

  std::vector<StationView> m_stations;
  std::vector<StationCard*> m_cards;
  PowerPathLayout m_layout;
  QString m_chosen;
  double m_largest = 0;
  bool m_stale = false;
};

/// The way of the power from supply to joint: ribbons as wide as the power, losses leaving
/// downward; as means over the cycle or at the cursor's instant.
class PowerPath : public QWidget {
  Q_OBJECT

 public:
  explicit PowerPath(QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot);
  /// Moves the instant that is shown when "at cursor" is chosen.
  void setCursorTime(double s);
  void setAtCursor(bool atCursor);
  bool isAtCursor() const { return m_atCursor->isChecked(); }
  /// Marks the station whose inputs are open.
  void setChosenStation(const QString& path);
  const PowerPathCanvas& canvas() const { return *m_canvas; }
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 signals:
  void stationClicked(const QString& path);

 protected:
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  QToolButton* makeModeButton(const QString& name, const QString& text);
  double shownTime() const;
  void showStations();
  void placeCanvas();

  Snapshot m_snapshot;
  double m_cursor = std::numeric_limits<double>::quiet_NaN();
  QScrollArea* m_scroll;
  PowerPathCanvas* m_canvas;
  QWidget* m_mode;
  QToolButton* m_mean;
  QToolButton* m_atCursor;
};

}  // namespace jw
