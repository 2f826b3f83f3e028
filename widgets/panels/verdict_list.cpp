#include "widgets/panels/verdict_list.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include "widgets/panels/verdict_delegate.h"

namespace jw {
namespace {

QString describe(const VerdictRow& verdict, const QString& between) {
  if (verdict.depends.isEmpty()) return verdict.sentence;
  return verdict.sentence + between + VerdictList::tr("depends most on ") + verdict.depends;
}

}  // namespace

void VerdictModel::setRows(std::vector<VerdictRow> rows) {
  if (rows.size() == m_rows.size()) {
    m_rows = std::move(rows);
    if (!m_rows.empty()) emit dataChanged(index(0), index(rowCount() - 1));
    return;
  }
  beginResetModel();
  m_rows = std::move(rows);
  endResetModel();
}

int VerdictModel::find(const QString& id, int stage) const {
  for (std::size_t i = 0; i < m_rows.size(); ++i)
    if (m_rows[i].id == id && m_rows[i].stage == stage) return int(i);
  return -1;
}

int VerdictModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : int(m_rows.size());
}

QVariant VerdictModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const VerdictRow& verdict = row(index.row());
  switch (role) {
    case Qt::DisplayRole: return verdict.title;
    case Qt::AccessibleTextRole: return describe(verdict, QStringLiteral(", "));
    case Qt::ToolTipRole: return describe(verdict, QStringLiteral("\n"));
    default: return {};
  }
}

VerdictList::VerdictList(QWidget* parent)
    : QWidget(parent),
      m_model(new VerdictModel(this)),
      m_view(new QListView(this)),
      m_counts(new QLabel(this)) {
  setObjectName(QStringLiteral("verdicts"));
  auto* title = new QLabel(tr("Verdicts"), this);
  title->setProperty("role", "title");
  m_counts->setObjectName(QStringLiteral("verdicts.counts"));
  m_counts->setProperty("role", "muted");
  auto* header = new QHBoxLayout;
  header->setContentsMargins(14, 10, 14, 6);
  header->addWidget(title);
  header->addStretch();
  header->addWidget(m_counts);
  m_view->setObjectName(QStringLiteral("verdicts.list"));
  m_view->setAccessibleName(tr("Verdicts"));
  m_view->setModel(m_model);
  m_view->setItemDelegate(new VerdictDelegate(m_view));
  m_view->setMouseTracking(true);
  m_view->setFrameShape(QFrame::NoFrame);
  m_view->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  m_view->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(1, 1, 1, 6);
  column->setSpacing(0);
  column->addLayout(header);
  column->addWidget(m_view, 1);
  connect(m_view->selectionModel(), &QItemSelectionModel::currentChanged, this,
          [this](const QModelIndex& now) { choose(now); });
  connect(m_view, &QListView::clicked, this, &VerdictList::activate);
  connect(m_view, &QListView::activated, this, &VerdictList::activate);
}

void VerdictList::choose(const QModelIndex& index) {
  if (m_restoring || !index.isValid()) return;
  const VerdictRow& row = m_model->row(index.row());
  m_chosenId = row.id;
  m_chosenStage = row.stage;
  growChosen();
  emit checkSelected(row.id, row.stage);
}

void VerdictList::activate(const QModelIndex& index) {
  const VerdictRow& row = m_model->row(index.row());
  emit checkSelected(row.id, row.stage);  // again, should a figure's working be shown meanwhile
  if (!row.missingField.isEmpty()) emit fieldRequested(row.missingField);
}

/// The chosen row is taller.
void VerdictList::growChosen() {
  auto* delegate = static_cast<VerdictDelegate*>(m_view->itemDelegate());
  const int row = m_model->find(m_chosenId, m_chosenStage);
  const std::pair grown{row, row < 0 ? 0 : m_model->row(row).dependsLines};
  if (grown == m_grown) return;
  m_grown = grown;
  delegate->setChosen(row);
  emit delegate->sizeHintChanged({});
}

void VerdictList::restoreChoice() {
  const int row = m_model->find(m_chosenId, m_chosenStage);
  m_restoring = true;
  if (row < 0)
    m_view->clearSelection();
  else
    m_view->setCurrentIndex(m_model->index(row));
  growChosen();
  m_restoring = false;
}

void VerdictList::showSnapshot(const Snapshot& snapshot) {
  std::vector<VerdictRow> rows = verdictRows(snapshot);
  m_counts->setText(verdictCounts(rows));
  static_cast<VerdictDelegate*>(m_view->itemDelegate())->setStale(snapshot.stale);
  m_restoring = true;
  m_model->setRows(std::move(rows));
  m_restoring = false;
  restoreChoice();
  m_view->viewport()->update();
}

void VerdictList::select(const QString& id, int stage) {
  const int row = m_model->find(id, stage);
  if (row >= 0) m_view->setCurrentIndex(m_model->index(row));
}

}  // namespace jw
