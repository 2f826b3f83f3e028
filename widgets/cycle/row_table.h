#pragma once

#include <vector>

#include <QTableView>

#include "widgets/cycle/field_table_model.h"

namespace jw {

/// A table of fields: whole rows are chosen, F2 or typing edits a cell, Tab goes on to the next,
/// and the columns share the width that there is.
class RowTable : public QTableView {
  Q_OBJECT

 public:
  /// Least width of each column [px], and which of them take the rest, in shares.
  struct Width {
    int least;
    int share = 0;
  };

  RowTable(FieldTableModel* model, std::vector<Width> widths, QWidget* parent = nullptr);

  std::vector<int> chosenRows() const;
  void chooseRows(int first, int last);

 signals:
  void addPressed();          ///< Insert
  void deletePressed();       ///< Delete
  void duplicatePressed();    ///< Ctrl+D
  void shiftPressed(int by);  ///< Alt+Up, Alt+Down
  void switchPressed();       ///< Space

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  bool event(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void shareWidth();

  std::vector<Width> m_widths;
};

}  // namespace jw
