#include "widgets/cycle/mix_table_model.h"

#include <array>

#include "widgets/cycle/mix_edits.h"
#include "widgets/inputs/field_text.h"
#include "widgets/theme/number_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

struct ColumnInfo {
  const char* title;
  const char* help;
  bool right = false;
};

constexpr std::array<ColumnInfo, MixTableModel::Count> kColumns{
    {{"Cycle", "A name of your own"},
     {"Counted by", "Runs per hour, or a share of the day"},
     {"How often", "Runs per hour of duty, or share of the day", true},
     {"Period", "Time of one run", true},
     {"Of the day", "Share of the day's time of duty", true},
     {"Power", "Mean power drawn while it runs", true},
     {"Winding peak", "Winding if it were repeated for hours", true}}};

const ColumnInfo& column(int index) { return kColumns[static_cast<std::size_t>(index)]; }

QString windingText(bool runaway, double peak) {
  return runaway ? MixTableModel::tr("runaway") : quantityText(peak, Quantity::Temperature);
}

}  // namespace

void MixTableModel::showSnapshot(const Snapshot& snapshot) {
  const int before = rowCount();
  const int now = snapshot.project ? mix::rows(*snapshot.project) : 0;
  if (before == now) {
    m_snapshot = snapshot;
    if (now > 0) emit dataChanged(index(0, 0), index(now - 1, Count - 1));
    return;
  }
  beginResetModel();
  m_snapshot = snapshot;
  endResetModel();
}

int MixTableModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() || !m_snapshot.project ? 0 : mix::rows(*m_snapshot.project);
}

std::optional<FieldRef> MixTableModel::fieldAt(const QModelIndex& index) const {
  const Cycle& cycle = mix::cycleAt(*m_snapshot.project, index.row());
  const std::string path = mix::pathAt(index.row());
  switch (index.column()) {
    case Name: return fieldOf(cycle, path, "name");
    case Use: return fieldOf(cycle, path, "use");
    case Often:
      if (cycle.use == MixUse::PerHour) return fieldOf(cycle, path, "perHour");
      if (cycle.use == MixUse::Share) return fieldOf(cycle, path, "dayShare");
      return std::nullopt;
    default: return std::nullopt;
  }
}

const MixedCycle* MixTableModel::mixed(int row) const {
  if (!m_snapshot.evaluation || !m_snapshot.evaluation->mix || m_snapshot.stale) return nullptr;
  for (const MixedCycle& cycle : m_snapshot.evaluation->mix->cycles)
    if (cycle.path == mix::pathAt(row)) return &cycle;
  return nullptr;
}

/// Of the cycle shown where it is not part of a mix.
QString MixTableModel::shownAlone(int column) const {
  if (!m_snapshot.evaluation || m_snapshot.stale) return {};
  const Evaluation& e = *m_snapshot.evaluation;
  if (column == Period && e.cycle) return quantityText(e.cycle->period, Quantity::Time, "s");
  if (column == Power && e.supply) return wattText(e.supply->powerMean);
  if (column == Winding && e.heat)
    return windingText(e.heat->periodic.runaway, e.heat->periodic.windingPeak);
  return {};
}

QString MixTableModel::resultText(const QModelIndex& index) const {
  const MixedCycle* cycle = mixed(index.row());
  if (cycle == nullptr) return index.row() == 0 ? shownAlone(index.column()) : QString();
  switch (index.column()) {
    case Period: return quantityText(cycle->period, Quantity::Time, "s");
    case Share: return quantityText(cycle->share, Quantity::Fraction, "%");
    case Power: return isSet(cycle->powerMean) ? wattText(cycle->powerMean) : QString();
    case Winding:
      return cycle->heat ? windingText(cycle->heat->runaway, cycle->heat->windingPeak) : QString();
    default: return {};
  }
}

QString MixTableModel::shownText(const QModelIndex& index) const {
  const auto field = fieldAt(index);
  if (!field) {
    const QString text = resultText(index);
    return text.isEmpty() ? QStringLiteral("–") : text;
  }
  const QString text = FieldTableModel::cellText(*field);
  if (index.column() == Name && text.isEmpty()) return tr("cycle %1").arg(index.row() + 1);
  const bool count = index.column() == Often && field->info->key == "perHour" && !isMissing(*field);
  return count ? text + tr(" per hour") : text;
}

QVariant MixTableModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const auto field = fieldAt(index);
  switch (role) {
    case Qt::DisplayRole: return shownText(index);
    case Qt::TextAlignmentRole:
      return int((column(index.column()).right ? Qt::AlignRight : Qt::AlignLeft) |
                 Qt::AlignVCenter);
    case Qt::ToolTipRole:
      return field ? fieldToolTip(*field->info) : QString::fromUtf8(column(index.column()).help);
    case Qt::ForegroundRole:
      if (field && isMissing(*field)) return inkOf(palette().shortfall, palette().panel);
      return field || index.column() == Share ? palette().text : palette().muted;
    case Qt::FontRole:
      if (index.row() != 0 || index.column() != Name) return {};
      return titleFont();
    case Qt::AccessibleTextRole:
      return QString("%1 %2: %3")
          .arg(QString::fromUtf8(column(index.column()).title))
          .arg(index.row() + 1)
          .arg(shownText(index));
    default: return {};
  }
}

QVariant MixTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation == Qt::Vertical) {
    if (role != Qt::DisplayRole) return {};
    return section == 0 ? QStringLiteral("▶") : QString::number(section + 1);
  }
  if (role == Qt::DisplayRole) return QString::fromUtf8(column(section).title);
  if (role == Qt::ToolTipRole) return QString::fromUtf8(column(section).help);
  if (role == Qt::TextAlignmentRole)
    return int((column(section).right ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
  return {};
}

Qt::ItemFlags MixTableModel::flags(const QModelIndex& index) const {
  const Qt::ItemFlags flags = Qt::ItemIsSelectable | Qt::ItemIsEnabled;
  return fieldAt(index) ? flags | Qt::ItemIsEditable : flags;
}

}  // namespace jw
