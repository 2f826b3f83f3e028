#include "widgets/cycle/move_table_model.h"

#include <array>

#include "core/motion/segment_input.h"
#include "widgets/cycle/move_edits.h"
#include "widgets/inputs/field_text.h"
#include "widgets/theme/number_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

struct ColumnInfo {
  const char* title;
  std::string_view key;  ///< of the field, or of one of two
  bool right = false;    ///< numbers stand at the right
};

constexpr std::array<ColumnInfo, MoveTableModel::Count> kColumns{
    {{"", "disabled"},
     {"Move", "name"},
     {"Motion law", "law"},
     {"Goes", "aim"},
     {"Angle", "travel", true},
     {"Takes", "timing"},
     {"Time", "duration", true},
     {"Payload", "payloadMass", true},
     {"Torque", "externalTorque", true},
     {"×", "repeats", true},
     {"Block", "block"}}};

const ColumnInfo& column(int index) { return kColumns[static_cast<std::size_t>(index)]; }

}  // namespace

void MoveTableModel::showView(const MovesView& view) {
  const int before = rowCount();
  const int now = view.project ? int(view.moves().size()) : 0;
  if (before == now) {
    m_view = view;
    if (now > 0) emit dataChanged(index(0, 0), index(now - 1, Count - 1));
    return;
  }
  beginResetModel();
  m_view = view;
  endResetModel();
}

int MoveTableModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() || !m_view.project ? 0 : int(m_view.moves().size());
}

FieldRef MoveTableModel::field(int row, std::string_view key) const {
  return fieldOf(move(row), segmentPath(static_cast<std::size_t>(row)), key);
}

std::optional<FieldRef> MoveTableModel::fieldAt(const QModelIndex& index) const {
  if (index.column() == Angle) {
    const FieldRef target = field(index.row(), "target");
    if (appliesNow(target)) return target;
  }
  const FieldRef found = field(index.row(), column(index.column()).key);
  if (!appliesNow(found)) return std::nullopt;
  return found;
}

std::optional<Edit> MoveTableModel::flip(const QModelIndex& index) const {
  if (!fieldAt(index)) return std::nullopt;
  if (index.column() == Aim) return moves::flipAim(m_view, index.row());
  if (index.column() == Timing) return moves::flipTiming(m_view, index.row());
  return std::nullopt;
}

/// What the evaluation or the load says where nothing is typed.
MoveTableModel::Shown MoveTableModel::followed(const QModelIndex& index) const {
  const ShownRun* run = m_view.firstRun(index.row());
  const bool travels = move(index.row()).law != MotionLaw::Dwell;
  if (index.column() == Payload)
    return {quantityText(m_view.project->load.payloadMass, Quantity::Mass, "kg"), false};
  if (run == nullptr || m_view.stale) return {QStringLiteral("–"), false};
  if (index.column() == Time)
    return {quantityText(run->to - run->from, Quantity::Time, "s"), false};
  if (index.column() == Angle && travels)
    return {quantityText(run->endAngle - run->startAngle, Quantity::Angle, "deg"), false};
  return {QStringLiteral("–"), false};
}

MoveTableModel::Shown MoveTableModel::shown(const QModelIndex& index) const {
  const auto found = fieldAt(index);
  const Segment& segment = move(index.row());
  switch (index.column()) {
    case On: return {};
    case Aim:
      if (!found) return {};
      return {segment.aim == MoveAim::To ? tr("to") : tr("by")};
    case Timing:
      if (!found) return {};
      return {segment.timing == MoveTiming::Limits ? tr("limits") : tr("time")};
    default: break;
  }
  if (!found) return followed(index);
  const QString text = FieldTableModel::cellText(*found);
  if (text.isEmpty() && index.column() == Payload) return followed(index);
  const bool usual = (index.column() == Torque && segment.externalTorque == 0) ||
                     (index.column() == Repeats && segment.repeats == 1);
  return {text, !usual};
}

QString MoveTableModel::toolTip(const QModelIndex& index) const {
  switch (index.column()) {
    case On: return tr("Whether the move is part of the cycle (Space)");
    case Aim: return tr("By an angle, or to an angle: double-click or F2 changes it");
    case Timing:
      return tr(
          "In a time of its own, or as fast as the limits allow: double-click or F2 changes it");
    default: break;
  }
  const auto found = fieldAt(index);
  return found ? fieldToolTip(*found->info) : tr("Does not apply to this move");
}

QVariant MoveTableModel::ink(const QModelIndex& index) const {
  const Palette& colours = palette();
  if (move(index.row()).disabled) return blend(colours.muted, colours.panel, 0.65);
  const auto found = fieldAt(index);
  if (found && isMissing(*found)) return inkOf(colours.shortfall, colours.panel);
  return shown(index).typed ? colours.text : colours.muted;
}

QVariant MoveTableModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  switch (role) {
    case Qt::DisplayRole: return shown(index).text;
    case Qt::ForegroundRole: return ink(index);
    case Qt::ToolTipRole: return toolTip(index);
    case Qt::TextAlignmentRole:
      return int((column(index.column()).right ? Qt::AlignRight : Qt::AlignLeft) |
                 Qt::AlignVCenter);
    case Qt::CheckStateRole:
      if (index.column() != On) return {};
      return move(index.row()).disabled ? Qt::Unchecked : Qt::Checked;
    case Qt::AccessibleTextRole:
      return QString("%1 %2: %3")
          .arg(headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString())
          .arg(index.row() + 1)
          .arg(shown(index).text);
    default: return {};
  }
}

QVariant MoveTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation == Qt::Vertical) return role == Qt::DisplayRole ? section + 1 : QVariant();
  if (role == Qt::DisplayRole) return QString::fromUtf8(column(section).title);
  if (role == Qt::TextAlignmentRole)
    return int((column(section).right ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
  if (role == Qt::ToolTipRole) {
    const FieldInfo* info = structInfo<Segment>().find(column(section).key);
    return section == On ? tr("Part of the cycle") : toQString(info->help);
  }
  return {};
}

Qt::ItemFlags MoveTableModel::flags(const QModelIndex& index) const {
  Qt::ItemFlags flags = Qt::ItemIsSelectable | Qt::ItemIsEnabled;
  if (index.column() == On) return flags | Qt::ItemIsUserCheckable;
  if (fieldAt(index)) flags |= Qt::ItemIsEditable;
  return flags;
}

bool MoveTableModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role != Qt::CheckStateRole || index.column() != On) return false;
  const bool off = value.toInt() == Qt::Unchecked;
  if (off == move(index.row()).disabled) return false;
  emit editRequested(moves::switchOff(*m_view.project, {index.row()}));
  return true;
}

}  // namespace jw
