#pragma once

#include <vector>

#include <QComboBox>
#include <QLineEdit>
#include <QToolButton>
#include <QWidget>

#include "core/studies/combination_filter.h"

namespace jw {

/// A list of every figure that combinations can be filtered and drawn by; each item's data is the
/// figure's name.
QComboBox* makeFigureChoice(const QString& objectName, const QString& accessibleName,
                            const std::string& chosen, QWidget* parent);

/// Bounds on figures: one is made of a figure, a side and a value with its unit; each that stands
/// is a button that takes it away.
class SearchFilters : public QWidget {
  Q_OBJECT

 public:
  explicit SearchFilters(QWidget* parent = nullptr);

  const std::vector<CombinationFilter>& filters() const { return m_filters; }
  /// Adds what is typed; false, with the entry marked, if it cannot be read.
  bool add();

 signals:
  void changed();
  void refused(const QString& message);  ///< empty once the entry is right

 private:
  void showUnit();
  void remove(std::size_t index);
  void showChips();

  std::vector<CombinationFilter> m_filters;
  QComboBox* m_figure;
  QComboBox* m_side;
  QLineEdit* m_value;
  QWidget* m_chips;
};

/// "mass ≤ 4 kg".
QString filterText(const CombinationFilter& filter);

}  // namespace jw
