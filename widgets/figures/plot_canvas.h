#pragma once

#include <qcustomplot.h>

namespace jw {

/// A plot on the screen: follows the screen's scale, can be dimmed while what it shows is old, and
/// never takes the keyboard from the figure around it.
class PlotCanvas : public QCustomPlot {
  Q_OBJECT

 public:
  explicit PlotCanvas(QWidget* parent = nullptr);

  /// Dims the picture towards `ground`; replots if that changed.
  void setDimmed(bool dimmed, const QColor& ground);

 protected:
  void showEvent(QShowEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  void followScreen();

  bool m_dimmed = false;
  QColor m_veil;
  QMetaObject::Connection m_screenChange;
};

}  // namespace jw
