#include "core/files/struct_reader.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/files/project_keys.h"
#include "core/model/band.h"
#include "core/model/unset.h"

namespace jw {
namespace {

/// The text that a field's reader understands; nothing if the value has the wrong kind.
std::optional<std::string> textOf(const Json& value, FieldKind kind) {
  if (kind == FieldKind::Flag) {
    if (value.is_boolean()) return value.get<bool>() ? "yes" : "no";
    return std::nullopt;
  }
  if (value.is_string()) return value.get<std::string>();
  const bool numeric = kind == FieldKind::Number || kind == FieldKind::Integer;
  if (numeric && value.is_number()) return value.dump();
  return std::nullopt;
}

std::string wanted(const FieldInfo& info) {
  switch (info.kind) {
    case FieldKind::Flag: return "true or false";
    case FieldKind::Text: return "a text in quotes";
    case FieldKind::Integer: return describeRange(info);
    case FieldKind::Number: return describeRange(info) + ", bare or in quotes with its unit";
    case FieldKind::Choice: break;
  }
  std::string keys;
  for (const ChoiceItem& item : info.choices) {
    keys += fmt::format("{}\"{}\"", keys.empty() ? "" : ", ", item.key);
  }
  return "one of " + keys;
}

}  // namespace

void StructReader::fail(std::string what, std::string where, std::string remedy) {
  if (!error_) error_ = InputError{std::move(what), std::move(where), std::move(remedy)};
}

bool StructReader::needObject(const Json& value, const std::string& path) {
  if (!value.is_object()) {
    fail("found " + quoteValue(value), path, "an object {…} is needed here");
  }
  return !failed();
}

const Json* StructReader::childObject(const Json& object, std::string_view key,
                                      const std::string& path) {
  const auto found = object.find(std::string(key));
  if (failed() || found == object.end()) return nullptr;
  return needObject(*found, childPath(path, key)) ? &*found : nullptr;
}

const Json* StructReader::childList(const Json& object, std::string_view key,
                                    const std::string& path, std::size_t most) {
  const auto found = object.find(std::string(key));
  if (failed() || found == object.end()) return nullptr;
  const std::string where = childPath(path, key);
  if (!found->is_array()) {
    fail("found " + quoteValue(*found), where, "a list […] is needed here");
  } else if (found->size() > most) {
    fail(fmt::format("{} entries are too many", found->size()), where,
         fmt::format("at most {} are allowed", most));
  }
  return failed() ? nullptr : &*found;
}

void StructReader::keepUnknown(AsWritten& asWritten, const std::string& key, const Json& value,
                               const std::string& path) {
  asWritten.unknown[key] = value.dump();
  notes_.push_back({"this key is not known", childPath(path, key),
                    "it is kept as it is and takes no part in the evaluation"});
}

void StructReader::readAll(const Json& object, const StructInfo& structure, void* owner,
                           AsWritten& asWritten, const std::string& path,
                           std::initializer_list<std::string_view> children) {
  for (const auto& [key, value] : object.items()) {
    if (failed()) return;
    if (const FieldInfo* info = structure.find(key)) {
      readOne(value, *info, owner, asWritten, childPath(path, key));
    } else if (key == keys::kBands) {
      readBands(value, structure, asWritten, childPath(path, key));
    } else if (key == keys::kFrom) {
      readFrom(value, structure, asWritten, childPath(path, key));
    } else if (std::find(children.begin(), children.end(), key) == children.end()) {
      keepUnknown(asWritten, key, value, path);
    }
  }
}

void StructReader::readOne(const Json& value, const FieldInfo& info, void* owner,
                           AsWritten& asWritten, const std::string& path) {
  const bool mayBeUnset = info.kind == FieldKind::Number ||
                          (info.kind == FieldKind::Integer && !isSet(info.defaultValue));
  if (mayBeUnset && value.is_null()) {
    info.setNumber(owner, kUnset);
    return;
  }
  const auto text = textOf(value, info.kind);
  if (!text) return fail("found " + quoteValue(value), path, "allowed is " + wanted(info));
  if (info.kind == FieldKind::Text) return info.setText(owner, *text);
  readNumber(value, info, owner, asWritten, path);
}

void StructReader::readBands(const Json& value, const StructInfo& structure, AsWritten& asWritten,
                             const std::string& path) {
  if (!needObject(value, path)) return;
  for (const auto& [key, text] : value.items()) {
    const std::string where = childPath(path, key);
    const FieldInfo* info = structure.find(key);
    if (info == nullptr) return fail("no such field", where, "name a field beside which it stands");
    if (!text.is_string()) return fail("found " + quoteValue(text), where, kBandExample);
    if (const auto band = readBand(*info, text.get<std::string>()); !band) {
      return fail(band.error().what, where, band.error().remedy);
    }
    asWritten.bands[key] = text.get<std::string>();
  }
}

std::string StructReader::readText(const Json& object, std::string_view key,
                                   const std::string& path) {
  const auto found = object.find(std::string(key));
  if (found == object.end()) return {};
  if (found->is_string()) return found->get<std::string>();
  fail("found " + quoteValue(*found), childPath(path, key), "a text in quotes is needed here");
  return {};
}

void StructReader::readFrom(const Json& value, const StructInfo& structure, AsWritten& asWritten,
                            const std::string& path) {
  if (!needObject(value, path)) return;
  CataloguePart from;
  from.part = readText(value, keys::kFromPart, path);
  from.catalogue = readText(value, keys::kFromCatalogue, path);
  const std::string where = childPath(path, keys::kFromChanged);
  if (const Json* changed = childList(value, keys::kFromChanged, path, structure.fields.size())) {
    for (const Json& key : *changed) {
      if (!key.is_string() || structure.find(key.get<std::string>()) == nullptr) {
        return fail("found " + quoteValue(key), where, "name fields beside which it stands");
      }
      from.changed.insert(key.get<std::string>());
    }
  }
  if (!failed() && from.part.empty()) {
    fail("no part is named", path, "name it, {\"part\": \"…\"}, or leave this out");
  }
  asWritten.from = std::move(from);
}

void StructReader::readNumber(const Json& value, const FieldInfo& info, void* owner,
                              AsWritten& asWritten, const std::string& path) {
  const std::string text = *textOf(value, info.kind);
  const auto number = readField(info, text);
  if (!number) return fail(number.error().what, path, number.error().remedy);
  info.setNumber(owner, *number);
  // A usual value is written out in full; read back it is nobody's typing.
  const bool plain = value.is_number() || text == typedForm(*number, info.quantity, info.unit);
  if (plain && *number == info.defaultValue) return;
  rememberTyped(asWritten, info, *number, text);
}

}  // namespace jw
