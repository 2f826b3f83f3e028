#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "core/model/field_catalogue.h"

namespace jw {

/// How a value spreads within its band (JCGM 101:2008, 6.4; from memory). Uniform: alike from end
/// to end. Triangular: most likely in the middle, none beyond the ends. Normal: the band holds two
/// standard deviations on either side, 95 % of all values.
enum class BandShape { Uniform, Normal, Triangular };

/// How far a value may be off, to either side.
struct Band {
  double half = 0;        ///< half width: share of the value, or in the field's internal unit
  bool relative = false;  ///< `half` is a share of the value
  BandShape shape = BandShape::Uniform;

  /// Half width in the internal unit, about `value`.
  double halfWidth(double value) const;
  /// Standard deviation in the internal unit: a/sqrt(3) uniform, a/2 normal, a/sqrt(6) triangular.
  double standardDeviation(double value) const;
};

/// What a message says of how a band is written.
inline constexpr const char* kBandExample =
    "write how far it may be off, e.g. \"± 5 %\", \"± 0.2 N*m\" or \"± 5 % normal\" (uniform, normal "
    "or triangular)";

/// "uniform", "normal", "triangular".
std::string_view bandShapeName(BandShape shape);

/// Reads "± 5 %", "+- 0.2 N*m normal", "5 % triangular". The sign may be left out; a bare number is
/// in the field's unit; without a shape it is uniform. Of a share (efficiency) "± 2 %" is a share
/// of the value. Fails on fields that are no numbers and on a width that is negative or, as a
/// share, 1 or more.
tl::expected<Band, InputError> readBand(const FieldInfo& info, std::string_view text);

/// Gives the field at `path` a band; empty text takes it away. On error `project` is untouched.
tl::expected<void, InputError> setBand(Project& project, std::string_view path,
                                       std::string_view text);

/// The band of a field as written; empty if it has none.
std::string bandText(const FieldRef& field);

/// A field that has a value and a band.
struct BandedField {
  FieldRef field;
  Band band;
};

/// Every field with a value and a band, in the order of allFields; a width of nothing counts as
/// none.
std::vector<BandedField> bandedFields(const Project& project);

}  // namespace jw
