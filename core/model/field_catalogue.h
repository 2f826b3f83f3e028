#pragma once

#include <limits>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "core/model/project.h"
#include "core/quantity/quantity.h"

namespace jw {

enum class FieldKind { Number, Integer, Flag, Choice, Text };

/// One value of a choice: its key in files and on the command line, and its label in forms.
struct ChoiceItem {
  std::string_view key;
  std::string_view label;
};

/// Allowed values, in the quantity's internal unit.
struct Range {
  double low = -std::numeric_limits<double>::infinity();
  double high = std::numeric_limits<double>::infinity();
  bool lowExcluded = false;
  bool contains(double v) const { return (lowExcluded ? v > low : v >= low) && v <= high; }
};

/// The one declaration of a parameter. Forms, files, validation, command line and help read it.
/// Access goes through functions made from the member pointer; `owner` is the struct it is in.
struct FieldInfo {
  std::string_view key;     ///< "rotorInertia"
  std::string_view label;   ///< "Rotor inertia"
  std::string_view symbol;  ///< "J_m"; '_' starts a subscript
  FieldKind kind = FieldKind::Number;
  Quantity quantity = Quantity::Number;
  std::string_view unit;  ///< unit of a bare number and of display
  Range range;
  double defaultValue = kUnset;  ///< of a new struct; a number with a default cannot be left empty
  std::span<const ChoiceItem> choices;
  std::string_view help;    ///< one line: meaning and the formula it enters
  std::string_view source;  ///< where the meaning or default comes from; may be empty
  std::string_view group;   ///< heading over it and its neighbours in forms; may be empty

  double (*number)(const void* owner) = nullptr;  ///< Number, Integer, Flag, Choice (index)
  void (*setNumber)(void* owner, double value) = nullptr;
  const std::string& (*text)(const void* owner) = nullptr;  ///< Text
  void (*setText)(void* owner, std::string value) = nullptr;
  bool (*applies)(const void* owner) =
      nullptr;  ///< whether it matters with the owner's other values; null = always
};

/// The fields of one struct, in the order of forms and files.
struct StructInfo {
  std::string_view key;    ///< "motor"
  std::string_view title;  ///< "Motor"
  std::span<const FieldInfo> fields;
  const AsWritten& (*asWritten)(const void* owner);
  const FieldInfo* find(std::string_view fieldKey) const;
};

/// The catalogue of T: Supply, Controller, Motor, Stage, Load, LoadMass, Segment, Cycle,
/// Requirements, Variant (its name) and Project (title, note).
template <class T>
const StructInfo& structInfo();
template <>
const StructInfo& structInfo<Supply>();
template <>
const StructInfo& structInfo<Controller>();
template <>
const StructInfo& structInfo<Motor>();
template <>
const StructInfo& structInfo<Stage>();
template <>
const StructInfo& structInfo<Load>();
template <>
const StructInfo& structInfo<LoadMass>();
template <>
const StructInfo& structInfo<Segment>();
template <>
const StructInfo& structInfo<Cycle>();
template <>
const StructInfo& structInfo<Requirements>();
template <>
const StructInfo& structInfo<Variant>();
template <>
const StructInfo& structInfo<Project>();

/// A field of a given project. `path` reads like "motor.rotorInertia", "transmission[1].ratio",
/// "cycle.segments[0].travel", "otherCycles[1].samples", "title", "variant.name"; supply,
/// controller, motor and transmission are the active variant's.
struct FieldRef {
  std::string path;
  const FieldInfo* info = nullptr;
  const StructInfo* structInfo = nullptr;
  const void* owner = nullptr;  ///< inside the project that was searched
  double number() const { return info->number(owner); }
};

/// The field at `path`, or an error that names the part that is unknown and the nearest known one.
tl::expected<FieldRef, InputError> findField(const Project& project, std::string_view path);

/// Every field of the project, in order.
std::vector<FieldRef> allFields(const Project& project);

/// The field's value as text: as typed, or in plain form ("0.092 N*m/A"); empty when unset.
std::string fieldText(const FieldRef& field);

/// Reads `text` into the field: number with unit, choice key or label, "yes"/"no", or plain text.
/// Empty text unsets a number that has no default and is an error for one that has. Checks the
/// range. On error `project` is untouched and the error says the path, what was found and what is
/// allowed.
tl::expected<void, InputError> setField(Project& project, std::string_view path,
                                        std::string_view text);

/// Whether `text` could be set at this field, and the value it would give (unset for empty text;
/// index for a choice; 0 for plain text).
tl::expected<double, InputError> readField(const FieldInfo& info, std::string_view text);

/// Keeps the text of a number as typed; nothing when it is unset.
void rememberTyped(AsWritten& asWritten, const FieldInfo& info, double value,
                   std::string_view text);

/// Gives the field a number that the caller has checked, in place of the text as typed and of a
/// catalogue's value. `field` was found in a project that the caller may change.
void assignNumber(const FieldRef& field, double value);

/// The range in words, in the field's display unit: "above 0", "0 to 1", "any number".
std::string describeRange(const FieldInfo& info);

}  // namespace jw
