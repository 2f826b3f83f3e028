// Catalogue -> text.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/files/catalogue_table.h"
#include "core/files/table_text.h"
#include "core/model/field_catalogue.h"

namespace jw {
namespace {

std::string asNotes(std::string_view remark) {
  std::string text;
  while (!remark.empty()) {
    const auto end = std::min(remark.find('\n'), remark.size());
    text += "# " + std::string(remark.substr(0, end)) + "\n";
    remark.remove_prefix(std::min(end + 1, remark.size()));
  }
  return text;
}

std::string quotedCell(std::string_view text) {
  return text.find_first_of(",;\t\"") == text.npos ? std::string(text)
                                                   : fmt::format("\"{}\"", text);
}

std::string titleText(std::string_view key, std::string_view unit) {
  return unit == "1" || unit.empty() ? std::string(key) : fmt::format("{} [{}]", key, unit);
}

double roundedTo4(double value) {
  return table_text::readNumber(fmt::format("{:.4g}", value), '.').value_or(value);
}

std::string numberCell(double value, Quantity quantity, std::string_view unit) {
  if (!isSet(value)) return {};
  const double rounded = roundedTo4(fromInternal(value, unit, quantity));
  return fmt::format("{}", rounded);  // 10260 in place of 1.026e+04
}

std::string cellOf(const FieldInfo& info, const void* owner) {
  switch (info.kind) {
    case FieldKind::Text: return quotedCell(info.text(owner));
    case FieldKind::Flag: return info.number(owner) != 0 ? "yes" : "no";
    case FieldKind::Choice:
      return std::string(info.choices[static_cast<std::size_t>(info.number(owner))].key);
    case FieldKind::Integer: return fmt::format("{}", info.number(owner));
    case FieldKind::Number: break;
  }
  return numberCell(info.number(owner), info.quantity, info.unit);
}

bool isUsual(const FieldInfo& info, const void* owner) {
  if (info.kind == FieldKind::Text) return info.text(owner).empty();
  const double value = info.number(owner);
  return value == info.defaultValue || (!isSet(value) && !isSet(info.defaultValue));
}

/// The fields that one of the owners says something in; `always` is kept.
std::vector<const FieldInfo*> usedFields(const StructInfo& structure,
                                         const std::vector<const void*>& owners,
                                         std::string_view always) {
  std::vector<const FieldInfo*> used;
  for (const FieldInfo& info : structure.fields) {
    if (info.key == "name") continue;
    const bool says = std::any_of(owners.begin(), owners.end(),
                                  [&](const void* owner) { return !isUsual(info, owner); });
    if (says || info.key == always) used.push_back(&info);
  }
  return used;
}

std::string catalogueText(const StructInfo& structure, const std::vector<const void*>& owners,
                          const std::vector<std::string>& names, std::string_view always,
                          std::string_view remark) {
  const auto fields = usedFields(structure, owners, always);
  std::string text = asNotes(remark) + "name";
  for (const FieldInfo* info : fields) {
    text += "," + titleText(info->key, info->kind == FieldKind::Number ? info->unit : "");
  }
  text += "\n";
  for (std::size_t k = 0; k < owners.size(); ++k) {
    text += quotedCell(names[k]);
    for (const FieldInfo* info : fields) text += "," + cellOf(*info, owners[k]);
    text += "\n";
  }
  return text;
}

}  // namespace

std::string writeMotorCatalogue(std::span<const MotorEntry> motors, std::string_view remark) {
  std::vector<const void*> owners;
  std::vector<std::string> names;
  for (const MotorEntry& entry : motors) {
    owners.push_back(&entry.motor);
    names.push_back(entry.name);
  }
  return catalogueText(structInfo<Motor>(), owners, names, "kind", remark);
}

std::string writeReducerCatalogue(std::span<const Stage> reducers, std::string_view remark) {
  std::vector<const void*> owners;
  std::vector<std::string> names;
  for (const Stage& stage : reducers) {
    owners.push_back(&stage);
    names.push_back(stage.name);
  }
  return catalogueText(structInfo<Stage>(), owners, names, "family", remark);
}

std::string writeFamilyRules(std::span<const FamilyRule> rules, std::string_view remark,
                             std::span<const OwnColumn> own) {
  std::string text = asNotes(remark) + "family";
  for (const RuleField& field : ruleFields()) text += "," + titleText(field.key, field.unit);
  for (const OwnColumn& column : own) text += fmt::format(",{}{}", kOwnPrefix, column.title);
  text += "\n";
  for (const FamilyRule& rule : rules) {
    text += familyKey(rule.family);
    for (const RuleField& field : ruleFields()) {
      text += "," + numberCell(rule.*field.value, field.quantity, field.unit);
    }
    for (const OwnColumn& column : own) text += fmt::format(",{}", column.of(rule.family));
    text += "\n";
  }
  return text;
}

}  // namespace jw
