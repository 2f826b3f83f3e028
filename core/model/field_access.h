#pragma once

#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "core/model/field_catalogue.h"

// Makers of FieldInfo entries. The member pointer is a template argument, so that access needs no
// storage: each maker's functions are made by the compiler for that one member.

namespace jw::access {

template <class T>
struct MemberOf;
template <class Owner, class Value>
struct MemberOf<Value Owner::*> {
  using OwnerType = Owner;
};

/// The struct that the first member pointer of a path is into.
template <auto First, auto...>
struct PathOwner : MemberOf<decltype(First)> {};
template <auto... Path>
using OwnerOf = typename PathOwner<Path...>::OwnerType;

/// The member at the end of a path of member pointers: (&Stage::belt, &BeltGeometry::pitch).
template <auto First, auto... Rest, class Owner>
auto& memberOf(Owner& owner) {
  if constexpr (sizeof...(Rest) == 0) {
    return owner.*First;
  } else {
    return memberOf<Rest...>(owner.*First);
  }
}

template <auto... Path>
double getNumber(const void* owner) {
  return static_cast<double>(memberOf<Path...>(*static_cast<const OwnerOf<Path...>*>(owner)));
}

template <auto... Path>
void putNumber(void* owner, double value) {
  auto& slot = memberOf<Path...>(*static_cast<OwnerOf<Path...>*>(owner));
  using Value = std::remove_reference_t<decltype(slot)>;
  if constexpr (std::is_same_v<Value, bool>) {
    slot = value != 0;
  } else if constexpr (std::is_enum_v<Value>) {
    slot = static_cast<Value>(static_cast<int>(value));
  } else {
    slot = static_cast<Value>(value);
  }
}

template <auto Member>
const std::string& getText(const void* owner) {
  using Owner = typename MemberOf<decltype(Member)>::OwnerType;
  return static_cast<const Owner*>(owner)->*Member;
}

template <auto Member>
void putText(void* owner, std::string value) {
  using Owner = typename MemberOf<decltype(Member)>::OwnerType;
  static_cast<Owner*>(owner)->*Member = std::move(value);
}

/// What all makers need: how the field is called and what it is for.
struct Words {
  std::string_view key;
  std::string_view label;
  std::string_view symbol;
  std::string_view help;
  std::string_view source = {};
};

using Applies = bool (*)(const void* owner);

/// Wraps a captureless predicate over T as FieldInfo::applies.
template <class T, bool (*Predicate)(const T&)>
bool appliesTo(const void* owner) {
  return Predicate(*static_cast<const T*>(owner));
}

inline FieldInfo named(const Words& words, FieldKind kind, Applies applies) {
  FieldInfo info;
  info.key = words.key;
  info.label = words.label;
  info.symbol = words.symbol;
  info.help = words.help;
  info.source = words.source;
  info.kind = kind;
  info.applies = applies;
  return info;
}

template <auto... Path>
FieldInfo numeric(FieldInfo info) {
  const OwnerOf<Path...> fresh{};
  info.defaultValue = getNumber<Path...>(&fresh);
  info.number = &getNumber<Path...>;
  info.setNumber = &putNumber<Path...>;
  return info;
}

/// A number of `quantity`, shown in `unit`; `low` and `high` of `range` are in `unit` as well.
template <auto... Path>
FieldInfo number(const Words& words, Quantity quantity, std::string_view unit, Range range = {},
                 Applies applies = nullptr) {
  FieldInfo info = named(words, FieldKind::Number, applies);
  info.quantity = quantity;
  info.unit = unit;
  info.range = range;
  info.range.low = std::isinf(range.low) ? range.low : toInternal(range.low, unit, quantity);
  info.range.high = std::isinf(range.high) ? range.high : toInternal(range.high, unit, quantity);
  return numeric<Path...>(info);
}

template <auto... Path>
FieldInfo integer(const Words& words, Range range, Applies applies = nullptr) {
  FieldInfo info = named(words, FieldKind::Integer, applies);
  info.unit = "1";
  info.range = range;
  return numeric<Path...>(info);
}

template <auto... Path>
FieldInfo flag(const Words& words, Applies applies = nullptr) {
  return numeric<Path...>(named(words, FieldKind::Flag, applies));
}

template <auto... Path>
FieldInfo choice(const Words& words, std::span<const ChoiceItem> choices,
                 Applies applies = nullptr) {
  FieldInfo info = numeric<Path...>(named(words, FieldKind::Choice, applies));
  info.choices = choices;
  return info;
}

template <auto Member>
FieldInfo text(const Words& words, Applies applies = nullptr) {
  FieldInfo info = named(words, FieldKind::Text, applies);
  info.text = &getText<Member>;
  info.setText = &putText<Member>;
  return info;
}

/// Fields that stand under one heading.
struct FieldGroupRows {
  std::string_view heading;  ///< may be empty
  std::vector<FieldInfo> fields;
};

/// All the groups' fields in one list, each with its heading.
inline std::vector<FieldInfo> joined(std::initializer_list<FieldGroupRows> groups) {
  std::vector<FieldInfo> all;
  for (const FieldGroupRows& rows : groups) {
    for (FieldInfo field : rows.fields) {
      field.group = rows.heading;
      all.push_back(field);
    }
  }
  return all;
}

template <class T>
const AsWritten& getAsWritten(const void* owner) {
  return static_cast<const T*>(owner)->asWritten;
}

inline constexpr double kInfinity = std::numeric_limits<double>::infinity();
inline constexpr Range kPositive{0, kInfinity, true};
inline constexpr Range kNotNegative{0, kInfinity, false};

}  // namespace jw::access
