#pragma once

#include "widgets/cycle/field_table_model.h"
#include "widgets/cycle/moves_view.h"

namespace jw {

/// The moves of the cycle shown, one a row.
class MoveTableModel : public FieldTableModel {
  Q_OBJECT

 public:
  enum Column { On, Name, Law, Aim, Angle, Timing, Time, Payload, Torque, Repeats, Block, Count };

  using FieldTableModel::FieldTableModel;

  void showView(const MovesView& view);
  const MovesView& view() const { return m_view; }

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& = {}) const override { return Count; }
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;
  std::optional<FieldRef> fieldAt(const QModelIndex& index) const override;
  std::optional<Edit> flip(const QModelIndex& index) const override;

 private:
  /// What a cell shows, and whether it was typed there or follows from something else.
  struct Shown {
    QString text;
    bool typed = true;
  };

  const Segment& move(int row) const { return m_view.moves()[static_cast<std::size_t>(row)]; }
  FieldRef field(int row, std::string_view key) const;
  Shown shown(const QModelIndex& index) const;
  Shown followed(const QModelIndex& index) const;
  QString toolTip(const QModelIndex& index) const;
  QVariant ink(const QModelIndex& index) const;

  MovesView m_view;
};

}  // namespace jw
