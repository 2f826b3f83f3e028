#include <QStringList>

#include "widgets/inputs/field_text.h"
#include "widgets/inputs/list_edits.h"
#include "widgets/inputs/list_plan.h"
#include "widgets/inputs/new_items.h"

namespace jw {
namespace {

QString lawLabel(int law) {
  const FieldInfo* info = structInfo<Segment>().find("law");
  return toQString(info->choices[static_cast<std::size_t>(law)].label);
}

/// "120°", rounded; "travel needed" when there is none; empty when the law does not use it.
QString valueText(const FieldGroup& fields, std::string_view key) {
  const FieldRef* field = fields.find(key);
  if (field == nullptr) return {};
  if (field->info->applies != nullptr && !field->info->applies(field->owner)) return {};
  const QString text = toQString(fieldText(*field));
  if (text.isEmpty()) return lowerFirst(toQString(field->info->label)) + " needed";
  const ShownNumber shown = roundedNumber(*field->info, text, 4);
  const bool joined = shown.unit.isEmpty() || shown.unit == QStringLiteral("°");
  return shown.number + (joined ? QString() : QString(QChar(0x00A0))) + shown.unit;
}

/// "to 40°".
QString targetText(const FieldGroup& fields) {
  const QString text = valueText(fields, "target");
  return text.isEmpty() || text.endsWith(QStringLiteral("needed")) ? text : "to " + text;
}

/// What there is to say of a move besides its way and time.
QStringList remarksOf(const Segment& segment) {
  QStringList remarks;
  const bool travels = segment.law != MotionLaw::Dwell && segment.law != MotionLaw::Table;
  if (travels && segment.timing == MoveTiming::Limits) remarks << QStringLiteral("by limits");
  if (segment.repeats > 1) remarks << QString("%1 times").arg(segment.repeats);
  if (segment.disabled) remarks << QStringLiteral("switched off");
  return remarks;
}

QString tableText(const MotionTable& table) {
  if (table.time.empty()) return QStringLiteral("no points yet");
  return QString("%1 points · %2 s")
      .arg(toQString(formatNumber(static_cast<double>(table.time.size()))),
           toQString(formatNumber(table.time.back())));
}

CardText segmentText(const FieldGroup& fields, int index) {
  const auto& segment = *static_cast<const Segment*>(fields.owner());
  const QString law = lawLabel(static_cast<int>(segment.law));
  const QString title = QString("Move %1").arg(index + 1);
  QStringList parts{valueText(fields, "travel"), targetText(fields), valueText(fields, "duration"),
                    law};
  if (segment.law == MotionLaw::Table) parts << tableText(segment.table);
  parts << remarksOf(segment);
  parts.removeAll(QString());
  return {segment.name.empty() ? title : toQString(segment.name), parts.join(" · ")};
}

}  // namespace

ListPlan segmentPlan() {
  const ListEdits<Segment> edits(
      [](Project& project) -> std::vector<Segment>& { return project.cycle.segments; }, "move");
  ListPlan plan;
  plan.path = "cycle.segments";
  plan.item = "move";
  plan.items = "moves";
  plan.earlier = "earlier";
  plan.later = "later";
  plan.emptyText = "No move yet: the joint stands still";
  plan.info = &structInfo<Segment>();
  plan.kindKey = "law";
  plan.openText = "Open table…";
  plan.otherText = "From a measured log…";
  plan.add = [edits](int kind) {
    return edits.append(newSegment(static_cast<MotionLaw>(kind)), "Add move, " + lawLabel(kind));
  };
  plan.duplicate = [edits](int index) { return edits.duplicate(index); };
  plan.remove = [edits](int index) { return edits.remove(index); };
  plan.move = [edits](int from, int to) { return edits.move(from, to); };
  plan.text = &segmentText;
  plan.opens = [](const FieldGroup& fields) {
    return static_cast<const Segment*>(fields.owner())->law == MotionLaw::Table;
  };
  return plan;
}

}  // namespace jw
