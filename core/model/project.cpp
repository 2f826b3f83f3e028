#include "core/model/project.h"

#include <algorithm>

#include "core/model/field_catalogue.h"

namespace jw {
namespace {

bool sameField(const FieldInfo& info, const void* a, const void* b) {
  if (info.kind == FieldKind::Text) return info.text(a) == info.text(b);
  const double x = info.number(a);
  const double y = info.number(b);
  return x == y || (!isSet(x) && !isSet(y));
}

/// Every catalogued field and the text as written.
template <class T>
bool sameFields(const T& a, const T& b) {
  const auto& fields = structInfo<T>().fields;
  return a.asWritten == b.asWritten &&
         std::all_of(fields.begin(), fields.end(),
                     [&](const FieldInfo& info) { return sameField(info, &a, &b); });
}

}  // namespace

bool operator==(const Supply& a, const Supply& b) {
  return sameFields(a, b);
}
bool operator==(const Controller& a, const Controller& b) {
  return sameFields(a, b);
}
bool operator==(const Motor& a, const Motor& b) {
  return sameFields(a, b);
}
bool operator==(const Stage& a, const Stage& b) {
  return sameFields(a, b);
}
bool operator==(const Load& a, const Load& b) {
  return sameFields(a, b);
}
bool operator==(const Requirements& a, const Requirements& b) {
  return sameFields(a, b);
}

bool operator==(const Segment& a, const Segment& b) {
  return a.table == b.table && sameFields(a, b);
}

bool operator==(const Cycle& a, const Cycle& b) {
  return a.segments == b.segments && sameFields(a, b);
}

bool operator==(const Variant& a, const Variant& b) {
  return a.supply == b.supply && a.controller == b.controller && a.motor == b.motor &&
         a.transmission == b.transmission && sameFields(a, b);
}

bool operator==(const Project& a, const Project& b) {
  return a.load == b.load && a.cycle == b.cycle && a.requirements == b.requirements &&
         a.variants == b.variants && a.activeVariant == b.activeVariant && sameFields(a, b);
}

}  // namespace jw
