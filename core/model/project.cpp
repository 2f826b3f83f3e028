#include "core/model/project.h"

#include <algorithm>

#include "core/model/acceptance.h"

namespace jw {
namespace {

bool sameField(const FieldInfo& info, const void* a, const void* b) {
  if (info.kind == FieldKind::Text) return info.text(a) == info.text(b);
  const double x = info.number(a);
  const double y = info.number(b);
  return x == y || (!isSet(x) && !isSet(y));
}

/// The text of a number: as typed, or as it would be printed.
std::string writtenText(const FieldInfo& info, const void* owner, const AsWritten& asWritten) {
  const auto typed = asWritten.typed.find(std::string(info.key));
  if (typed != asWritten.typed.end()) return typed->second;
  return typedForm(info.number(owner), info.quantity, info.unit);
}

/// Every catalogued field, its band and the text as written. A number that nobody typed equals one
/// that was typed just as it would be printed, so that a file reopened equals the project it was
/// saved from.
template <class T>
bool sameFields(const T& a, const T& b) {
  if (a.asWritten.unknown != b.asWritten.unknown) return false;
  if (a.asWritten.bands != b.asWritten.bands) return false;
  if (a.asWritten.from != b.asWritten.from) return false;
  const bool sameText = a.asWritten.typed == b.asWritten.typed;
  const auto& fields = structInfo<T>().fields;
  return std::all_of(fields.begin(), fields.end(), [&](const FieldInfo& info) {
    if (!sameField(info, &a, &b)) return false;
    return sameText || info.kind != FieldKind::Number ||
           writtenText(info, &a, a.asWritten) == writtenText(info, &b, b.asWritten);
  });
}

}  // namespace

bool operator==(const Supply& a, const Supply& b) { return sameFields(a, b); }
bool operator==(const Controller& a, const Controller& b) { return sameFields(a, b); }
bool operator==(const Motor& a, const Motor& b) { return sameFields(a, b); }
bool operator==(const Stage& a, const Stage& b) { return sameFields(a, b); }
bool operator==(const LoadMass& a, const LoadMass& b) { return sameFields(a, b); }
bool operator==(const Requirements& a, const Requirements& b) { return sameFields(a, b); }
bool operator==(const Acceptance& a, const Acceptance& b) { return sameFields(a, b); }

bool operator==(const Load& a, const Load& b) { return a.masses == b.masses && sameFields(a, b); }

bool operator==(const Segment& a, const Segment& b) {
  return a.table == b.table && sameFields(a, b);
}

bool operator==(const Cycle& a, const Cycle& b) {
  return a.segments == b.segments && sameFields(a, b);
}

bool operator==(const Variant& a, const Variant& b) {
  return a.supply == b.supply && a.controller == b.controller && a.motor == b.motor &&
         a.transmission == b.transmission && a.accepted == b.accepted && sameFields(a, b);
}

bool operator==(const Project& a, const Project& b) {
  return a.load == b.load && a.cycle == b.cycle && a.otherCycles == b.otherCycles &&
         a.requirements == b.requirements && a.variants == b.variants &&
         a.activeVariant == b.activeVariant && sameFields(a, b);
}

}  // namespace jw
