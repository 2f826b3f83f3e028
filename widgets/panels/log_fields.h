#pragma once

#include <functional>
#include <optional>

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QLineEdit>
#include <QTableWidget>

#include "core/model/unset.h"
#include "core/quantity/quantity.h"

namespace jw {

/// A number with a unit in the window of measured logs. What cannot be read is marked in place,
/// with the reason as its tip, and changes nothing.
class LogEntry : public QLineEdit {
  Q_OBJECT

 public:
  /// Takes values from `low` to `high` [internal unit], `low` itself if `lowAllowed`.
  LogEntry(const QString& name, Quantity quantity, std::string_view unit, double low, double high,
           QWidget* parent = nullptr);

  double value() const { return m_value; }
  /// Shows a value without valueChanged; unset shows nothing.
  void setValue(double value);

 signals:
  void valueChanged(double value);

 private:
  void read();
  void mark(const QString& reason);

  Quantity m_quantity;
  std::string m_unit;
  double m_low, m_high;
  double m_value = kUnset;
};

/// A label of the style sheet's role "muted", "title" or "error", wrapped.
QLabel* makeLogLabel(const QString& text, const char* role, const QString& objectName = {});

/// A choice without the wheel: scrolling past it changes nothing.
class LogChoice : public QComboBox {
  Q_OBJECT

 public:
  LogChoice(const QString& name, const QString& objectName, QWidget* parent = nullptr);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void wheelEvent(QWheelEvent* event) override { event->ignore(); }
};

/// A number that is stepped, written as in the rest of the program whatever the locale.
class LogSpin : public QDoubleSpinBox {
  Q_OBJECT

 public:
  LogSpin(const QString& name, const QString& objectName, double low, double high, int decimals,
          QWidget* parent = nullptr);

 protected:
  void paintEvent(QPaintEvent* event) override;
};

/// A table of plain cells that takes no more height than its rows.
QTableWidget* makeLogTable(const QString& name, const QString& objectName,
                           const QStringList& titles);

/// A cell that can be chosen and copied, not changed.
QTableWidgetItem* logCell(const QString& text, bool number = false);

/// Gives a table the height of its rows.
void fitHeight(QTableWidget& table);

/// "2.31 ± 0.04", rounded so that the last digit means something.
QString uncertainText(double value, double uncertainty);

}  // namespace jw
