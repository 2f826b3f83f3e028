#pragma once

#include "widgets/cycle/field_table_model.h"
#include "widgets/snapshot.h"

namespace jw {

/// The cycles of the day, the one shown first.
class MixTableModel : public FieldTableModel {
  Q_OBJECT

 public:
  enum Column { Name, Use, Often, Period, Share, Power, Winding, Count };

  using FieldTableModel::FieldTableModel;

  void showSnapshot(const Snapshot& snapshot);

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& = {}) const override { return Count; }
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;
  std::optional<FieldRef> fieldAt(const QModelIndex& index) const override;

 private:
  const MixedCycle* mixed(int row) const;
  QString resultText(const QModelIndex& index) const;
  QString shownAlone(int column) const;
  QString shownText(const QModelIndex& index) const;

  Snapshot m_snapshot;
};

}  // namespace jw
