#pragma once

#include <vector>

#include <QAbstractTableModel>

#include "core/files/catalogue_sheet.h"

namespace jw {

/// A catalogue as a table that can be edited, with its own history. Cells are texts as typed; what
/// is wrong with one stands in its tip.
class CatalogueTableModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  explicit CatalogueTableModel(CatalogueSheet sheet, QObject* parent = nullptr);

  const CatalogueSheet& sheet() const { return m_sheet; }
  void setReadOnly(bool readOnly);
  bool isReadOnly() const { return m_readOnly; }
  bool isModified() const { return m_undo.size() != m_cleanAt; }
  void setClean() { m_cleanAt = m_undo.size(); }

  // Each is one step of the history.
  void addRow(int at);
  void duplicateRows(const std::vector<int>& rows);  ///< copies after the last of them
  void removeRows(const std::vector<int>& rows);
  void addColumn(SheetColumn column);
  void replaceAll(CatalogueSheet sheet);

  bool canUndo() const { return !m_undo.empty(); }
  bool canRedo() const { return !m_redo.empty(); }
  void undo();
  void redo();

  /// "row 5, Rotor inertia: ..." of the first wrong cell; empty if all are right.
  QString firstWrong() const;

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 signals:
  void sheetChanged();

 private:
  void remember();
  void swapWith(std::vector<CatalogueSheet>& from, std::vector<CatalogueSheet>& to);
  QString wrongText(const QModelIndex& index) const;

  CatalogueSheet m_sheet;
  std::vector<CatalogueSheet> m_undo;
  std::vector<CatalogueSheet> m_redo;
  std::size_t m_cleanAt = 0;
  bool m_readOnly = false;
};

}  // namespace jw
