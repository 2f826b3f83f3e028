#pragma once

#include <vector>

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableWidget>

#include "core/studies/realizable_ratios.h"
#include "widgets/edit.h"

namespace jw {

/// One row of what can be built.
struct BuiltRow {
  StageFamily family = StageFamily::GivenRatio;
  RealizableRatio option;
};

/// The nearest that each family, or one, can be built to: single, double and triple planet sets
/// apart, best first.
std::vector<BuiltRow> builtRows(const std::vector<StageFamily>& families, double wanted,
                                const SizeLimits& limits);

/// "Sun teeth 18, ring teeth 72, planets 3".
QString partsText(const RealizableRatio& option);

/// The edit that builds stage `index` so; it is one undo step.
Edit buildStage(int index, const BuiltRow& row);

/// Lists tooth counts, pins and diameters that come nearest to a wanted ratio within a size, for a
/// stage to be built of.
class BuiltRatiosDialog : public QDialog {
  Q_OBJECT

 public:
  /// `index` of the stage; its family and, if it has one, its ratio are proposed.
  BuiltRatiosDialog(const Stage& stage, int index, QWidget* parent = nullptr);

  const std::vector<BuiltRow>& rows() const { return m_rows; }

 signals:
  void editRequested(const jw::Edit& edit);

 private:
  QLayout* makeQuestion(const Stage& stage);
  QLineEdit* makeEntry(const QString& name, const QString& objectName, const QString& text);
  QTableWidget* makeTable();
  QLayout* makeButtons();
  void search();
  void showRows();
  void useCurrent();

  int m_index;
  std::vector<BuiltRow> m_rows;
  QComboBox* m_family = nullptr;
  QLineEdit* m_ratio = nullptr;
  QLineEdit* m_diameter = nullptr;
  QLineEdit* m_module = nullptr;
  QLabel* m_message;
  QTableWidget* m_table;
  QPushButton* m_use = nullptr;
};

}  // namespace jw
