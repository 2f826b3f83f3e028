#pragma once

#include <QLabel>
#include <QSplitter>
#include <QToolButton>

#include "widgets/cycle/field_strip.h"
#include "widgets/cycle/move_curve.h"
#include "widgets/cycle/move_table_model.h"
#include "widgets/cycle/row_table.h"

namespace jw {

/// The moves of the cycle shown as a curve and a table that are one thing: what is chosen, dragged
/// or typed in one shows in the other at once.
class MoveEditor : public QWidget {
  Q_OBJECT

 public:
  explicit MoveEditor(QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot);
  void setCursorTime(double s) { m_curve->setCursorTime(s); }
  void restyle() { m_curve->restyle(); }
  void zoomBy(double factor) { m_curve->zoomBy(factor); }
  void resetZoom() { m_curve->resetZoom(); }
  MoveCurve& curve() { return *m_curve; }
  RowTable& table() { return *m_table; }

 signals:
  void editRequested(const jw::Edit& edit);
  void fieldRequested(const QString& path);
  void cursorDragged(double s);

 private:
  QWidget* makeHead();
  QWidget* makeButtons();
  QToolButton* addButton(const QString& text, const char* name, const QString& tip,
                         void (MoveEditor::*pressed)());
  void connectParts();
  void showRemarks();
  void followChoice();
  void chooseAfter(int first, int last);
  int lastChosen() const;
  void addMove(MotionLaw law);
  void addSame();
  void duplicate();
  void remove();
  void shift(int by);
  void shiftUp() { shift(-1); }
  void shiftDown() { shift(1); }
  void switchOff();
  void toggleBlock();
  void revealFields();

  MoveCurve* m_curve;
  MoveTableModel* m_model;
  RowTable* m_table;
  FieldStrip* m_cycleFields;
  FieldStrip* m_moveLimits;
  QLabel* m_remark;
  QLabel* m_reading;
  QWidget* m_buttons = nullptr;
  int m_choice[2] = {-1, -1};  ///< rows to choose once they are there
};

}  // namespace jw
