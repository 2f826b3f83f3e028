#include "widgets/figures/family_table_model.h"

#include <cmath>

#include "widgets/inputs/field_text.h"
#include "widgets/theme/number_text.h"
#include "widgets/theme/theme.h"

namespace jw {

void FamilyTableModel::showTable(FamilyTable table, std::map<std::string, double> weights) {
  const bool sameShape =
      table.columns == m_table.columns && table.rows.size() == m_table.rows.size();
  if (sameShape) {  // the chosen cell and the place that was scrolled to stay
    m_table = std::move(table);
    m_weights = std::move(weights);
    if (rowCount() > 0) emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    return;
  }
  beginResetModel();
  m_table = std::move(table);
  m_weights = std::move(weights);
  endResetModel();
}

const FamilyCell* FamilyTableModel::cellAt(const QModelIndex& index) const {
  const auto& row = m_table.rows[std::size_t(index.row())];
  const int at = index.column() - kFirstChoice;
  return at >= 0 && at < int(row.cells.size()) ? &row.cells[std::size_t(at)] : nullptr;
}

int FamilyTableModel::choiceOf(int column) const {
  const int at = column - kFirstChoice - 1;
  return at >= 0 && at < int(m_table.choices.size()) ? int(m_table.choices[std::size_t(at)]) : -1;
}

int FamilyTableModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : int(m_table.rows.size());
}

int FamilyTableModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : kFirstChoice + int(m_table.columns.size());
}

bool FamilyTableModel::takesWeight(const QModelIndex& index) const {
  const FamilyRow& row = m_table.rows[std::size_t(index.row())];
  const FamilyProperty* property = findFamilyProperty(row.key);
  return index.column() == kWeight && property != nullptr && property->better != 0;
}

QString FamilyTableModel::weightText(const FamilyRow& row) const {
  const auto found = m_weights.find(row.key);
  return found == m_weights.end() || row.key.empty() ? QString() : numberText(found->second);
}

QVariant FamilyTableModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const FamilyRow& row = m_table.rows[std::size_t(index.row())];
  const FamilyCell* cell = cellAt(index);
  const bool title = index.column() == 0;
  switch (role) {
    case Qt::EditRole: return index.column() == kWeight ? weightText(row) : QString();
    case Qt::DisplayRole:
      if (title) return row.title;
      if (cell) return cell->text;
      return takesWeight(index) && weightText(row).isEmpty() ? QStringLiteral("0")
                                                             : weightText(row);
    case Qt::ToolTipRole:
      if (cell) return cell->tip.isEmpty() ? row.tip : cell->tip;
      if (takesWeight(index)) return tr("What this is worth to you: 0, 1, 2.5 …");
      return row.tip;
    case Qt::FontRole: return row.kind == FamilyRow::Kind::Group ? titleFont() : bodyFont();
    case Qt::ForegroundRole:
      return row.kind == FamilyRow::Kind::Group ? jw::palette().text : jw::palette().muted;
    case Qt::TextAlignmentRole:
      return int((title ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    default: return {};
  }
}

bool FamilyTableModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role != Qt::EditRole || !takesWeight(index)) return false;
  const QString text = value.toString().trimmed();
  const auto weight = parseQuantity(text.toStdString(), Quantity::Number, "1");
  if (!text.isEmpty() && !weight) {
    emit refused(tr("Weight: %1").arg(errorText(weight.error())));
    return false;
  }
  const double typed = text.isEmpty() ? 0 : weight->value;
  if (typed < 0) {
    emit refused(tr("Weight: this is below 0; type 0 or more"));
    return false;
  }
  emit weightTyped(toQString(m_table.rows[std::size_t(index.row())].key), typed);
  return true;
}

Qt::ItemFlags FamilyTableModel::flags(const QModelIndex& index) const {
  const FamilyRow& row = m_table.rows[std::size_t(index.row())];
  if (row.kind == FamilyRow::Kind::Group) return Qt::ItemIsEnabled;
  const Qt::ItemFlags usual = QAbstractTableModel::flags(index);
  return takesWeight(index) ? usual | Qt::ItemIsEditable : usual;
}

QVariant FamilyTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation == Qt::Vertical) return {};
  if (role == Qt::TextAlignmentRole)
    return int((section == 0 ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter |
               Qt::TextWordWrap);
  if (role != Qt::DisplayRole && role != Qt::ToolTipRole) return {};
  if (section == 0) return tr("Property");
  if (section == kWeight) return tr("Weight");
  return m_table.columns.value(section - kFirstChoice);
}

void FamilyCellDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                               const QModelIndex& index) const {
  const auto& model = static_cast<const FamilyTableModel&>(*index.model());
  const FamilyCell* cell = model.cellAt(index);
  if (!cell) return QStyledItemDelegate::paint(painter, option, index);
  const Palette& p = jw::palette();
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  if (option.state & QStyle::State_Selected) painter->fillRect(option.rect, p.accentSoft);
  paintFamilyCell(*painter, QRectF(option.rect), *cell, bodyFont(), p);
  painter->restore();
}

}  // namespace jw
