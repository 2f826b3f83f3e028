#include "widgets/cycle/field_table_model.h"

#include <algorithm>
#include <array>

#include "widgets/inputs/field_text.h"

namespace jw {
namespace {

/// Fields without a default that nothing stands in for.
constexpr std::array<std::string_view, 5> kNeeded{"travel", "target", "duration", "perHour",
                                                  "dayShare"};

QString choiceText(const FieldRef& field) {
  return toQString(field.info->choices[static_cast<std::size_t>(field.number())].label);
}

QString numberText(const FieldRef& field) {
  constexpr int kDigits = 4;
  const QString text = toQString(fieldText(field));
  if (text.isEmpty()) return {};
  if (field.info->kind == FieldKind::Integer) return text;
  const ShownNumber shown = roundedNumber(*field.info, text, kDigits);
  const bool joined = shown.unit.isEmpty() || shown.unit == QStringLiteral("°");
  return shown.number + (joined ? QString() : QString(QChar(0x00A0))) + shown.unit;
}

}  // namespace

bool appliesNow(const FieldRef& field) {
  return field.info->applies == nullptr || field.info->applies(field.owner);
}

bool FieldTableModel::isMissing(const FieldRef& field) {
  return field.info->kind == FieldKind::Number && !isSet(field.number()) &&
         std::find(kNeeded.begin(), kNeeded.end(), field.info->key) != kNeeded.end();
}

QString FieldTableModel::cellText(const FieldRef& field) {
  switch (field.info->kind) {
    case FieldKind::Choice: return choiceText(field);
    case FieldKind::Text: return toQString(fieldText(field));
    case FieldKind::Flag: return {};
    case FieldKind::Number:
    case FieldKind::Integer: break;
  }
  return isMissing(field) ? QStringLiteral("needed") : numberText(field);
}

}  // namespace jw
