#pragma once

#include <optional>

#include <QAbstractTableModel>

#include "widgets/figures/search_study.h"

namespace jw {

/// The candidates of a search as rows, in the order of one column.
class SearchTableModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  explicit SearchTableModel(QObject* parent = nullptr);

  /// Rows anew, in the present order. `study` has to live as long as it is shown.
  void showStudy(const SearchStudy* study, bool withShort);
  std::optional<std::size_t> candidateOf(int row) const;
  /// -1 if it is not shown.
  int rowOf(std::size_t candidate) const;
  int sortColumn() const { return m_column; }
  Qt::SortOrder sortOrder() const { return m_order; }

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  void sort(int column, Qt::SortOrder order) override;

 private:
  enum Fixed { Motor, Reducer, Belt, Tightest, kFixed };
  QString textOf(const Candidate& one, int column) const;
  QString fixedText(const Candidate& one, int column) const;
  QVariant inkOfCell(const Candidate& one, int column) const;
  void arrange();

  const SearchStudy* m_study = nullptr;
  std::vector<DesignFigure> m_figures;
  std::vector<std::size_t> m_rows;  ///< indices of candidates
  bool m_withShort = false;
  int m_column = kFixed;  ///< the margin
  Qt::SortOrder m_order = Qt::DescendingOrder;
};

}  // namespace jw
