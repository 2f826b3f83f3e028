#include "widgets/panels/catalogue_table_model.h"

#include <algorithm>

#include "widgets/inputs/field_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr std::size_t kMostSteps = 200;

}  // namespace

CatalogueTableModel::CatalogueTableModel(CatalogueSheet sheet, QObject* parent)
    : QAbstractTableModel(parent), m_sheet(std::move(sheet)) {}

void CatalogueTableModel::setReadOnly(bool readOnly) {
  m_readOnly = readOnly;
  emit sheetChanged();
}

void CatalogueTableModel::remember() {
  m_undo.push_back(m_sheet);
  m_redo.clear();
  if (m_undo.size() <= kMostSteps) return;
  m_undo.erase(m_undo.begin());
  m_cleanAt = m_cleanAt > 0 ? m_cleanAt - 1 : kMostSteps + 1;  // never clean again
}

void CatalogueTableModel::addRow(int at) {
  remember();
  beginInsertRows({}, at, at);
  m_sheet.insert(std::size_t(at), makeRow(m_sheet, {}));
  endInsertRows();
  emit sheetChanged();
}

void CatalogueTableModel::duplicateRows(const std::vector<int>& rows) {
  if (rows.empty()) return;
  remember();
  const int at = *std::max_element(rows.begin(), rows.end()) + 1;
  beginInsertRows({}, at, at + int(rows.size()) - 1);
  std::vector<SheetRowPtr> copies;
  for (const int row : rows) copies.push_back(m_sheet.rows[std::size_t(row)]);
  for (std::size_t k = 0; k < copies.size(); ++k) m_sheet.insert(std::size_t(at) + k, copies[k]);
  endInsertRows();
  emit sheetChanged();
}

void CatalogueTableModel::removeRows(const std::vector<int>& rows) {
  if (rows.empty()) return;
  remember();
  std::vector<int> falling = rows;
  std::sort(falling.rbegin(), falling.rend());
  beginResetModel();
  for (const int row : falling) m_sheet.remove(std::size_t(row));
  endResetModel();
  emit sheetChanged();
}

void CatalogueTableModel::addColumn(SheetColumn column) {
  remember();
  const int at = columnCount();
  beginInsertColumns({}, at, at);
  jw::addColumn(m_sheet, std::move(column));
  endInsertColumns();
  emit sheetChanged();
}

void CatalogueTableModel::replaceAll(CatalogueSheet sheet) {
  remember();
  beginResetModel();
  m_sheet = std::move(sheet);
  endResetModel();
  emit sheetChanged();
}

void CatalogueTableModel::swapWith(std::vector<CatalogueSheet>& from,
                                   std::vector<CatalogueSheet>& to) {
  if (from.empty()) return;
  beginResetModel();
  to.push_back(std::move(m_sheet));
  m_sheet = std::move(from.back());
  from.pop_back();
  endResetModel();
  emit sheetChanged();
}

void CatalogueTableModel::undo() { swapWith(m_undo, m_redo); }

void CatalogueTableModel::redo() { swapWith(m_redo, m_undo); }

QString CatalogueTableModel::firstWrong() const {
  if (m_sheet.wrongRows == 0) return {};
  for (std::size_t row = 0; row < m_sheet.rows.size(); ++row) {
    const auto& wrong = m_sheet.rows[row]->wrong;
    for (std::size_t k = 0; k < wrong.size(); ++k) {
      if (wrong[k].empty()) continue;
      return tr("row %1, %2: %3")
          .arg(row + 1)
          .arg(toQString(m_sheet.columns[k].label), toQString(wrong[k]));
    }
  }
  return {};
}

int CatalogueTableModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : int(m_sheet.rows.size());
}

int CatalogueTableModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : int(m_sheet.columns.size());
}

QString CatalogueTableModel::wrongText(const QModelIndex& index) const {
  const auto& wrong = m_sheet.rows[std::size_t(index.row())]->wrong;
  return wrong.empty() ? QString() : toQString(wrong[std::size_t(index.column())]);
}

QVariant CatalogueTableModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const SheetRow& row = *m_sheet.rows[std::size_t(index.row())];
  const SheetColumn& column = m_sheet.columns[std::size_t(index.column())];
  const Palette& p = jw::palette();
  switch (role) {
    case Qt::DisplayRole:
    case Qt::EditRole: return toQString(row.cells[std::size_t(index.column())]);
    case Qt::ToolTipRole: return wrongText(index);
    case Qt::ForegroundRole:
      return wrongText(index).isEmpty() ? QVariant() : inkOf(p.shortfall, p.panel);
    case Qt::BackgroundRole:
      return wrongText(index).isEmpty() ? QVariant() : blend(p.shortfall, p.panel, 0.12);
    case Qt::TextAlignmentRole: {
      const bool number = column.ruleField != nullptr ||
                          (column.field != nullptr && column.field->kind != FieldKind::Text &&
                           column.field->kind != FieldKind::Choice);
      return int((number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    }
    default: return {};
  }
}

bool CatalogueTableModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role != Qt::EditRole || m_readOnly || !index.isValid()) return false;
  const auto at = std::size_t(index.row());
  const std::string text = value.toString().toStdString();
  if (m_sheet.rows[at]->cells[std::size_t(index.column())] == text) return false;
  SheetRowPtr row = withCell(m_sheet, *m_sheet.rows[at], std::size_t(index.column()), text);
  remember();
  m_sheet.replace(at, std::move(row));
  emit dataChanged(index, index);
  emit sheetChanged();
  return true;
}

Qt::ItemFlags CatalogueTableModel::flags(const QModelIndex& index) const {
  const Qt::ItemFlags usual = QAbstractTableModel::flags(index);
  return m_readOnly ? usual : usual | Qt::ItemIsEditable;
}

QVariant CatalogueTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation == Qt::Vertical)
    return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
  const SheetColumn& column = m_sheet.columns[std::size_t(section)];
  const QString unit = toQString(prettyUnit(column.unit));
  if (role == Qt::DisplayRole) {
    const QString label = toQString(column.label);
    return unit.isEmpty() ? label : label + QStringLiteral(", ") + unit;
  }
  if (role == Qt::ToolTipRole && column.field != nullptr) return fieldToolTip(*column.field);
  return {};
}

}  // namespace jw
