#pragma once

#include <QLabel>
#include <QToolButton>

#include "widgets/cycle/field_strip.h"
#include "widgets/cycle/mix_table_model.h"
#include "widgets/cycle/row_table.h"

namespace jw {

/// The daily mix: several cycles by runs per hour or shares of the day, and what they come to.
class MixPanel : public QWidget {
  Q_OBJECT

 public:
  explicit MixPanel(QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot);
  RowTable& table() { return *m_table; }

 signals:
  void editRequested(const jw::Edit& edit);
  void fieldRequested(const QString& path);

 private:
  QWidget* makeButtons();
  QToolButton* makeButton(const QString& text, const char* name, const QString& tip);
  void connectParts();
  void updateButtons();
  QString dayText() const;
  QString errorOfMix() const;
  int row() const { return m_table->currentIndex().row(); }

  Snapshot m_snapshot;
  MixTableModel* m_model;
  RowTable* m_table;
  FieldStrip* m_duty;
  QLabel* m_error;
  QLabel* m_day;
  QToolButton* m_delete = nullptr;
  QToolButton* m_show = nullptr;
  QToolButton* m_add = nullptr;
};

}  // namespace jw
