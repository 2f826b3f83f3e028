// Project -> text.
#include <stdexcept>

#include "core/files/json_document.h"
#include "core/files/project_keys.h"
#include "core/files/project_text.h"
#include "core/model/acceptance.h"

namespace jw {
namespace {

std::string keyOf(std::string_view key) { return std::string(key); }

/// A number as text, or bare where the text is just what JSON would print.
Json numberValue(const std::string& text) {
  const Json bare = Json::parse(text, nullptr, false);
  if (bare.is_number() && bare.dump() == text) return bare;
  return text;
}

/// Whether the field does not matter with the owner's other values and says nothing.
bool isIdle(const FieldRef& field, const void* fallback) {
  const FieldInfo& info = *field.info;
  if (info.applies == nullptr || info.applies(field.owner)) return false;
  if (info.kind == FieldKind::Text) return info.text(field.owner).empty();
  const double value = field.number();
  const double usual = info.number(fallback);
  return value == usual || (!isSet(value) && !isSet(usual));
}

/// The value of one field; `fallback` is the value a reader assumes when the key is absent.
void writeField(Json& object, const FieldInfo& info, const FieldRef& field, const void* fallback) {
  switch (info.kind) {
    case FieldKind::Flag: object[keyOf(info.key)] = field.number() != 0; return;
    case FieldKind::Text:
    case FieldKind::Choice: object[keyOf(info.key)] = fieldText(field); return;
    case FieldKind::Integer:
    case FieldKind::Number: break;
  }
  if (isSet(field.number()) && info.kind == FieldKind::Integer) {
    object[keyOf(info.key)] = static_cast<long long>(field.number());
  } else if (isSet(field.number())) {
    object[keyOf(info.key)] = numberValue(fieldText(field));
  } else if (isSet(info.number(fallback))) {
    object[keyOf(info.key)] = nullptr;
  }
}

/// Tolerance bands by field key; the map keeps them sorted.
void writeBands(Json& object, const AsWritten& asWritten) {
  if (!asWritten.bands.empty()) object[keyOf(keys::kBands)] = asWritten.bands;
}

/// The entry of a catalogue that gave the values.
void writeFrom(Json& object, const CataloguePart& from) {
  if (from.part.empty()) return;
  Json& entry = object[keyOf(keys::kFrom)];
  entry[keyOf(keys::kFromPart)] = from.part;
  if (!from.catalogue.empty()) entry[keyOf(keys::kFromCatalogue)] = from.catalogue;
  if (!from.changed.empty()) entry[keyOf(keys::kFromChanged)] = from.changed;
}

/// Every catalogued field of `owner`.
template <class T>
Json writeFields(const T& owner) {
  static const T kDefault{};
  const StructInfo& structure = structInfo<T>();
  Json object = Json::object();
  for (const FieldInfo& info : structure.fields) {
    const FieldRef field{"", &info, &structure, &owner};
    if (!isIdle(field, &kDefault)) writeField(object, info, field, &kDefault);
  }
  writeBands(object, owner.asWritten);
  writeFrom(object, owner.asWritten.from);
  return object;
}

/// Keys of a newer or foreign program, after the known ones; the map keeps them sorted.
void writeUnknown(Json& object, const AsWritten& asWritten) {
  for (const auto& [key, text] : asWritten.unknown) {
    Json value = Json::parse(text, nullptr, false);
    if (value.is_discarded()) {
      throw std::logic_error("AsWritten::unknown holds text that is not JSON: " + key);
    }
    if (!object.contains(key)) object[key] = std::move(value);
  }
}

template <class T>
Json writePlain(const T& owner) {
  Json object = writeFields(owner);
  writeUnknown(object, owner.asWritten);
  return object;
}

Json writeLoad(const Load& load) {
  Json object = writeFields(load);
  if (!load.masses.empty()) {
    Json& masses = object[keyOf(keys::kMasses)] = Json::array();
    for (const LoadMass& mass : load.masses) masses.push_back(writePlain(mass));
  }
  writeUnknown(object, load.asWritten);
  return object;
}

Json writeTable(const MotionTable& table) {
  Json object = Json::object();
  for (const keys::TableColumn& column : keys::kTableColumns) {
    const std::vector<double>& values = table.*column.values;
    if (!values.empty()) object[keyOf(column.key)] = values;
  }
  return object;
}

Json writeSegment(const Segment& segment) {
  Json object = writeFields(segment);
  if (segment.table != MotionTable{}) object[keyOf(keys::kTable)] = writeTable(segment.table);
  writeUnknown(object, segment.asWritten);
  return object;
}

Json writeCycle(const Cycle& cycle) {
  Json object = writeFields(cycle);
  Json& segments = object[keyOf(keys::kSegments)] = Json::array();
  for (const Segment& segment : cycle.segments) segments.push_back(writeSegment(segment));
  writeUnknown(object, cycle.asWritten);
  return object;
}

Json writeVariant(const Variant& variant) {
  Json object = writeFields(variant);
  object[keyOf(keys::kSupply)] = writePlain(variant.supply);
  object[keyOf(keys::kController)] = writePlain(variant.controller);
  object[keyOf(keys::kMotor)] = writePlain(variant.motor);
  Json& stages = object[keyOf(keys::kTransmission)] = Json::array();
  for (const Stage& stage : variant.transmission) stages.push_back(writePlain(stage));
  for (const Acceptance& one : variant.accepted) {
    object[keyOf(keys::kAccepted)].push_back(writePlain(one));
  }
  writeUnknown(object, variant.asWritten);
  return object;
}

}  // namespace

std::string writeProject(const Project& project) {
  Json document;
  document[keyOf(keys::kFormat)] = keyOf(kProjectFormat);
  document[keyOf(keys::kVersion)] = kProjectVersion;
  document.update(writeFields(project));
  document[keyOf(keys::kLoad)] = writeLoad(project.load);
  document[keyOf(keys::kCycle)] = writeCycle(project.cycle);
  for (const Cycle& cycle : project.otherCycles) {
    document[keyOf(keys::kOtherCycles)].push_back(writeCycle(cycle));
  }
  document[keyOf(keys::kRequirements)] = writePlain(project.requirements);
  Json& variants = document[keyOf(keys::kVariants)] = Json::array();
  for (const Variant& variant : project.variants) variants.push_back(writeVariant(variant));
  document[keyOf(keys::kActiveVariant)] = project.activeVariant;
  writeUnknown(document, project.asWritten);
  return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace jw
