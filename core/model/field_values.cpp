// Values of fields as text: reading, checking against the range, printing.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/model/field_catalogue.h"

namespace jw {
namespace {

using Value = tl::expected<double, InputError>;

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t\r\n");
  if (first == text.npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

std::string listed(std::span<const ChoiceItem> choices) {
  std::string all;
  for (const ChoiceItem& item : choices) {
    if (!all.empty()) all += ", ";
    all += item.key;
  }
  return all;
}

std::string quoted(std::string_view text) {
  return fmt::format("'{}'{}", text.substr(0, 60), text.size() > 60 ? "..." : "");
}

Value readChoice(const FieldInfo& info, std::string_view text) {
  for (std::size_t k = 0; k < info.choices.size(); ++k) {
    if (text == info.choices[k].key || text == info.choices[k].label) {
      return static_cast<double>(k);
    }
  }
  return tl::unexpected(
      InputError{quoted(text) + " is no choice here", "", "choose one of " + listed(info.choices)});
}

Value readFlag(std::string_view text) {
  if (text == "yes" || text == "true" || text == "1") return 1.0;
  if (text == "no" || text == "false" || text == "0") return 0.0;
  return tl::unexpected(InputError{quoted(text) + " is neither yes nor no", "", "type yes or no"});
}

Value inRange(const FieldInfo& info, double value) {
  if (info.kind == FieldKind::Integer && value != std::floor(value)) {
    return tl::unexpected(InputError{"not a whole number", "", "type " + describeRange(info)});
  }
  if (info.range.contains(value)) return value;
  return tl::unexpected(
      InputError{fmt::format("{} is out of range", formatQuantity(value, info.quantity, info.unit)),
                 "", "allowed is " + describeRange(info)});
}

Value readNumber(const FieldInfo& info, std::string_view text) {
  if (text.empty()) {
    if (!isSet(info.defaultValue)) return kUnset;
    return tl::unexpected(
        InputError{"a number is needed here", "",
                   "type " + describeRange(info) + "; usual is " +
                       formatQuantity(info.defaultValue, info.quantity, info.unit)});
  }
  return parseQuantity(text, info.quantity, info.unit).and_then([&](const ParsedQuantity& parsed) {
    return inRange(info, parsed.value);
  });
}

std::string numberText(const FieldRef& field) {
  const double value = field.number();
  if (!isSet(value)) return {};
  if (field.info->kind == FieldKind::Integer) return fmt::format("{}", value);
  return typedForm(value, field.info->quantity, field.info->unit);
}

void assign(const FieldRef& field, double value, std::string_view text) {
  // The reference was found in a project that the caller may change.
  void* owner = const_cast<void*>(field.owner);
  if (field.info->kind == FieldKind::Text) {
    field.info->setText(owner, std::string(text));
    return;
  }
  assignNumber(field, value);
  rememberTyped(const_cast<AsWritten&>(field.structInfo->asWritten(owner)), *field.info, value,
                text);
}

}  // namespace

void assignNumber(const FieldRef& field, double value) {
  void* owner = const_cast<void*>(field.owner);
  auto& written = const_cast<AsWritten&>(field.structInfo->asWritten(owner));
  const std::string key(field.info->key);
  field.info->setNumber(owner, value);
  written.typed.erase(key);
  written.from.change(key);
}

void rememberTyped(AsWritten& asWritten, const FieldInfo& info, double value,
                   std::string_view text) {
  if (info.kind != FieldKind::Number) return;
  if (text.empty() || !isSet(value)) {
    asWritten.typed.erase(std::string(info.key));
  } else {
    asWritten.typed[std::string(info.key)] = std::string(text);
  }
}

tl::expected<double, InputError> readField(const FieldInfo& info, std::string_view text) {
  switch (info.kind) {
    case FieldKind::Text: return 0.0;
    case FieldKind::Choice: return readChoice(info, trimmed(text));
    case FieldKind::Flag: return readFlag(trimmed(text));
    case FieldKind::Integer:
    case FieldKind::Number: return readNumber(info, trimmed(text));
  }
  throw std::logic_error("readField: unknown kind of field");
}

tl::expected<void, InputError> setField(Project& project, std::string_view path,
                                        std::string_view text) {
  const auto field = findField(project, path);
  if (!field) return tl::unexpected(field.error());
  auto value = readField(*field->info, text);
  if (!value) {
    value.error().where = field->path;
    return tl::unexpected(value.error());
  }
  assign(*field, *value, field->info->kind == FieldKind::Text ? text : trimmed(text));
  return {};
}

std::string fieldText(const FieldRef& field) {
  const FieldInfo& info = *field.info;
  switch (info.kind) {
    case FieldKind::Text: return info.text(field.owner);
    case FieldKind::Flag: return field.number() != 0 ? "yes" : "no";
    case FieldKind::Choice:
      return std::string(info.choices[static_cast<std::size_t>(field.number())].key);
    case FieldKind::Integer:
    case FieldKind::Number: break;
  }
  const auto& typed = field.structInfo->asWritten(field.owner).typed;
  const auto kept = typed.find(std::string(info.key));
  if (kept != typed.end()) {
    const auto again = readField(info, kept->second);
    if (again && *again == field.number()) return kept->second;
  }
  return numberText(field);
}

std::string describeRange(const FieldInfo& info) {
  const auto shown = [&](double v) { return formatQuantity(v, info.quantity, info.unit, 6); };
  const std::string kind = info.kind == FieldKind::Integer ? "a whole number" : "a number";
  const bool low = std::isfinite(info.range.low);
  const bool high = std::isfinite(info.range.high);
  if (!low && !high) return kind;
  if (!high) {
    return fmt::format("{} {} {}", kind, info.range.lowExcluded ? "above" : "from",
                       shown(info.range.low));
  }
  if (!low) return fmt::format("{} up to {}", kind, shown(info.range.high));
  if (info.range.lowExcluded) {
    return fmt::format("{} above {}, up to {}", kind, shown(info.range.low),
                       shown(info.range.high));
  }
  return fmt::format("{} from {} to {}", kind, shown(info.range.low), shown(info.range.high));
}

}  // namespace jw
