#pragma once

#include <QAbstractTableModel>
#include <QStyledItemDelegate>

#include "widgets/figures/family_view.h"

namespace jw {

/// The comparison for a table view: properties as rows, a column of weights, then the families.
class FamilyTableModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  static constexpr int kWeight = 1;       ///< the column of weights
  static constexpr int kFirstChoice = 2;  ///< the column of the stage as it stands

  using QAbstractTableModel::QAbstractTableModel;

  void showTable(FamilyTable table, std::map<std::string, double> weights);
  const FamilyTable& table() const { return m_table; }
  /// Null for titles, weights and headings.
  const FamilyCell* cellAt(const QModelIndex& index) const;
  /// Index into the study's choices; -1 for the other columns.
  int choiceOf(int column) const;

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 signals:
  void weightTyped(const QString& key, double weight);
  void refused(const QString& message);

 private:
  bool takesWeight(const QModelIndex& index) const;
  QString weightText(const FamilyRow& row) const;

  FamilyTable m_table;
  std::map<std::string, double> m_weights;
};

/// Paints the cells with their bars, as on paper.
class FamilyCellDelegate : public QStyledItemDelegate {
  Q_OBJECT

 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  void paint(QPainter* painter, const QStyleOptionViewItem& option,
             const QModelIndex& index) const override;
};

}  // namespace jw
