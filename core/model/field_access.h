#pragma once

#include <string>
#include <type_traits>
#include <utility>

#include "core/model/field_catalogue.h"

// Makers of FieldInfo entries. The member pointer is a template argument, so that access needs no
// storage: each maker's functions are made by the compiler for that one member.

namespace jw::access {

template <class T>
struct MemberOf;
template <class Owner, class Value>
struct MemberOf<Value Owner::*> {
  using OwnerType = Owner;
  using ValueType = Value;
};

template <auto Member>
double getNumber(const void* owner) {
  using Owner = typename MemberOf<decltype(Member)>::OwnerType;
  return static_cast<double>(static_cast<const Owner*>(owner)->*Member);
}

template <auto Member>
void putNumber(void* owner, double value) {
  using Traits = MemberOf<decltype(Member)>;
  using Value = typename Traits::ValueType;
  auto& slot = static_cast<typename Traits::OwnerType*>(owner)->*Member;
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

template <auto Member>
FieldInfo numeric(FieldInfo info) {
  const typename MemberOf<decltype(Member)>::OwnerType fresh{};
  info.defaultValue = getNumber<Member>(&fresh);
  info.number = &getNumber<Member>;
  info.setNumber = &putNumber<Member>;
  return info;
}

/// A number of `quantity`, shown in `unit`; `low` and `high` of `range` are in `unit` as well.
template <auto Member>
FieldInfo number(const Words& words, Quantity quantity, std::string_view unit, Range range = {},
                 Applies applies = nullptr) {
  FieldInfo info = named(words, FieldKind::Number, applies);
  info.quantity = quantity;
  info.unit = unit;
  info.range = range;
  info.range.low = std::isinf(range.low) ? range.low : toInternal(range.low, unit, quantity);
  info.range.high = std::isinf(range.high) ? range.high : toInternal(range.high, unit, quantity);
  return numeric<Member>(info);
}

template <auto Member>
FieldInfo integer(const Words& words, Range range, Applies applies = nullptr) {
  FieldInfo info = named(words, FieldKind::Integer, applies);
  info.unit = "1";
  info.range = range;
  return numeric<Member>(info);
}

template <auto Member>
FieldInfo flag(const Words& words, Applies applies = nullptr) {
  return numeric<Member>(named(words, FieldKind::Flag, applies));
}

template <auto Member>
FieldInfo choice(const Words& words, std::span<const ChoiceItem> choices,
                 Applies applies = nullptr) {
  FieldInfo info = numeric<Member>(named(words, FieldKind::Choice, applies));
  info.choices = choices;
  return info;
}

template <auto Member>
FieldInfo text(const Words& words) {
  FieldInfo info = named(words, FieldKind::Text, nullptr);
  info.text = &getText<Member>;
  info.setText = &putText<Member>;
  return info;
}

template <class T>
const AsWritten& getAsWritten(const void* owner) {
  return static_cast<const T*>(owner)->asWritten;
}

inline constexpr double kInfinity = std::numeric_limits<double>::infinity();
inline constexpr Range kPositive{0, kInfinity, true};
inline constexpr Range kNotNegative{0, kInfinity, false};

}  // namespace jw::access
