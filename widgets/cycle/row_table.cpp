#include "widgets/cycle/row_table.h"

#include <algorithm>
#include <numeric>

#include <QHeaderView>
#include <QKeyEvent>

#include "widgets/cycle/field_cell_delegate.h"

namespace jw {
namespace {

constexpr int kRowHeight = 26;    // [px]
constexpr int kNumberWidth = 26;  // [px] of the rows' numbers

/// Keys that mean something for whole rows.
bool isRowKey(const QKeyEvent& key) {
  const bool alt = key.modifiers().testFlag(Qt::AltModifier);
  const bool control = key.modifiers().testFlag(Qt::ControlModifier);
  switch (key.key()) {
    case Qt::Key_Insert:
    case Qt::Key_Delete:
    case Qt::Key_Space: return !alt && !control;
    case Qt::Key_D: return control && !alt;
    case Qt::Key_Up:
    case Qt::Key_Down: return alt;
    default: return false;
  }
}

}  // namespace

RowTable::RowTable(FieldTableModel* model, std::vector<Width> widths, QWidget* parent)
    : QTableView(parent), m_widths(std::move(widths)) {
  setModel(model);
  setItemDelegate(new FieldCellDelegate(this));
  setSelectionBehavior(SelectRows);
  setSelectionMode(ExtendedSelection);
  setEditTriggers(DoubleClicked | EditKeyPressed | AnyKeyPressed);
  setShowGrid(false);
  setAlternatingRowColors(false);
  setWordWrap(false);
  setFrameShape(QFrame::NoFrame);
  setProperty("role", "rows");
  setCornerButtonEnabled(false);
  setVerticalScrollMode(ScrollPerPixel);
  setHorizontalScrollMode(ScrollPerPixel);
  verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  verticalHeader()->setDefaultSectionSize(kRowHeight);
  verticalHeader()->setFixedWidth(kNumberWidth);
  verticalHeader()->setDefaultAlignment(Qt::AlignCenter);
  horizontalHeader()->setSectionResizeMode(QHeaderView::Interactive);
  horizontalHeader()->setMinimumSectionSize(20);
  horizontalHeader()->setHighlightSections(false);
}

std::vector<int> RowTable::chosenRows() const {
  std::vector<int> rows;
  for (const QModelIndex& index : selectionModel()->selectedRows()) rows.push_back(index.row());
  if (rows.empty() && currentIndex().isValid()) rows.push_back(currentIndex().row());
  std::sort(rows.begin(), rows.end());
  return rows;
}

void RowTable::chooseRows(int first, int last) {
  const int rows = model()->rowCount();
  if (rows == 0) return;
  first = std::clamp(first, 0, rows - 1);
  last = std::clamp(last, first, rows - 1);
  const int column = std::max(currentIndex().column(), 1);
  const QItemSelection rowsOf(model()->index(first, 0),
                              model()->index(last, model()->columnCount() - 1));
  selectionModel()->setCurrentIndex(model()->index(first, column), QItemSelectionModel::NoUpdate);
  selectionModel()->select(rowsOf, QItemSelectionModel::ClearAndSelect);
  scrollTo(model()->index(first, column));
}

/// Window shortcuts must not take what the table means for its rows.
bool RowTable::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride &&
      isRowKey(static_cast<const QKeyEvent&>(*event))) {
    event->accept();
    return true;
  }
  return QTableView::event(event);
}

void RowTable::keyPressEvent(QKeyEvent* event) {
  if (!isRowKey(*event)) return QTableView::keyPressEvent(event);
  switch (event->key()) {
    case Qt::Key_Insert: return emit addPressed();
    case Qt::Key_Delete: return emit deletePressed();
    case Qt::Key_D: return emit duplicatePressed();
    case Qt::Key_Up: return emit shiftPressed(-1);
    case Qt::Key_Down: return emit shiftPressed(1);
    default: return emit switchPressed();
  }
}

void RowTable::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  shareWidth();
}

void RowTable::shareWidth() {
  int least = 0;
  int shares = 0;
  for (const Width& width : m_widths) {
    least += width.least;
    shares += width.share;
  }
  int spare = std::max(0, viewport()->width() - least);
  for (std::size_t k = 0; k < m_widths.size(); ++k) {
    const int extra = shares > 0 ? spare * m_widths[k].share / shares : 0;
    spare -= extra;
    shares -= m_widths[k].share;
    setColumnWidth(static_cast<int>(k), m_widths[k].least + extra);
  }
}

}  // namespace jw
