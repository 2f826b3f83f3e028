#pragma once

#include <QAbstractScrollArea>

#include "widgets/figures/tolerance_painter.h"

namespace jw {

/// The verdicts and how sure they are, a row each; one of them is chosen.
class ChanceTable : public QAbstractScrollArea {
  Q_OBJECT

 public:
  explicit ChanceTable(QWidget* parent = nullptr);

  void showView(ToleranceView view, bool stale);
  const ToleranceView& view() const { return m_view; }
  /// Chooses a row by its check; sends no signal.
  void choose(const std::string& id, int stage);
  int chosen() const { return m_chosen; }

 signals:
  void rowChosen(int row);
  void rowOpened(int row);  ///< a double click or Enter

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  int rowAt(const QPointF& at) const;
  void pick(int row);
  void updateScroll();

  ToleranceView m_view;
  int m_chosen = 0;
  bool m_stale = false;
};

/// The inputs that a margin depends on.
class TornadoCanvas : public QWidget {
  Q_OBJECT

 public:
  explicit TornadoCanvas(QWidget* parent = nullptr);
  void showView(TornadoView view, bool stale);
  const TornadoView& view() const { return m_view; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  TornadoView m_view;
  bool m_stale = false;
};

}  // namespace jw
