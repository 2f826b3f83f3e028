#pragma once

#include <utility>

#include <QAbstractListModel>
#include <QLabel>
#include <QListView>

#include "widgets/panels/verdict_rows.h"

namespace jw {

/// The verdicts as a list model; the row is read by `row(index)`.
class VerdictModel : public QAbstractListModel {
  Q_OBJECT

 public:
  using QAbstractListModel::QAbstractListModel;
  void setRows(std::vector<VerdictRow> rows);
  const VerdictRow& row(int index) const { return m_rows[std::size_t(index)]; }
  /// The row of this check, -1 if there is none.
  int find(const QString& id, int stage) const;

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;

 private:
  std::vector<VerdictRow> m_rows;
};

/// All verdicts, worst first: shape, name, demand and capacity, margin as bar and number.
class VerdictList : public QWidget {
  Q_OBJECT

 public:
  explicit VerdictList(QWidget* parent = nullptr);

  /// Shows the snapshot's verdicts; the chosen check stays chosen wherever it moves to.
  void showSnapshot(const Snapshot& snapshot);
  /// Chooses a check as if it had been clicked.
  void select(const QString& id, int stage);
  const VerdictModel& model() const { return *m_model; }

 signals:
  void checkSelected(const QString& id, int stage);
  void fieldRequested(const QString& path);  ///< an open verdict was clicked or entered

 private:
  void choose(const QModelIndex& index);
  void activate(const QModelIndex& index);
  void restoreChoice();
  void growChosen();

  VerdictModel* m_model;
  QListView* m_view;
  QLabel* m_counts;
  QString m_chosenId;
  int m_chosenStage = -1;
  std::pair<int, int> m_grown{-1, 0};  // row that is taller, and its lines
  bool m_restoring = false;
};

}  // namespace jw
